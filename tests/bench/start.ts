import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type Browser, chromium } from '@playwright/test';
import { runCommand } from '../../core/cli/main.ts';
import { startHost } from '../api/running-host.ts';
import { chromiumFlags, findChromium } from '../support/chromium.ts';

/**
 * From starting the program to a first row that answers a key, on a workshop with the sample in it, against a bare page
 * with one button from a bare process of the same Node in the same browser. Promise: under 3 s. `npm run build` first;
 * `node tests/bench/start.ts`.
 */
const ROUNDS = 7;
const PROMISE_MS = 3_000;

const BARE = `import { createServer } from 'node:http';
const page = '<button onclick="document.title=1" autofocus>Go</button>';
const server = createServer((_, reply) => reply.setHeader('content-type', 'text/html').end(page));
server.listen(0, '127.0.0.1', () => console.log('http://127.0.0.1:' + server.address().port));
`;

async function bareServer(file: string): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(process.execPath, [file], { stdio: ['ignore', 'pipe', 'inherit'] });
  const [address] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
  return { child, address };
}

/** ms until the bare page's button has answered Enter. */
async function bare(browser: Browser, file: string): Promise<number> {
  const since = performance.now();
  const { child, address } = await bareServer(file);
  const page = await browser.newPage();
  await page.goto(address);
  await page.locator('button').press('Enter');
  await page.waitForFunction(() => document.title === '1');
  const took = performance.now() - since;
  await page.close();
  child.kill();
  return took;
}

/** ms until Enter on the first row of the program has opened the job. */
async function program(browser: Browser, folder: string): Promise<number> {
  const since = performance.now();
  const host = await startHost({ folder });
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const domain = new URL(host.address).hostname;
  await context.addCookies([
    { name: 'everybolt-session', value: host.secret, domain, path: '/', httpOnly: true, sameSite: 'Strict' },
  ]);
  const page = await context.newPage();
  await page.goto(host.address);
  await page.getByRole('button', { name: /^Carry on/ }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^(All started|All tight|It is back|I have read it)/ }).waitFor();
  const took = performance.now() - since;
  await context.close();
  await host.end();
  return took;
}

const middleOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

async function main(): Promise<void> {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-bench-start-'));
  const file = join(dir, 'bare.mjs');
  writeFileSync(file, BARE);
  await runCommand(['sample', '--workshop', join(dir, 'workshop')]);
  cpSync(join(import.meta.dirname, '..', '..', 'dist', 'renderer'), join(dir, 'renderer'), {
    recursive: true,
  });
  const found = findChromium();
  const browser = await chromium.launch({
    ...('path' in found ? { executablePath: found.path } : {}),
    args: chromiumFlags(),
  });
  const own: number[] = [];
  const ratios: number[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    const reference = await bare(browser, file);
    const took = await program(browser, dir);
    // The first round warms everything up: it is not counted.
    if (round > 0) {
      own.push(took);
      ratios.push(took / reference);
    }
    console.log(`round ${round}: ${Math.round(took)} ms, bare page ${Math.round(reference)} ms`);
  }
  await browser.close();
  rmSync(dir, { recursive: true, force: true });
  const middle = middleOf(own);
  console.log(
    `start to a first row that answered a key: ${middleOf(ratios).toFixed(1)} times a bare page; ${(middle / 1000).toFixed(2)} s here, middle of ${ROUNDS} (promise: under 3 s)`,
  );
  process.exitCode = middle < PROMISE_MS ? 0 : 1;
}

await main();
