import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { logJob } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

async function bench() {
  const workshop = newWorkshop();
  await logJob(workshop, 'Bench mill', ['input shaft, 2 o-rings, 4 M8x25 hex 13, bag 2', 'guard, 4 M6x16']);
  const { dir } = workshop;
  workshop.close();
  return async (...words: string[]) => {
    const { code, lines } = await runCommand([...words, '--workshop', dir]);
    return { code, out: lines.join('\n') };
  };
}

describe('what was sent out, by verb', () => {
  it('comes back with its own verb; received it is asked first which one came', async () => {
    const run = await bench();
    expect((await run('back', 'input shaft')).out).toContain('Away now: nothing.');
    await run('send', 'input shaft', '--to', 'Weber');
    const asked = await run('receive', 'input shaft', '--qty', '1');
    expect(asked.code).toBe(1);
    expect(asked.out).toContain('away, with Weber');
    expect(asked.out).toContain('back “input shaft”');
    expect(asked.out).toContain('receive “input shaft” --qty 1 --new');
    expect((await run('back', 'guard')).out).toContain('Away now: “input shaft” (away, with Weber)');
    expect(await run('back', '1')).toEqual({ code: 0, out: 'Back in the workshop.' });
    expect((await run('tally')).out).not.toContain('away');
    expect((await run('tick', '2')).code).toBe(0);
    expect((await run('tick', '1/input shaft')).out).toContain('fitted input shaft.');
  });

  it('may be replaced by a new one that is said to be new', async () => {
    const run = await bench();
    await run('send', 'input shaft', '--to', 'Weber');
    expect((await run('receive', 'input shaft', '--qty', '1', '--new')).code).toBe(0);
    expect((await run('tick', '2')).out).not.toContain('not said to be back');
    expect((await run('tick', '1/input shaft')).out).toContain('input shaft (new)');
  });

  it('leaves its step open when that is ticked, and says what and why', async () => {
    const run = await bench();
    await run('send', 'input shaft', '--to', 'Weber');
    await run('receive', 'o-rings', '--qty', '2');
    expect((await run('tick', '2')).out).not.toContain('not said to be back');
    const { out } = await run('tick', '1');
    expect(out).toContain('Left open: input shaft: it is away, with Weber. Say first that it is back.');
    expect(out).toContain('Removal 1 Input shaft is not said to be back yet.');
  });
});
