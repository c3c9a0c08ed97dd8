import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureChromium } from '../chromium.ts';
import { sumCheck, sumTests } from './outcome.ts';
import type { Outcome, Report } from './outcome.ts';
import { readPlaywright } from './playwright-report.ts';
import { runNode } from './process.ts';
import { allowedSkips } from './skips.ts';
import { readVitest } from './vitest-report.ts';

/** Where a run works: the project's folder, and a fresh folder for the runners' results. */
export interface Place {
  readonly root: string;
  readonly results: string;
}

export interface Stage {
  readonly name: string;
  readonly run: (place: Place) => Promise<Outcome>;
}

/** Programs by their files, so that all run on the Node that runs this and need no shell. */
const programs = {
  tsc: 'node_modules/tsgo/bin/tsc',
  eslint: 'node_modules/eslint/bin/eslint.js',
  biome: 'node_modules/@biomejs/biome/bin/biome',
  knip: 'node_modules/knip/bin/knip.js',
  vitest: 'node_modules/vitest/vitest.mjs',
  playwright: 'node_modules/@playwright/test/cli.js',
  layers: 'tests/support/layers.ts',
};

const checkMinutes = 5;
const testMinutes = 12;

function check(name: string, commands: readonly (readonly string[])[]): Stage {
  const run = async ({ root }: Place): Promise<Outcome> => {
    const ended = [];
    for (const args of commands) ended.push(await runNode({ args, cwd: root, limitMinutes: checkMinutes }));
    return sumCheck(name, ended);
  };
  return { name, run };
}

function written(file: string): string | undefined {
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}

interface Tests {
  readonly name: string;
  readonly args: (file: string) => readonly string[];
  readonly env?: (file: string) => Readonly<Record<string, string>>;
  readonly read: (json: unknown, root: string) => Report;
}

function tests({ name, args, env, read }: Tests): Stage {
  const run = async ({ root, results }: Place): Promise<Outcome> => {
    const file = join(results, `${name}.json`);
    // CI: a test marked "only" is refused and a snapshot that is missing fails instead of being written.
    const ended = await runNode({
      args: args(file),
      cwd: root,
      env: { CI: 'true', ...env?.(file) },
      limitMinutes: testMinutes,
    });
    return sumTests(name, written(file), ended, (json) => read(json, root), allowedSkips);
  };
  return { name, run };
}

function vitest(name: string): Stage {
  return tests({
    name,
    args: (file) => [programs.vitest, 'run', '--project', name, '--reporter=json', `--outputFile=${file}`],
    read: readVitest,
  });
}

const playwright = tests({
  name: 'browser',
  args: () => [programs.playwright, 'test'],
  env: (file) => ({ EVERYBOLT_BROWSER_RESULTS: file }),
  read: readPlaywright,
});

const browser: Stage = {
  name: playwright.name,
  run: async (place) => {
    const chromium = ensureChromium();
    if ('path' in chromium) return playwright.run(place);
    return { passed: 0, failures: [{ what: playwright.name, why: chromium.missing }], excused: 0 };
  },
};

/** All that `npm test` checks, quick ones first. */
export const stages: readonly Stage[] = [
  check('types', [[programs.tsc, '-p', 'tsconfig.json']]),
  check('lint', [
    [programs.eslint, '--max-warnings', '0', '.'],
    [programs.biome, 'check', '--reporter=summary', '.'],
  ]),
  check('layers', [[programs.layers]]),
  check('unused', [[programs.knip]]),
  vitest('unit'),
  vitest('api'),
  browser,
];
