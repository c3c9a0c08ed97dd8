import { z } from 'zod';
import type { Report, TestSeen } from './outcome.ts';

const message = z.object({ message: z.string().optional(), value: z.string().optional() });

const specShape = z.object({
  title: z.string(),
  tests: z.array(
    z.object({
      projectName: z.string().default(''),
      status: z.string(),
      results: z.array(z.object({ errors: z.array(message).default([]) })),
    }),
  ),
});

interface Suite {
  readonly title: string;
  readonly specs?: readonly z.infer<typeof specShape>[] | undefined;
  readonly suites?: readonly Suite[] | undefined;
}

const suiteShape: z.ZodType<Suite> = z.lazy(() =>
  z.object({
    title: z.string(),
    specs: z.array(specShape).optional(),
    suites: z.array(suiteShape).optional(),
  }),
);

const shape = z.object({ suites: z.array(suiteShape), errors: z.array(message).default([]) });

/** Flaky counts as failed: a test that passes the second time has said that something is wrong. */
function stateOf(status: string): TestSeen['state'] {
  if (status === 'expected') return 'passed';
  return status === 'skipped' ? 'skipped' : 'failed';
}

// The runner colours its messages even in JSON.
const colour = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');

function words(error: z.infer<typeof message>): string {
  return (error.message ?? error.value ?? 'a failure without words').replace(colour, '');
}

function testsOf(suite: Suite, above: readonly string[]): TestSeen[] {
  const path = [...above, suite.title];
  const own = (suite.specs ?? []).flatMap((spec) =>
    spec.tests.map((test) => ({
      name: [...path, spec.title].join(' › ') + (test.projectName === '' ? '' : ` [${test.projectName}]`),
      state: stateOf(test.status),
      why:
        test.results.flatMap((result) => result.errors.map(words)).join('\n') || `It ended ${test.status}.`,
    })),
  );
  return [...own, ...(suite.suites ?? []).flatMap((inner) => testsOf(inner, path))];
}

/** Reads the JSON of Playwright's `json` reporter. Throws when it has another shape. */
export function readPlaywright(json: unknown): Report {
  const report = shape.parse(json);
  return {
    tests: report.suites.flatMap((suite) => testsOf(suite, [])),
    broken: report.errors.map((error) => ({ what: 'browser', why: words(error) })),
  };
}
