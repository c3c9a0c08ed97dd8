import { describe, expect, it } from 'vitest';
import { endedText, sumCheck, sumTests } from '../support/run/outcome.ts';
import { readPlaywright } from '../support/run/playwright-report.ts';
import type { Ended } from '../support/run/process.ts';
import { allowedSkips } from '../support/run/skips.ts';
import { readVitest } from '../support/run/vitest-report.ts';

const fine: Ended = { code: 0, signal: null, output: '' };
const one: Ended = { code: 1, signal: null, output: 'last words' };
const killed: Ended = { code: null, signal: 'SIGSEGV', output: '' };
const late: Ended = { code: null, signal: 'SIGKILL', overMinutes: 12, output: '' };
const absent: Ended = { code: null, signal: null, notStarted: 'spawn node ENOENT', output: '' };

interface File {
  readonly status?: string;
  readonly message?: string;
  readonly tests: readonly string[];
}

/** The parts of vitest's JSON that are read, one file per entry, one test per state. */
function vitestJson(files: readonly File[]): string {
  return JSON.stringify({
    success: true,
    testResults: files.map((file, n) => ({
      name: `/project/tests/f${n}.test.ts`,
      status: file.status ?? (file.tests.includes('failed') ? 'failed' : 'passed'),
      message: file.message ?? '',
      assertionResults: file.tests.map((status, k) => ({
        fullName: `test ${k}`,
        status,
        failureMessages: status === 'failed' ? ['Expected 1, got 2.'] : [],
      })),
    })),
  });
}

/** The parts of Playwright's JSON that are read: one file with a group, one test per state. */
function playwrightJson(states: readonly string[], errors: readonly string[] = []): string {
  const specs = states.map((status, k) => ({
    title: `test ${k}`,
    tests: [
      { projectName: '', status, results: [{ errors: status === 'unexpected' ? [{ message: 'no' }] : [] }] },
    ],
  }));
  const group = { title: 'group', specs };
  return JSON.stringify({
    suites: states.length === 0 ? [] : [{ title: 'a.spec.ts', specs: [], suites: [group] }],
    errors: errors.map((message) => ({ message })),
  });
}

const vitest = (text: string | undefined, ended: Ended, allowed = allowedSkips) =>
  sumTests('unit', text, ended, (json) => readVitest(json, '/project'), allowed);
const playwright = (text: string | undefined, ended: Ended, allowed = allowedSkips) =>
  sumTests('browser', text, ended, readPlaywright, allowed);

describe('the sum of a vitest run', () => {
  it.each([
    ['all passed', vitestJson([{ tests: ['passed', 'passed'] }, { tests: ['passed'] }]), fine, 3, 0],
    ['two of four failed', vitestJson([{ tests: ['passed', 'failed', 'failed', 'passed'] }]), one, 2, 2],
    ['a skipped test', vitestJson([{ tests: ['passed', 'skipped'] }]), fine, 1, 1],
    ['a test that was only planned', vitestJson([{ tests: ['passed', 'todo'] }]), fine, 1, 1],
    ['a test that was never reached', vitestJson([{ tests: ['passed', 'pending'] }]), fine, 1, 1],
    ['a state nobody has heard of', vitestJson([{ tests: ['passed', 'splendid'] }]), fine, 1, 1],
    [
      'a file that did not load',
      vitestJson([{ tests: ['passed'] }, { status: 'failed', tests: [] }]),
      one,
      1,
      1,
    ],
    ['a failed file whose tests passed', vitestJson([{ status: 'failed', tests: ['passed'] }]), one, 1, 1],
    ['an error outside every test', vitestJson([{ tests: ['passed'] }]), one, 1, 1],
    ['no files', vitestJson([]), fine, 0, 1],
    ['no files, said by the exit code too', vitestJson([]), one, 0, 1],
    ['a file without a test', vitestJson([{ tests: [] }]), fine, 0, 1],
    ['a crash after the results', vitestJson([{ tests: ['passed'] }]), killed, 1, 1],
    ['a crash after results with a failure', vitestJson([{ tests: ['passed', 'failed'] }]), killed, 1, 2],
    ['a run over its time', vitestJson([{ tests: ['passed'] }]), late, 1, 1],
    ['half the JSON', vitestJson([{ tests: ['passed', 'passed'] }]).slice(0, 90), fine, 0, 1],
    ['an empty file', '', fine, 0, 1],
    ['another shape', '{"tests":12}', fine, 0, 1],
    ['not an object', 'null', fine, 0, 1],
    ['no file', undefined, fine, 0, 1],
    ['no file after a crash', undefined, killed, 0, 1],
    ['a program that did not start', undefined, absent, 0, 1],
  ])('%s', (_, text, ended, passed, failed) => {
    const sum = vitest(text, ended);
    expect([sum.passed, sum.failures.length]).toEqual([passed, failed]);
    for (const failure of sum.failures) expect(failure.why).not.toBe('');
  });

  it('names the test by its file below the project and its full name', () => {
    const sum = vitest(vitestJson([{ tests: ['failed'] }]), one);
    expect(sum.failures).toEqual([{ what: 'tests/f0.test.ts › test 0', why: 'Expected 1, got 2.' }]);
  });

  it('says in the words of the runner why a file did not load', () => {
    const sum = vitest(vitestJson([{ status: 'failed', message: 'Cannot find ./gone.ts', tests: [] }]), one);
    expect(sum.failures).toEqual([{ what: 'tests/f0.test.ts', why: 'Cannot find ./gone.ts' }]);
  });

  it('shows the last words of a runner that left no results', () => {
    expect(vitest(undefined, one).failures[0]?.why).toBe(
      'Expected unit to write its results, got none. It ended with code 1.\nlast words',
    );
  });
});

describe('the sum of a browser run', () => {
  it.each([
    ['all passed', playwrightJson(['expected', 'expected']), fine, 2, 0],
    ['one failed', playwrightJson(['expected', 'unexpected']), one, 1, 1],
    ['one passed only the second time', playwrightJson(['expected', 'flaky']), fine, 1, 1],
    ['one skipped', playwrightJson(['expected', 'skipped']), fine, 1, 1],
    ['no tests', playwrightJson([], ['Error: No tests found']), one, 0, 1],
    ['no tests and nothing said', playwrightJson([]), fine, 0, 1],
    ['a setup that failed', playwrightJson([], ['Error: Expected Chromium, got none.']), one, 0, 1],
    ['an error beside the tests', playwrightJson(['expected'], ['worker died']), one, 1, 1],
    ['a code 1 without a reason', playwrightJson(['expected']), one, 1, 1],
    ['a crash after the results', playwrightJson(['expected']), killed, 1, 1],
    ['half the JSON', playwrightJson(['expected']).slice(0, 60), fine, 0, 1],
    ['another shape', '{"suites":{}}', fine, 0, 1],
    ['no file', undefined, one, 0, 1],
  ])('%s', (_, text, ended, passed, failed) => {
    const sum = playwright(text, ended);
    expect([sum.passed, sum.failures.length]).toEqual([passed, failed]);
    for (const failure of sum.failures) expect(failure.why).not.toBe('');
  });

  it('names the test by file, group and title', () => {
    const sum = playwright(playwrightJson(['unexpected']), one);
    expect(sum.failures).toEqual([{ what: 'a.spec.ts › group › test 0', why: 'no' }]);
  });

  it('has the words of an error that belongs to no test, without their colours', () => {
    const sum = playwright(playwrightJson([], ['\u001b[31mNo tests found\u001b[39m']), one);
    expect(sum.failures).toEqual([{ what: 'browser', why: 'No tests found' }]);
  });
});

describe('a skipped test', () => {
  const text = vitestJson([{ tests: ['passed', 'skipped'] }]);
  const test = 'tests/f0.test.ts › test 1';

  it('is excused when the list names it with a reason, and then counts neither way', () => {
    const sum = vitest(text, fine, [{ test, reason: 'needs a camera' }]);
    expect(sum).toEqual({ passed: 1, failures: [], excused: 1 });
  });

  it('is not excused by an empty reason or by another name', () => {
    for (const skip of [
      { test, reason: ' ' },
      { test: `${test}0`, reason: 'needs a camera' },
    ]) {
      expect(vitest(text, fine, [skip]).failures).toHaveLength(1);
    }
  });

  it('leaves a run of nothing but excused tests a failure, since no test ran', () => {
    const sum = vitest(vitestJson([{ tests: ['skipped'] }]), fine, [
      { test: 'tests/f0.test.ts › test 0', reason: 'needs a camera' },
    ]);
    expect(sum.failures.map((failure) => failure.why)).toEqual([
      'Expected at least one test to run, got none.',
    ]);
  });

  it('is listed once and with a reason in the real list', () => {
    expect(new Set(allowedSkips.map((skip) => skip.test)).size).toBe(allowedSkips.length);
    for (const skip of allowedSkips) expect(skip.reason.trim().length).toBeGreaterThan(10);
  });
});

describe('a check without tests of its own', () => {
  it.each([
    ['one program that ended well', [fine], 1, 0],
    ['two programs that ended well', [fine, fine], 1, 0],
    ['the second of two failed', [fine, one], 0, 1],
    ['both failed: still one', [one, one], 0, 1],
    ['killed', [killed], 0, 1],
    ['over its time', [late], 0, 1],
    ['did not start', [absent], 0, 1],
    ['no program at all', [], 0, 1],
  ])('%s', (_, ended, passed, failed) => {
    const sum = sumCheck('lint', ended);
    expect([sum.passed, sum.failures.length]).toEqual([passed, failed]);
  });

  it('tells in words how a program ended', () => {
    expect([fine, killed, late, absent].map(endedText)).toEqual([
      'ended with code 0',
      'was ended by SIGSEGV',
      'was stopped at its limit of 12 min',
      'did not start: spawn node ENOENT',
    ]);
  });
});
