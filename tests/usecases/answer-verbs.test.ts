import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { tempFolder } from '../support/workshop.ts';

/** Verbs in this process; that the program answers like this as a process of its own is in tests/api/cli.test.ts. */
describe('verbs for the questions of the fourth week', () => {
  it('answers what can go ahead and when, what is in the way, tools, time, needs and whether it was touched', async () => {
    const workshop = join(tempFolder(), 'workshop');
    const json = (...words: string[]) => runCommand([...words, '--workshop', workshop]);
    const run = async (...words: string[]) => {
      const { code, lines } = await json(...words);
      return { code, out: lines.join('\n') };
    };
    await run('job-add', 'Gearbox of a winch');
    const lines = [
      'belt guard, 4 M6x16 hex 10',
      '12 M8x25 hex 13, class 8.8, bag 3, 25 Nm',
      '+ side cover, gasket',
    ];
    expect((await run('log', ...lines)).code).toBe(0);
    expect((await run('send', 'belt guard', '--to', 'Weber', '--due', '2090-01-02T12:00Z')).code).toBe(0);
    const all = await run('ahead');
    expect(all.out).toContain('Nothing can go ahead now.');
    expect(all.out).toContain('frees 1 step: gasket must be new: 1 to get.');
    expect((await run('receive', 'gasket', '--qty', '1')).code).toBe(0);
    expect((await run('ahead')).out).toContain('2090-01-02: belt guard is away, with Weber.');
    expect((await json('ahead', '--on', '2090-01-01')).value).toMatchObject({ dates: [] });
    expect((await json('ahead', '--on', '2090-01-03')).value).toMatchObject({
      dates: [{ what: ['belt guard is away, with Weber.'] }],
    });
    const day = (await run('ahead', '--on', '2090-01-03')).out;
    expect(day).toContain('By 2090-01-03');
    expect(day).toContain('(from 2090-01-02)');
    expect((await run('ahead', '--on', '2090-01-01')).out).toContain('Not by then');
    expect((await run('ahead', '--on', 'someday')).code).toBe(2);
    expect((await run('tools')).out).toContain('13 mm spanner or socket: 12 fasteners, 1 step');
    expect((await run('time-left')).out).toContain('Not known yet');
    expect((await run('needs')).out).toContain('No need looks as if it were none.');
    expect((await run('need', '2', '1', '--answer', 'loosened', '--why', 'other side')).code).toBe(0);
    expect((await run('need', '2', '1', '--answer', 'loosened')).code).toBe(1);
    for (const target of ['2', '1']) expect((await run('tick', target)).code).toBeLessThan(2);
    const reach = (await json('reach', '--part', 'side cover', '--part', 'belt guard')).value as {
      removals: { number: number }[];
      fasteners: number;
    };
    expect(reach.removals.map((one) => one.number)).toEqual([1, 2]);
    expect(reach.fasteners).toBe(16);
    expect((await run('reach')).code).toBe(2);
    expect((await run('reach', '--part', 'side cover', '--part', 'belt guard', '--plan')).out).toContain(
      '  2 Side cover (to reach side cover; belt guard)',
    );
    expect((await run('reach', '--plan', '--part', 'side cover')).out).toContain('planned already');
    expect((await run('reach')).out).toContain('  1 Belt guard');
    for (const name of ['belt guard', 'side cover']) expect((await run('begin', name)).code).toBe(0);
    expect((await json('reach', '--part', 'side cover')).value).toMatchObject({ removals: [] });
    const touched = await run('touched', '--machine', 'Gearbox of a winch', '--part', 'guard');
    expect(touched.out).toContain('was touched in the one job on this machine');
    const unknown = await run('touched', '--part', 'gaurd');
    expect(unknown.code).toBe(1);
    expect(unknown.out).toContain('Nothing is called “gaurd” in the one job on this machine');
    expect(unknown.out).toMatch(/Nearest: .*guard/);
    const lost = await run('reach', '--part', 'gaurd');
    expect(lost.code).toBe(1);
    expect(lost.out).toMatch(/got “gaurd”\. Nearest: .*guard/);
  });
});
