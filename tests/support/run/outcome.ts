import type { Ended } from './process.ts';

/** One failure: what failed, and why in a sentence or the runner's own words. */
export interface Failure {
  readonly what: string;
  readonly why: string;
}

/** What one stage adds to the last line. `excused` are skipped tests that the list of skips names. */
export interface Outcome {
  readonly passed: number;
  readonly failures: readonly Failure[];
  readonly excused: number;
}

/** One test as a runner's JSON tells it. */
export interface TestSeen {
  readonly name: string;
  readonly state: 'passed' | 'failed' | 'skipped';
  readonly why: string;
}

/** What a runner's JSON holds: its tests, and failures that belong to no test (a file that did not load). */
export interface Report {
  readonly tests: readonly TestSeen[];
  readonly broken: readonly Failure[];
}

/** A test that may be skipped, by its full name as the summary prints it, and why. */
export interface AllowedSkip {
  readonly test: string;
  readonly reason: string;
}

/** How a program ended, in words: "ended with code 1". */
export function endedText(ended: Ended): string {
  if (ended.notStarted !== undefined) return `did not start: ${ended.notStarted}`;
  if (ended.overMinutes !== undefined) return `was stopped at its limit of ${ended.overMinutes} min`;
  if (ended.signal !== null) return `was ended by ${ended.signal}`;
  return `ended with code ${ended.code}`;
}

/** A check without tests of its own (types, lint) counts as one: passed when every program of it ended with 0. */
export function sumCheck(name: string, all: readonly Ended[]): Outcome {
  const bad = all.filter((ended) => ended.code !== 0);
  if (all.length > 0 && bad.length === 0) return { passed: 1, failures: [], excused: 0 };
  const why = bad.map((ended) => `${ended.output.trimEnd()}\n(${endedText(ended)})`).join('\n');
  const failure = { what: name, why: all.length === 0 ? 'Expected a program to run, got none.' : why.trim() };
  return { passed: 0, failures: [failure], excused: 0 };
}

function judge(test: TestSeen, allowed: readonly AllowedSkip[]): Failure | 'passed' | 'excused' {
  switch (test.state) {
    case 'passed':
      return 'passed';
    case 'failed':
      return { what: test.name, why: test.why };
    case 'skipped':
      if (allowed.some((skip) => skip.test === test.name && skip.reason.trim() !== '')) return 'excused';
      return {
        what: test.name,
        why: 'Expected the test to run, got skipped, and no reason is listed for it.',
      };
  }
}

/** What the ending itself says against a run, once its JSON has been read. */
function endingFailure(runner: string, ended: Ended, failed: number, ran: number): Failure | undefined {
  const crashed = ended.notStarted !== undefined || ended.overMinutes !== undefined || ended.signal !== null;
  if (crashed) return { what: runner, why: `Expected ${runner} to finish, got: it ${endedText(ended)}.` };
  if (failed > 0) return undefined;
  if (ran === 0) return { what: runner, why: 'Expected at least one test to run, got none.' };
  if (ended.code !== 0) {
    const why = `Expected ${runner} to end with code 0 when no test failed, got: it ${endedText(ended)}.`;
    return { what: runner, why: withOutput(why, ended) };
  }
  return undefined;
}

function withOutput(sentence: string, ended: Ended): string {
  const tail = ended.output.trimEnd().split('\n').slice(-15).join('\n').trim();
  return tail === '' ? sentence : `${sentence}\n${tail}`;
}

/**
 * Sums what a test runner left behind. Whatever went wrong on the way (no file, half a file, no tests,
 * a crash) is one failure with a sentence; it never comes out as nothing.
 * @param runner its name in the summary
 * @param text its JSON as written, or undefined when it wrote none
 * @param read turns the parsed JSON into tests, or throws when it has another shape
 */
export function sumTests(
  runner: string,
  text: string | undefined,
  ended: Ended,
  read: (json: unknown) => Report,
  allowed: readonly AllowedSkip[],
): Outcome {
  const only = (why: string): Outcome => ({
    passed: 0,
    failures: [{ what: runner, why: withOutput(`${why} It ${endedText(ended)}.`, ended) }],
    excused: 0,
  });
  if (text === undefined || text.trim() === '')
    return only(`Expected ${runner} to write its results, got none.`);
  let report: Report;
  try {
    report = read(JSON.parse(text));
  } catch (error) {
    const cause = error instanceof Error ? error.message.split('\n').slice(0, 8).join(' ') : String(error);
    return only(`Expected the results of ${runner} as whole JSON, got ${text.length} characters: ${cause}.`);
  }
  const verdicts = report.tests.map((test) => judge(test, allowed));
  const passed = verdicts.filter((verdict) => verdict === 'passed').length;
  const excused = verdicts.filter((verdict) => verdict === 'excused').length;
  const failures = [...report.broken, ...verdicts.filter((verdict) => typeof verdict === 'object')];
  const ending = endingFailure(runner, ended, failures.length, passed);
  return { passed, failures: ending === undefined ? failures : [...failures, ending], excused };
}
