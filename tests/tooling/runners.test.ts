import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { sumTests } from '../support/run/outcome.ts';
import type { Outcome } from '../support/run/outcome.ts';
import { readPlaywright } from '../support/run/playwright-report.ts';
import { runNode } from '../support/run/process.ts';
import { readVitest } from '../support/run/vitest-report.ts';
import { projectRoot, removeScratch, scratchProject } from './scratch.ts';

// The tables of summing.test.ts say what our reading makes of a JSON; here the installed runners write it.

const made: string[] = [];
afterEach(() => made.splice(0).forEach(removeScratch));

function scratch(files: Readonly<Record<string, string>>): string {
  const root = scratchProject({ 'package.json': '{"type":"module"}', ...files });
  made.push(root);
  return root;
}

const text = (file: string): string | undefined =>
  existsSync(file) ? readFileSync(file, 'utf8') : undefined;

async function vitest(files: Readonly<Record<string, string>>): Promise<Outcome> {
  const root = scratch({ 'vitest.config.ts': 'export default {};\n', ...files });
  const file = join(root, 'out.json');
  const program = join(projectRoot, 'node_modules/vitest/vitest.mjs');
  const args = [program, 'run', '--reporter=json', `--outputFile=${file}`];
  const ended = await runNode({ args, cwd: root, env: { CI: 'true' }, limitMinutes: 1 });
  return sumTests('unit', text(file), ended, (json) => readVitest(json, root), []);
}

async function playwright(files: Readonly<Record<string, string>>): Promise<Outcome> {
  const config = `export default { testDir: 'e2e', workers: 1, reporter: [['json', { outputFile: 'out.json' }]] };\n`;
  const root = scratch({ 'playwright.config.ts': config, ...files });
  const args = [join(projectRoot, 'node_modules/@playwright/test/cli.js'), 'test'];
  const ended = await runNode({ args, cwd: root, limitMinutes: 1 });
  return sumTests('browser', text(join(root, 'out.json')), ended, readPlaywright, []);
}

const whats = (outcome: Outcome): string[] => outcome.failures.map((failure) => failure.what).toSorted();
const head = "import { describe, expect, it } from 'vitest';\n";
const browserHead = "import { expect, test } from '@playwright/test';\n";

describe('the installed vitest', () => {
  it('is summed right with passed, failed, skipped, planned tests and a file that does not load', async () => {
    const sum = await vitest({
      'a.test.ts': `${head}describe('g', () => { it('one', () => {}); it('two', () => { expect(1).toBe(2); }); });\n`,
      'b.test.ts': `${head}it('three', () => {}); it.skip('four', () => {}); it.todo('five');\n`,
      'c.test.ts': "import './gone.ts';\n",
    });
    expect(sum.passed).toBe(2);
    expect(whats(sum)).toEqual(['a.test.ts › g two', 'b.test.ts › five', 'b.test.ts › four', 'c.test.ts']);
  });

  it('is one failure when it finds no test', async () => {
    const sum = await vitest({});
    expect([sum.passed, sum.failures.length]).toEqual([0, 1]);
    expect(sum.failures[0]?.why).toContain('Expected at least one test to run, got none.');
  });

  it('is one failure when an error escapes every test', async () => {
    const escape =
      "it('fine', async () => { setTimeout(() => { throw new Error('late'); }, 1); " +
      'await new Promise((done) => setTimeout(done, 50)); });';
    const sum = await vitest({ 'a.test.ts': `${head}${escape}\n` });
    expect([sum.passed, sum.failures.length]).toEqual([1, 1]);
    expect(sum.failures[0]?.why).toContain('ended with code 1');
  });

  it('refuses a test marked as the only one', async () => {
    const sum = await vitest({ 'a.test.ts': `${head}it.only('one', () => {}); it('two', () => {});\n` });
    expect(sum.failures.length).toBeGreaterThan(0);
  });
});

describe('the installed Playwright', () => {
  it('is summed right with passed, failed and skipped tests', async () => {
    const sum = await playwright({
      'e2e/a.spec.ts': `${browserHead}test('one', () => {}); test('two', () => { expect(1).toBe(2); });\n`,
      'e2e/b.spec.ts': `${browserHead}test.describe('g', () => { test('three', () => {}); test.skip('four', () => {}); });\n`,
    });
    expect(sum.passed).toBe(2);
    expect(whats(sum)).toEqual(['a.spec.ts › two', 'b.spec.ts › g › four']);
  });

  it('is one failure when it finds no test', async () => {
    const sum = await playwright({});
    expect([sum.passed, sum.failures.length]).toEqual([0, 1]);
    expect(sum.failures[0]?.why).toMatch(/no tests found/i);
  });
});

describe('a program that is run', () => {
  const run = (code: string, limitMinutes = 1) =>
    runNode({ args: ['-e', code], cwd: projectRoot, limitMinutes });

  it('tells its exit code and what it wrote on both streams', async () => {
    const ended = await run("console.log('out'); console.error('err'); process.exitCode = 3;");
    expect(ended).toMatchObject({ code: 3, signal: null });
    expect(ended.output).toContain('out');
    expect(ended.output).toContain('err');
  });

  it('tells the signal that ended it', async () => {
    expect(await run("process.kill(process.pid, 'SIGSEGV')")).toMatchObject({
      code: null,
      signal: 'SIGSEGV',
    });
  });

  it('is stopped at its limit, with all that it started', async () => {
    const child =
      "require('node:child_process').spawn(process.execPath, ['-e', 'setInterval(() => {}, 9)']).pid";
    const ended = await run(`console.log(${child}); setInterval(() => {}, 1000);`, 1 / 60);
    expect(ended.overMinutes).toBe(1 / 60);
    const pid = Number(ended.output.trim());
    expect(pid).toBeGreaterThan(0);
    await expect.poll(() => isRunning(pid)).toBe(false);
  });

  it('does not wait for a program that it left behind', async () => {
    const child =
      "const c = require('node:child_process').spawn(process.execPath, ['-e', 'setInterval(() => {}, 9)'], " +
      "{ stdio: 'inherit' }); c.unref(); console.log(c.pid); process.exit(0);";
    const ended = await run(child);
    expect(ended.code).toBe(0);
    await expect.poll(() => isRunning(Number(ended.output.trim()))).toBe(false);
  });

  it('is not waited for by way of a program in a group of its own that keeps the streams open', async () => {
    const code =
      "const c = require('node:child_process').spawn(process.execPath, ['-e', 'setTimeout(() => {}, 8000)'], " +
      "{ stdio: 'inherit', detached: true }); c.unref(); console.log(c.pid); process.exit(0);";
    const start = performance.now();
    const ended = await run(code);
    const took = performance.now() - start;
    process.kill(Number(ended.output.trim()));
    expect(ended.code).toBe(0);
    expect(took).toBeLessThan(5000);
  });

  it('is told apart when it can not be started', async () => {
    const ended = await runNode({ args: [], cwd: join(projectRoot, 'no such folder'), limitMinutes: 1 });
    expect(ended.notStarted).toContain('ENOENT');
  });
});

/** A process that has ended but that nobody has collected yet counts as ended. */
function isRunning(pid: number): boolean {
  const status = text(`/proc/${pid}/stat`);
  if (status !== undefined) return !/^\d+ \(.*\) Z/.test(status);
  if (process.platform === 'linux') return false;
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
