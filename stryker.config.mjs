import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Set by tests/mutants/run.ts: core/tally or core/reinstall, each judged by the tests beside it alone. */
const folder = process.env.MUTANTS_OF ?? 'tally';

/**
 * Plants one mistake at a time in a folder of the core and looks whether a test notices. Not part of `npm test`: a run
 * takes from minutes to an hour. No kind of mutant is switched off and no line is excepted, wording included.
 */
export default {
  mutate: [`core/${folder}/**/*.ts`],
  ignorePatterns: ['/samples', '/renderer', '/electron', '/dist', '/coverage', '/reports', '/test-results'],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
  plugins: ['@stryker-mutator/vitest-runner'],
  coverageAnalysis: 'perTest',
  // Generous, so that a slow machine is not taken for a mutant that hangs.
  timeoutMS: 30_000,
  concurrency: 2,
  // What was found before is kept outside the tree, so that only what changed is tried again.
  incremental: true,
  incrementalFile: join(tmpdir(), `everybolt-mutants-${folder}.json`),
  reporters: ['progress-append-only', 'html', 'json'],
  htmlReporter: { fileName: `reports/mutants/${folder}.html` },
  jsonReporter: { fileName: `reports/mutants/${folder}.json` },
  thresholds: { high: 90, low: 80, break: 80 },
};
