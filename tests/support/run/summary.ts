import type { Failure, Outcome } from './outcome.ts';

const shownLines = 40;
const shownFailures = 40;

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(1)} s`.padStart(8);
}

/** One calm line for a stage, e.g. `unit      312 passed, 2 failed                10.4 s`. */
export function stageLine(name: string, outcome: Outcome, ms: number): string {
  const counts = [`${outcome.passed} passed`];
  if (outcome.failures.length > 0) counts.push(`${outcome.failures.length} failed`);
  if (outcome.excused > 0) counts.push(`${outcome.excused} skipped for a listed reason`);
  return `${name.padEnd(10)}${counts.join(', ').padEnd(36)}${seconds(ms)}`;
}

function indented(failure: Failure): string[] {
  const lines = failure.why.trimEnd().split('\n');
  const shown = lines.slice(0, shownLines).map((line) => `      ${line}`.trimEnd());
  const more = lines.length > shownLines ? [`      … and ${lines.length - shownLines} more lines`] : [];
  return [`  ✗ ${failure.what}`, ...shown, ...more];
}

/** The details of a stage: nothing when all is well. */
export function failureLines(outcome: Outcome): string[] {
  const shown = outcome.failures.slice(0, shownFailures).flatMap(indented);
  const left = outcome.failures.length - shownFailures;
  return left > 0 ? [...shown, `  … and ${left} more failures`] : shown;
}

/** The last line of the whole run, always `N passed, N failed`. */
export function lastLine(outcomes: readonly Outcome[]): string {
  const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
  const failed = outcomes.reduce((sum, outcome) => sum + outcome.failures.length, 0);
  return `${passed} passed, ${failed} failed`;
}
