import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { logJob } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

async function bench(...lines: string[]) {
  const workshop = newWorkshop();
  await logJob(workshop, 'Bench mill', lines);
  const { dir } = workshop;
  workshop.close();
  return async (...words: string[]) => {
    const { code, lines: out } = await runCommand([...words, '--workshop', dir]);
    return { code, out: out.join('\n') };
  };
}

describe('needs that only the order of the log says, by verb', () => {
  it('are listed with the reason why none is doubted, and what could be written', async () => {
    const run = await bench(
      'guard, 4 M6x16, left',
      'shaft, 4 M8x25',
      'cover, 2 M8x40, left',
      'gear, 2 M5x10, left',
    );
    const { out } = await run('needs');
    expect(out).toContain(
      'No need looks as if it were none. One is doubted only where both removals have a place',
    );
    expect(out).toContain(
      '2 Shaft before 1 Guard (nobody wrote down where both are): need 2 1 --answer loosened',
    );
    expect(out).toContain('4 Gear before 3 Cover (they are in the same place): need 4 3');
    expect((await run('log', 'lever, 2 M4x8, right')).code).toBe(0);
    expect((await run('needs')).out).toMatch(
      /Does 5 Lever really .* before 4 Gear\?[\s\S]*5 Lever before 4 Gear \(it is doubted above\)/,
    );
  });

  it('are loosened whichever removal is named first; one by way of others is told which to answer', async () => {
    const run = await bench('guard, 4 M6x16', 'shaft, 4 M8x25', 'cover, 2 M8x40');
    const far = await run('need', '3', '1', '--answer', 'loosened');
    expect(far.code).toBe(1);
    expect(far.out).toContain(
      'only by way of “Shaft”. Answer one of these instead: “Cover” and “Shaft”; “Shaft” and “Guard”.',
    );
    expect((await run('need', '1', '1', '--answer', 'loosened')).out).toContain('got “Guard” twice');
    expect((await run('need', '1', '2', '--answer', 'loosened')).out).toBe(
      'Shaft and Guard no longer wait for each other.',
    );
    expect((await run('needs')).out).not.toContain('2 Shaft before 1 Guard');
  });

  it('are loosened between removals that are only planned', async () => {
    const run = await bench('guard, 4 M6x16', 'shaft, 4 M8x25', 'cover, 2 M8x40');
    await run('job-add', 'Second mill');
    expect((await run('pattern', '--job', 'Second', '--from', 'Bench mill')).code).toBe(0);
    const done = await run('need', '--job', 'Second', '2', '1', '--answer', 'loosened');
    expect(done).toEqual({ code: 0, out: 'Shaft and Guard no longer wait for each other.' });
    expect((await run('needs', '--job', 'Second')).out).not.toContain('2 Shaft before 1 Guard');
  });
});
