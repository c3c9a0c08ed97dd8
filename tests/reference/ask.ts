import { expect } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { offPercent } from './rows.ts';

/** One command line, asked in process as somebody types it, and read from the one JSON value. */
interface Said {
  readonly code: number;
  /** The value at a path such as "reference.torqueNm". */
  readonly at: (path: string) => unknown;
  /** The number at a path; fails with what stands there instead. */
  readonly number: (path: string) => number;
  readonly all: unknown;
}

export async function ask(...args: readonly string[]): Promise<Said> {
  const answer = await runCommand([...args, '--json']);
  // What a script reads has gone through JSON.
  const all: unknown = JSON.parse(JSON.stringify(answer.value ?? null));
  const at = (path: string): unknown =>
    path.split('.').reduce<unknown>((value, name) => {
      return typeof value === 'object' && value !== null
        ? (value as Record<string, unknown>)[name]
        : undefined;
    }, all);
  return {
    code: answer.code,
    at,
    all,
    number: (path) => {
      const value = at(path);
      if (typeof value !== 'number')
        throw new Error(`${args.join(' ')}: no number at ${path} in ${JSON.stringify(all).slice(0, 400)}`);
      return value;
    },
  };
}

export const near = (actual: number, expected: number, percent: number, says: string): void =>
  expect(offPercent(actual, expected), `${says}: ${actual} against ${expected}`).toBeLessThanOrEqual(percent);
