import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type BrowserContext, expect, type Page, test as base } from '@playwright/test';
import { parseReport } from '../../../core/host/launch.ts';

const ROOT = join(import.meta.dirname, '..', '..', '..');

/** The real host on a folder of its own, and the ways a test meddles with it. */
export interface Program {
  readonly folder: string;
  readonly workshop: string;
  address: string;
  secret: string;
  /** Runs a command line on the workshop; the host must not hold it. */
  start(): Promise<void>;
  kill(): Promise<void>;
  /** Lets a browser in, as the shell does: by the session's cookie. */
  enter(context: BrowserContext): Promise<void>;
}

async function startHost(
  folder: string,
  secret: string,
  again?: string,
): Promise<{ child: ChildProcess; address: string }> {
  const child = spawn(
    process.execPath,
    [
      join(ROOT, 'core', 'host', 'main.ts'),
      '--workshop',
      join(folder, 'workshop'),
      '--renderer',
      join(ROOT, 'dist', 'renderer'),
      '--shell',
    ],
    { stdio: ['pipe', 'pipe', 'inherit'], env: { ...process.env, XDG_CACHE_HOME: join(folder, 'cache') } },
  );
  child.stdin.write(`${JSON.stringify(again === undefined ? { secret } : { secret, host: again })}\n`);
  const [line] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
  const report = parseReport(line);
  if (report?.everybolt !== 'ready') throw new Error(`Expected the host's line, got ${line}`);
  return { child, address: report.address };
}

function makeProgram(folder: string): Program {
  let child: ChildProcess | null = null;
  const program: Program = {
    folder,
    workshop: join(folder, 'workshop'),
    address: '',
    secret: randomBytes(32).toString('hex'),
    start: async () => {
      const again = program.address === '' ? undefined : program.address.slice('http://'.length);
      const started = await startHost(folder, program.secret, again);
      child = started.child;
      program.address = started.address;
    },
    kill: async () => {
      if (!child || child.exitCode !== null || child.signalCode !== null) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
    enter: async (context) => {
      const { hostname } = new URL(program.address);
      await context.addCookies([
        {
          name: 'everybolt-session',
          value: program.secret,
          domain: hostname,
          path: '/',
          httpOnly: true,
          sameSite: 'Strict',
        },
      ]);
    },
  };
  return program;
}

/** A browser test on the real program: its own workshop, a page that is let in. */
export const test = base.extend<{ program: Program; open: () => Promise<Page> }>({
  program: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'everybolt-e2e-'));
    const program = makeProgram(folder);
    await program.start();
    await use(program);
    await program.kill();
    rmSync(folder, { recursive: true, force: true });
  },
  open: async ({ program, context }, use) => {
    await program.enter(context);
    await use(async () => {
      const page = await context.newPage();
      await page.goto(program.address);
      return page;
    });
  },
});

/** Starts a job from the empty program, as its first screen teaches. */
export async function startJob(page: Page, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Start my own' }).click();
  await page.getByLabel('What machine, or what part of it?').fill(title);
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('What came off')).toBeFocused();
}

/** Brings in the sample job by its key; Jobs shows the copy to carry on with. */
export async function openSample(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the sample job' }).waitFor();
  await page.keyboard.press('s');
  await page.getByRole('button', { name: /^Carry on/ }).waitFor();
}

export { expect };
