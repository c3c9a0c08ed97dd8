import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/api/**', 'tests/e2e/**', 'tests/bench/**', 'tests/faults/**'],
          setupFiles: ['tests/support/seed.ts'],
          testTimeout: 180_000,
        },
      },
      {
        test: {
          name: 'api',
          include: ['tests/api/**/*.test.ts', 'tests/faults/**/*.test.ts'],
          setupFiles: ['tests/support/seed.ts'],
          testTimeout: 240_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
