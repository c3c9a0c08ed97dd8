import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, symlinkSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  type Desk,
  leaveCode,
  leaveTicket,
  openDesk,
  sweepDesks,
  WRONG_CODES,
} from '../../core/host/desk.ts';
import { defaultWorkshop, makePrivate, privateFolder } from '../../core/host/private-folder.ts';

let dir = '';
let desk: Desk;
let later = 0;

beforeEach(() => {
  dir = join(mkdtempSync(join(tmpdir(), 'everybolt-desk-')), 'desk');
  later = 0;
  desk = openDesk(dir, () => Date.now() + later);
});
afterEach(() => {
  rmSync(join(dir, '..'), { recursive: true, force: true });
});

describe('a ticket', () => {
  it('is good once', () => {
    const ticket = leaveTicket(dir);
    expect(desk.redeemTicket(ticket)).toBe(true);
    expect(desk.redeemTicket(ticket)).toBe(false);
  });
  it('is good for 30 seconds, and gone when it came too late', () => {
    const ticket = leaveTicket(dir);
    later = 29_000;
    expect(desk.redeemTicket(ticket)).toBe(true);
    const late = leaveTicket(dir);
    later = 30_500;
    expect(desk.redeemTicket(late)).toBe(false);
    later = 0;
    expect(desk.redeemTicket(late)).toBe(false);
  });
  it('from the future is not trusted', () => {
    const ticket = leaveTicket(dir);
    later = -10_000;
    expect(desk.redeemTicket(ticket)).toBe(false);
  });
  it('is not known by anything but the whole of it', () => {
    const ticket = leaveTicket(dir);
    const [file] = readdirSync(dir);
    for (const guess of [
      '',
      ticket.slice(1),
      `${ticket}\n`,
      '../x',
      'f'.repeat(64),
      file ?? '',
      (file ?? '').slice(7),
    ])
      expect(desk.redeemTicket(guess)).toBe(false);
    expect(desk.redeemTicket(ticket)).toBe(true);
  });
  it('cannot be read from the folder, which only this user can enter', () => {
    const ticket = leaveTicket(dir);
    expect(readdirSync(dir).join()).not.toContain(ticket);
    if (process.platform !== 'win32') expect(statSync(dir).mode & 0o777).toBe(0o700);
  });
  it('does not serve as a code, nor a code as a ticket', () => {
    const ticket = leaveTicket(dir);
    leaveCode(dir);
    expect(desk.redeemCode(ticket)).toBe('wrong');
    expect(desk.redeemTicket(leaveCode(dir))).toBe(false);
  });
});

describe('a code', () => {
  const wrongOf = (code: string) => (code === '00000000' ? '11111111' : '00000000');

  it('has eight digits, is good once, and may be typed with spaces', () => {
    const code = leaveCode(dir);
    expect(code).toMatch(/^\d{8}$/);
    expect(desk.redeemCode(` ${code.slice(0, 4)} ${code.slice(4)} `)).toBe('right');
    expect(desk.redeemCode(code)).toBe('withdrawn');
  });
  it('is withdrawn after five wrong ones, even when the sixth is right', () => {
    const code = leaveCode(dir);
    const said = Array.from({ length: WRONG_CODES }, () => desk.redeemCode(wrongOf(code)));
    expect(said).toEqual(['wrong', 'wrong', 'wrong', 'wrong', 'withdrawn']);
    expect(desk.redeemCode(code)).toBe('withdrawn');
  });
  it('counts anything that is not the code as wrong', () => {
    const code = leaveCode(dir);
    const said = ['', 'abc', '../../x', code.slice(1), `${code}0`].map((typed) => desk.redeemCode(typed));
    expect(said.at(-1)).toBe('withdrawn');
    expect(desk.redeemCode(code)).toBe('withdrawn');
  });
  it('can be asked for anew, which ends the one before', () => {
    const first = leaveCode(dir);
    const second = leaveCode(dir);
    expect(desk.redeemCode(first)).toBe(first === second ? 'right' : 'wrong');
    expect(desk.redeemCode(second)).toBe('right');
  });
  it('asked for anew may be missed as often as the first', () => {
    for (let round = 0; round < 3; round++) {
      const code = leaveCode(dir);
      for (let miss = 1; miss < WRONG_CODES; miss++) expect(desk.redeemCode(wrongOf(code))).toBe('wrong');
    }
  });
  it('is good for ten minutes', () => {
    const code = leaveCode(dir);
    later = 601_000;
    expect(desk.redeemCode(code)).toBe('withdrawn');
  });
});

describe('the desk', () => {
  it('leaves nothing behind, and is made again when it is needed', () => {
    leaveTicket(dir);
    leaveCode(dir);
    desk.close();
    expect(readdirSync(join(dir, '..'))).toEqual([]);
    expect(openDesk(dir, Date.now).redeemTicket(leaveTicket(dir))).toBe(true);
  });
  it('of a killed host goes after a day, one in use does not', () => {
    const parent = join(dir, '..');
    for (const name of ['old', 'young']) mkdirSync(join(parent, name));
    leaveTicket(dir);
    const twoDaysAgo = Date.now() / 1000 - 2 * 86_400;
    utimesSync(join(parent, 'old'), twoDaysAgo, twoDaysAgo);
    utimesSync(dir, twoDaysAgo, twoDaysAgo);
    sweepDesks(parent, Date.now());
    expect(readdirSync(parent).sort()).toEqual(['desk', 'young']);
  });
});

describe('private folders', () => {
  it('are closed to others even when they were open before', () => {
    const open = join(dir, 'open');
    mkdirSync(open, { mode: 0o777 });
    makePrivate(open);
    if (process.platform !== 'win32') expect(statSync(open).mode & 0o077).toBe(0);
  });
  it('are not links to elsewhere', () => {
    symlinkSync(tmpdir(), join(dir, 'link'));
    expect(() => makePrivate(join(dir, 'link'))).toThrow('Expected a folder');
  });
  it('lie where each system has them', () => {
    const home = '/home/ana';
    expect(privateFolder({ platform: 'linux', home, env: {} })).toBe('/home/ana/.cache/everybolt');
    expect(privateFolder({ platform: 'linux', home, env: { XDG_CACHE_HOME: '/c' } })).toBe('/c/everybolt');
    expect(privateFolder({ platform: 'linux', home, env: { XDG_CACHE_HOME: 'c' } })).toBe(
      '/home/ana/.cache/everybolt',
    );
    expect(privateFolder({ platform: 'darwin', home, env: {} })).toBe('/home/ana/Library/Caches/Everybolt');
    expect(defaultWorkshop({ platform: 'linux', home, env: {} })).toBe('/home/ana/.local/share/everybolt');
    expect(defaultWorkshop({ platform: 'linux', home, env: { XDG_DATA_HOME: '/d' } })).toBe('/d/everybolt');
    expect(defaultWorkshop({ platform: 'darwin', home, env: {} })).toBe('/home/ana/Documents/Everybolt');
  });
});
