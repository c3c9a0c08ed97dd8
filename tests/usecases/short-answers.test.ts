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
    const answer = await runCommand([...words, '--workshop', dir]);
    return { ...answer, out: answer.lines.join('\n') };
  };
}

const COVERS = Array.from({ length: 11 }, (_, i) => `cover ${i + 1}, 4 M8x25`);

describe('a tick far ahead that is stopped', () => {
  it('names the steps that come first, each once, and counts the rest; the one JSON value holds every point', async () => {
    const run = await bench(...COVERS);
    const { code, lines, value } = await run('tick', '1');
    expect(code).toBe(1);
    expect(lines).toHaveLength(11);
    expect(lines[0]).toBe('Stopped: 50 open points in 10 steps come first.');
    expect(lines[1]).toMatch(/^ {2}11 Cover 11: hole 1 of 4 is empty\. .* And 4 more there\.$/);
    expect(lines[9]).toBe('  And 2 more steps: see reinstall.');
    expect((value as { fault: { points: unknown[] } }).fault.points).toHaveLength(50);
  });

  it('with few points is told in full, with what passes each', async () => {
    const run = await bench('lid, 2 M8x25', 'cap, 1 M8x25');
    expect(
      (await run('tick', '1')).lines.filter((line) => line.startsWith('If it may stay so: accept')),
    ).toHaveLength(2);
  });

  it('before it came off is told that it had not come off yet', async () => {
    const run = await bench('lid, 2 M8x25');
    const { code, out } = await run('tick', '1', '--at', '2020-01-01T10:00Z');
    expect(code).toBe(1);
    expect(out).toMatch(/^Removal 1 Lid had not come off yet at 20\S+ \S+: that was at 20/);
  });
});

describe('what can go ahead, in words', () => {
  it('says what a step waits for, what one more item frees, and the date of a weekday', async () => {
    const run = await bench('lid, 2 M8x25', 'shaft, 2 o-rings, 2 M6x16');
    const { out } = await run('ahead');
    expect(out).toContain(
      'Waits, and for no day\n  2 Shaft: o-rings must be new: 2 to get.\n  1 Lid: First 2 Shaft.',
    );
    expect(out).toContain('  frees 2 steps: o-rings must be new');
    expect((await run('ahead', '--on', 'thursday')).out).toMatch(/by thursday, \d{4}-\d\d-\d\d\./i);
  });

  it('names the open point that holds a step', async () => {
    const run = await bench('lid, 2 M8x25', 'shaft, 2 M6x16', 'cap, 1 M5x12');
    await run('lost', '10 mm socket');
    expect((await run('ahead', '--on', 'thursday')).out).toMatch(
      /2 Shaft: Held by an open point: 10 mm socket.*not found.*\[/,
    );
  });
});

describe('any operation by its name', () => {
  it('without its input says what it is given', async () => {
    const run = await bench('lid, 2 M8x25');
    const { code, out } = await run('operation', 'tick.do');
    expect(code).toBe(2);
    expect(out).toMatch(
      /^tick\.do is given one JSON object:\n {2}jobId: text, or given as --job\n {2}thingIds: a list/,
    );
    expect(out).toMatch(/what: one of started, tightened/);
    expect(out).toContain('at (may be left out): a whole number');
    expect(out).not.toMatch(/Invalid|undefined|command/);
    expect((await run('operation', 'jobs.list')).code).toBe(0);
  });

  it('says in words what of the input does not fit', async () => {
    const run = await bench('lid, 2 M8x25');
    const { out } = await run('operation', 'tick.do', '--job', 'mill', '{"thingIds":3,"foo":1}');
    expect(out).toContain('thingIds must be a list, got a number');
    expect(out).toContain('what must be one of started, tightened');
    expect(out).toContain('the input has no foo');
    expect(out).not.toContain('Invalid');
  });
});
