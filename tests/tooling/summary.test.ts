import { describe, expect, it } from 'vitest';
import type { Outcome } from '../support/run/outcome.ts';
import { runAll } from '../support/run/run-all.ts';
import type { Stage } from '../support/run/stages.ts';
import { failureLines, lastLine, stageLine } from '../support/run/summary.ts';

const good: Outcome = { passed: 12, failures: [], excused: 0 };
const mixed: Outcome = { passed: 3, failures: [{ what: 'a › b', why: 'Expected 1,\ngot 2.' }], excused: 1 };
const place = { root: '/nowhere', results: '/nowhere' };

function stage(name: string, answer: Outcome | Error): Stage {
  const run = (): Promise<Outcome> =>
    answer instanceof Error ? Promise.reject(answer) : Promise.resolve(answer);
  return { name, run };
}

async function printed(stages: readonly Stage[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  const code = await runAll(stages, place, (line) => lines.push(line));
  return { code, lines };
}

describe('the summary', () => {
  it('ends with exactly the two sums', () => {
    expect(lastLine([good, mixed])).toBe('15 passed, 1 failed');
    expect(lastLine([])).toBe('0 passed, 0 failed');
  });

  it('says a stage in one line, and failures and excused skips only where there are any', () => {
    expect(stageLine('unit', good, 10_440)).toMatch(/^unit +12 passed +10\.4 s$/);
    expect(stageLine('api', mixed, 900)).toMatch(
      /^api +3 passed, 1 failed, 1 skipped for a listed reason +0\.9 s$/,
    );
  });

  it('gives details of failures and nothing else', () => {
    expect(failureLines(good)).toEqual([]);
    expect(failureLines(mixed)).toEqual(['  ✗ a › b', '      Expected 1,', '      got 2.']);
  });

  it('cuts a flood short and says by how much', () => {
    const long: Outcome = { ...good, failures: [{ what: 'a', why: Array(100).fill('line').join('\n') }] };
    expect(failureLines(long).at(-1)).toBe('      … and 60 more lines');
    const many: Outcome = { ...good, failures: Array(50).fill({ what: 'a', why: 'b' }) };
    expect(failureLines(many).at(-1)).toBe('  … and 10 more failures');
  });
});

describe('a whole run', () => {
  it('ends with 0 only when every stage passed', async () => {
    expect(await printed([stage('a', good), stage('b', good)])).toMatchObject({ code: 0 });
    expect(await printed([stage('a', good), stage('b', mixed)])).toMatchObject({ code: 1 });
    expect(await printed([])).toMatchObject({ code: 1 });
  });

  it('goes on after a failed stage and has the sums in its last line', async () => {
    const { lines } = await printed([stage('a', mixed), stage('b', good)]);
    expect(lines.at(-1)).toBe('15 passed, 1 failed');
    expect(lines.filter((line) => /^[ab] /.test(line))).toHaveLength(2);
  });

  it('counts a stage that falls over as one failure', async () => {
    const { code, lines } = await printed([stage('a', new Error('out of paper')), stage('b', good)]);
    expect(code).toBe(1);
    expect(lines.join('\n')).toContain('out of paper');
    expect(lines.at(-1)).toBe('12 passed, 1 failed');
  });
});
