import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { makeFolder } from './running-host.ts';

let folder: ReturnType<typeof makeFolder>;
beforeAll(() => {
  folder = makeFolder();
});
afterAll(() => folder.remove());

/** One command line in a workshop of this test, in this process; with --json its one value as text. */
async function run(workshop: string, ...args: string[]): Promise<{ code: number; out: string }> {
  const { code, value, lines } = await runCommand([...args, '--workshop', join(folder.path, workshop)]);
  return { code, out: args.includes('--json') ? JSON.stringify(value) : lines.join('\n') };
}

describe('loose fasteners, lost things and patterns by the command line', () => {
  it('matches a spilled tray, says what was not read and what is short, and books it when asked to', async () => {
    await run('tray', 'job-add', 'Pump');
    await run('tray', 'log', 'pump cover, 4 M8x25 hex 13, bag 1', 'side cover, 6 M8x30 hex 13, bag 2');
    const csv = join(folder.path, 'tray.csv');
    writeFileSync(csv, 'Qty;Diameter;Pitch;Length;AF\n3;7,86;1,25;25,2;13\n6;7,86;1,25;30;13\nfew;8;;;\n');
    const looked = await run('tray', 'spill', '--tray', csv, '--from', 'bag 1,bag 2', '--json');
    expect(looked.code).toBe(1);
    const answer = JSON.parse(looked.out) as { said: unknown[]; pieces: number; assigned: { qty: number }[] };
    expect(answer.said).toMatchObject([{ row: 4 }]);
    expect([answer.pieces, answer.assigned.map(({ qty }) => qty)]).toEqual([9, [3, 6]]);
    const booked = await run(
      'tray',
      'spill',
      '--tray',
      csv,
      '--from',
      'bag 1,bag 2',
      '--accept',
      '--into',
      'tray 2',
    );
    expect(booked.out).toContain('Short: 1 × M8 × 25 mm, hex 13 mm [Pump cover, bag 1, 4 open]');
    expect(booked.out).toContain('9 sorted, 9 of them moved into tray 2. 1 not on the table');
    expect((await run('tray', 'lost')).out).toMatch(/1 looked for/);
    expect((await run('tray', 'undo')).out).toContain('the booking of a spilled tray');
    expect(await run('tray', 'lost')).toMatchObject({ code: 0, out: 'Nothing is looked for.' });
    expect((await run('tray', 'spill')).code).toBe(2);
    expect((await run('tray', 'spill', '--tray', csv, '--into', 'somewhere')).code).toBe(2);
    expect((await run('tray', 'spill', '--tray', csv, '--from', 'bag 99')).code).toBe(1);
  });

  it('finds the hole of an unknown bolt, or says that it fits none', async () => {
    await run('floor', 'job-add', 'Pump');
    await run('floor', 'log', 'pump cover, 4 M8x25 hex 13, bag 1');
    const fits = await run('floor', 'unknown-bolt', '--diameter', '7.86', '--length', '25');
    expect(fits).toMatchObject({ code: 0 });
    expect(fits.out).toContain('1. Pump: M8 × 25 mm, hex 13 mm [Pump cover, bag 1, 4 open]');
    const none = await run('floor', 'unknown-bolt', '--thread', 'M8', '--length', '40', '--json');
    expect(none.code).toBe(1);
    expect(JSON.parse(none.out)).toMatchObject({ fits: false, hits: [{ jobTitle: 'Pump' }] });
    expect((await run('floor', 'unknown-bolt', '--thread', 'banana')).out).toContain('Expected a thread');
  });

  it('looks for a tool by its name until it is found', async () => {
    await run('lost', 'job-add', 'Pump');
    await run('lost', 'log', 'pump cover, 4 M8x25');
    expect((await run('lost', 'lost', '10', 'mm', 'socket')).out).toContain(
      '10 mm socket: the search is open.',
    );
    const open = await run('lost', 'lost');
    expect(open.code).toBe(1);
    expect(open.out).toContain('10 mm socket: 1 looked for. Used last, as far as is known, at Pump cover.');
    expect((await run('lost', 'found', '--why', 'under the bench')).code).toBe(0);
    expect((await run('lost', 'lost')).code).toBe(0);
  });

  it('follows an earlier job, and says what differs as it is begun and in a list', async () => {
    await run('like', 'job-add', 'Winch 1');
    await run('like', 'log', '--job', 'Winch 1', 'side cover, 8 M8x25', 'coupling');
    await run('like', 'job-add', 'Winch 2');
    expect((await run('like', 'pattern', '--job', 'Winch 2')).out).toContain('follows no earlier one');
    const used = await run('like', 'pattern', '--job', 'Winch 2', '--from', 'Winch 1');
    expect(used.out).toContain('2 removals are planned after “Winch 1”.');
    expect((await run('like', 'pattern', '--job', 'Winch 2')).out).toContain('8 × M8 × 25 mm');
    const begun = await run('like', 'begin', '--job', 'Winch 2', '1', '1/1=7');
    expect(begun).toMatchObject({ code: 1 });
    expect(begun.out).toContain('Side cover is off. 8 expected, 7 found: M8 × 25 mm.');
    expect((await run('like', 'begin', '--job', 'Winch 2', 'coupling')).code).toBe(0);
    const list = await run('like', 'pattern', '--job', 'Winch 2', '--json');
    expect(list.code).toBe(1);
    expect(JSON.parse(list.out)).toMatchObject({
      removals: [{ differences: [expect.any(String)] }, { differences: [] }],
    });
    expect((await run('like', 'begin', '--job', 'Winch 2', '1', '1/1=many')).code).toBe(2);
  });
});
