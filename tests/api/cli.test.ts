import { execFile } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeFolder, startHost } from './running-host.ts';

const MAIN = join(import.meta.dirname, '..', '..', 'core', 'cli', 'main.ts');

interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

let folder: ReturnType<typeof makeFolder>;
beforeAll(() => {
  folder = makeFolder();
});
afterAll(() => folder.remove());

const dir = (name: string): string => join(folder.path, name);

/** One command line as a script runs it. */
function run(workshop: string, ...args: string[]): Promise<Said> {
  return new Promise((done) => {
    execFile(process.execPath, [MAIN, ...args, '--workshop', dir(workshop)], (error, out, err) => {
      const code = error === null ? 0 : typeof error.code === 'number' ? error.code : -1;
      done({ code, out, err });
    });
  });
}

async function json(workshop: string, ...args: string[]): Promise<{ code: number; value: never }> {
  const said = await run(workshop, ...args, '--json');
  return { code: said.code, value: JSON.parse(said.out) as never };
}

async function sampleJob(workshop: string): Promise<void> {
  expect((await run(workshop, 'job-add', 'Gearbox of a winch')).code).toBe(0);
  const logged = await run(
    workshop,
    'log',
    'belt guard, 4 M6x16 hex 10',
    '12 M8x25 hex 13, class 8.8, bag 3, 25 Nm',
    '+ side cover, gasket',
  );
  expect(logged.code).toBe(0);
}

describe('the command line', () => {
  it('takes a job apart and puts it back, by number and name, to a closed job', async () => {
    await sampleJob('back');
    const list = await json('back', 'reinstall');
    const plan = list.value as { steps: { number: number; state: string }[]; depth: object; ahead: string[] };
    expect(plan.steps.map((step) => step.number)).toEqual([2, 1]);
    expect(plan.steps[0]?.state).toBe('waiting');
    expect(plan.depth).toEqual({ off: 2, back: 0, left: 2, pieces: 19 });
    expect((await run('back', 'receive', 'gasket', '--qty', '1')).code).toBe(0);
    expect((await json('back', 'ahead')).value).toMatchObject({ today: [{ number: 2 }, { number: 1 }] });
    expect((await run('back', 'tick', 'gasket', 'side cover', '--what', 'fitted')).out).toContain('2 ticked');
    expect((await run('back', 'tick', '2/1/3', '--what', 'tightened', '--value', '25 N·m')).code).toBe(0);
    expect((await run('back', 'tick', '2/1', '--what', 'tightened', '--value', '25 Nm')).out).toContain(
      '11 ticked',
    );
    expect((await run('back', 'tick', '1')).code).toBe(0);
    expect((await run('back', 'job-close')).out).toContain('Closed.');
    const end = await json('back', 'reinstall');
    expect(end.code).toBe(0);
    expect((end.value as { depth: { left: number } }).depth.left).toBe(0);
  });

  it('puts a ring that was found on the list to get of a job', async () => {
    await sampleJob('ring');
    const found = await json(
      'ring',
      'oring',
      '--inside',
      '25',
      '--section',
      '3.53',
      '--to-get',
      '2',
      '--job',
      'winch',
    );
    expect(found).toMatchObject({ code: 0, value: { wanted: { what: 'O-ring AS568-214', qty: 2 } } });
    expect((await run('ring', 'tally')).out).toContain('O-ring AS568-214');
    expect((await run('ring', 'oring', '214', '--to-get', 'some')).code).toBe(2);
    const nowhere = await json('ring', 'oring', '214', '--to-get', '1', '--job', 'pump');
    expect(nowhere).toMatchObject({ code: 1, value: { fault: { code: 'not-found' } } });
  });

  it('writes down how far a joint was pulled, round by round', async () => {
    await sampleJob('rounds');
    expect((await run('rounds', 'tick', '2/1', '--round', 'snug')).out).toContain('12 ticked');
    expect((await run('rounds', 'tick', '2/1/3', '--round', '30 %')).out).toContain('1 through 30 %.');
    expect((await run('rounds', 'tick', '2/1', '--round', '30 %')).out).toContain('11 through 30 %.');
    const bad = await json('rounds', 'tick', '2/1', '--round', 'half');
    expect(bad).toMatchObject({ code: 1, value: { fault: { code: 'input' } } });
    const plan = (await json('rounds', 'reinstall')).value as {
      steps: { fasteners: { holes: { mark: string; round: string }[] }[] }[];
    };
    const holes = plan.steps[0]?.fasteners[0]?.holes ?? [];
    expect(new Set(holes.map((hole) => `${hole.mark} ${hole.round}`))).toEqual(new Set(['started 30 %']));
  });

  it('counts a bag, opens a search, and ends it', async () => {
    await sampleJob('count');
    const same = await run('count', 'count', 'bag', '3', '12');
    expect(same.code).toBe(0);
    const less = await json('count', 'count', 'bag', '3', '11');
    expect(less.code).toBe(1);
    expect(less.value).toMatchObject({ expected: 12, counted: 11 });
    const tally = (await json('count', 'tally')).value as { searches: { missing: number }[] };
    expect(tally.searches[0]?.missing).toBe(1);
    const stop = await run('count', 'reinstall');
    expect(stop.code).toBe(1);
    expect(stop.out).toContain('Bag 3 was counted at 11, 12 by the books.');
    expect((await run('count', 'receive', '2/1', '--qty', '1')).code).toBe(0);
    expect(((await json('count', 'tally')).value as { searches: object[] }).searches).toHaveLength(1);
    expect((await run('count', 'found', '--why', 'under the vice')).code).toBe(0);
    expect(((await json('count', 'tally')).value as { searches: object[] }).searches).toHaveLength(0);
  });

  it('answers with one JSON value and nothing else, and with exit codes 0, 1 and 2', async () => {
    await sampleJob('codes');
    expect(JSON.parse((await run('codes', 'jobs', '--json')).out)).toHaveLength(1);
    expect((await run('codes', 'tick', '99')).code).toBe(1);
    expect((await run('codes', 'tick', '99')).out).toContain('Expected a removal from 1 to 2, got “99”.');
    expect((await run('codes', 'log', '5 M8 grezed')).code).toBe(1);
    const wrong = await run('codes', 'log', '--nonsense', 'x');
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('Usage: log');
    expect((await run('codes', 'dance')).code).toBe(2);
    expect((await run('nowhere', 'jobs')).code).toBe(1);
    expect(existsSync(join(dir('nowhere'), 'workshop.db'))).toBe(false);
  });

  it('undoes and redoes, and does any operation by its name', async () => {
    await sampleJob('undo');
    expect((await run('undo', 'undo')).out).toContain('Taken back: a line of the log.');
    expect((await run('undo', 'redo')).out).toContain('Done again');
    const operation = await json(
      'undo',
      'operation',
      'record.make',
      '{"table":"asFound","values":{"kind":"damage","text":"crack"}}',
      '--job',
      'Gearbox',
    );
    expect(operation.code).toBe(0);
    const bad = await run(
      'undo',
      'operation',
      'record.make',
      '{"table":"asFound","values":{"kind":"odd","text":"crack"}}',
      '--job',
      'Gearbox',
    );
    expect(bad.code).toBe(1);
    expect(bad.out).toContain('kind');
    expect((await json('undo', 'operation')).value).toContain('tick.again');
  });

  it('writes a job to a file with its schema, and reads it into another workshop', async () => {
    await sampleJob('export');
    const file = join(folder.path, 'out', 'winch.json');
    expect((await run('export', 'job-export', '--to', file)).code).toBe(0);
    expect((await run('import', 'job-import', file)).code).toBe(0);
    const again = join(folder.path, 'out', 'again.json');
    expect((await run('import', 'job-export', '--to', again)).code).toBe(0);
    expect(readFileSync(again, 'utf8')).toBe(readFileSync(file, 'utf8'));
    expect((await run('import', 'job-import', file)).out).toContain('in this workshop already');
    expect((await json('export', 'job-export', '--schema')).value).toMatchObject({
      title: 'Everybolt job file',
    });
    expect((await run('import', 'job-import', join(folder.path, 'none.json'))).out).toContain('found none');
  });

  it('checks, backs up and restores, and never replaces a workshop with a broken copy', async () => {
    await sampleJob('safe');
    expect((await run('safe', 'check')).out).toContain('No damage found');
    const copy = dir('copy');
    expect((await run('safe', 'backup', copy)).code).toBe(0);
    expect((await run('safe', 'log', 'after the copy')).code).toBeLessThan(2);
    expect((await run('safe', 'restore', copy)).code).toBe(0);
    const jobs = (await json('safe', 'jobs')).value as { depth: { off: number } }[];
    expect(jobs[0]?.depth.off).toBe(2);
    expect(
      readdirSync(join(dir('safe'), 'copies')).some((name) => name.startsWith('workshop-before-restore-')),
    ).toBe(true);
    const broken = dir('broken-copy');
    expect((await run('safe', 'backup', broken)).code).toBe(0);
    const db = readFileSync(join(broken, 'workshop.db'));
    db.writeUInt8(255 - (db[5000] ?? 0), 5000);
    writeFileSync(join(broken, 'workshop.db'), db);
    const refused = await run('safe', 'restore', broken);
    expect(refused.code).toBe(1);
    expect(refused.out).toContain('not the one that was written');
    rmSync(join(broken, 'backup.json'));
    expect((await run('safe', 'restore', broken)).out).toContain('found none');
    expect((await run('safe', 'check')).code).toBe(0);
  });

  it('finds a row that was changed past the journal', async () => {
    await sampleJob('damaged');
    const db = new Database(join(dir('damaged'), 'workshop.db'));
    db.exec(`UPDATE removal SET title = 'Other' WHERE title = 'Belt guard'`);
    db.close();
    const said = await run('damaged', 'check');
    expect(said.code).toBe(1);
    expect(said.out).toContain('not as the journal left it');
  });

  it('reads while a host holds the workshop, backs it up, and refuses to write with the host’s address', async () => {
    const host = await startHost({ folder: folder.path });
    expect((await run('workshop', 'jobs')).code).toBe(0);
    expect((await run('workshop', 'check')).code).toBe(0);
    expect((await run('workshop', 'operation', 'jobs.list')).code).toBe(0);
    expect((await run('workshop', 'operation', 'workshop.keepDraft', '{"key":"a","text":"b"}')).code).toBe(1);
    expect((await run('workshop', 'backup', dir('live-copy'))).code).toBe(0);
    const refused = await run('workshop', 'job-add', 'Second');
    expect(refused.code).toBe(1);
    expect(refused.out).toContain(host.address);
    await host.kill('SIGKILL');
    expect((await run('workshop', 'job-add', 'Second')).code).toBe(0);
  });

  it('lists every verb with its usage', async () => {
    const said = await run('any', 'help');
    for (const verb of [
      'jobs',
      'log',
      'tick',
      'count',
      'tally',
      'job-export',
      'job-import',
      'check',
      'backup',
      'restore',
      'reinstall',
      'ahead',
      'identify',
    ])
      expect(said.out).toContain(`  ${verb}`);
  });
});
