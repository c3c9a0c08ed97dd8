import { defineConfig } from '@playwright/test';
import { chromiumFlags, findChromium } from './tests/support/chromium.ts';

// Only looks: the setup installs a browser where it can, and each worker reads this file again after it.
const chromium = findChromium();

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  globalSetup: './tests/support/run/browser-setup.ts',
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  reporter: [
    ['line'],
    ['json', { outputFile: process.env['EVERYBOLT_BROWSER_RESULTS'] ?? 'test-results/results.json' }],
  ],
  use: {
    browserName: 'chromium',
    trace: 'off',
    video: 'off',
    screenshot: 'off',
    launchOptions: {
      ...('path' in chromium ? { executablePath: chromium.path } : {}),
      args: chromiumFlags(),
    },
  },
});
