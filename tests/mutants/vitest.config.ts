import { defineConfig } from 'vitest/config';

/**
 * The tests that judge mutants of a folder: those beside it, pure and quick. Random jobs are few and always the same,
 * so that a mutant lives or dies the same way twice. Planted mistakes stand on SQLite and take a minute; they are left
 * to `npm test`.
 */
export default defineConfig({
  test: {
    include: [`tests/${process.env['MUTANTS_OF'] ?? 'tally'}/**/*.test.ts`],
    exclude: ['tests/reinstall/mistakes.test.ts'],
    setupFiles: ['tests/mutants/same-jobs.ts'],
    env: { PROPERTY_RUNS: '10' },
    testTimeout: 60_000,
    // A worker for every file and mutant takes longer than the tests; mutants of constants are met all the same,
    // because each run has a new worker.
    isolate: false,
  },
});
