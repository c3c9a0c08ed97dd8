import { isAbsolute, relative, sep } from 'node:path';
import { z } from 'zod';
import type { Report, TestSeen } from './outcome.ts';

const shape = z.object({
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      message: z.string().default(''),
      assertionResults: z.array(
        z.object({
          fullName: z.string(),
          status: z.string(),
          failureMessages: z.array(z.string()).nullish(),
        }),
      ),
    }),
  ),
});

/** A state that this list does not know is a failure, not a pass. */
function stateOf(status: string): TestSeen['state'] {
  if (status === 'passed') return 'passed';
  return ['skipped', 'pending', 'todo', 'disabled'].includes(status) ? 'skipped' : 'failed';
}

/** A file's name below the project's folder, with forward slashes everywhere. */
function shortName(file: string, root: string): string {
  return (isAbsolute(file) ? relative(root, file) : file).split(sep).join('/');
}

/**
 * Reads the JSON of vitest's `json` reporter. Throws when it has another shape.
 * @param root the project's folder, for short file names
 */
export function readVitest(json: unknown, root: string): Report {
  const files = shape.parse(json).testResults;
  const tests = files.flatMap((file) =>
    file.assertionResults.map((test) => ({
      name: `${shortName(file.name, root)} › ${test.fullName}`,
      state: stateOf(test.status),
      why: (test.failureMessages ?? []).join('\n') || `It ended ${test.status}, without a message.`,
    })),
  );
  const broken = files
    .filter((file) => file.status !== 'passed')
    .filter((file) => !file.assertionResults.some((test) => stateOf(test.status) === 'failed'))
    .map((file) => ({
      what: shortName(file.name, root),
      why:
        file.message === ''
          ? 'Expected the file to load and run, got a failed file without a failed test.'
          : file.message,
    }));
  return { tests, broken };
}
