import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { chromium, type Page } from '@playwright/test';
import sharp from 'sharp';
import { runCommand } from '../../core/cli/main.ts';

/**
 * Takes the README's pictures: `node samples/screens/make.ts CHROMIUM`. The real program on the sample job, in a
 * workshop of its own; the screens must have been built. Each picture is the screen as it is, in its own size.
 */
const ROOT = resolve(import.meta.dirname, '..', '..');
const FOLDER = import.meta.dirname;

/** One picture: its window, and how the screen is reached from Jobs. */
interface Picture {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly dark?: boolean;
  readonly reach: (page: Page) => Promise<void>;
}

/** Opens a copy of the sample by its stage. */
const open = (stage: string) => async (page: Page) => {
  const first = page.getByRole('heading', { level: 2, name: `Sample: blower head, ${stage}` });
  if (await first.isVisible()) await page.getByRole('button', { name: /^Carry on|^Look at it/ }).click();
  else await page.getByText(`Sample: blower head, ${stage}`).click();
  const read = page.getByRole('button', { name: 'I have read it' });
  // Only a job that was stopped with a note asks for that, a moment after it opens.
  await read.waitFor({ timeout: 1500 }).then(
    () => read.click(),
    () => undefined,
  );
};

const at = (stage: string, key: string) => async (page: Page) => {
  await open(stage)(page);
  // A key that comes before its step stands is answered by Jobs.
  await page.getByRole('button', { name: 'Print the sheet' }).waitFor();
  await page.keyboard.press(key);
};

const PICTURES: readonly Picture[] = [
  { name: 'jobs', width: 1440, height: 900, reach: async () => undefined },
  {
    name: 'removal',
    width: 1440,
    height: 900,
    reach: async (page) => {
      await open('half apart')(page);
      await page.getByRole('button', { name: /Removal 18/ }).click();
      await page.getByRole('textbox', { name: 'What came off' }).fill('14 M10x45 hex 16, class 8.8, bag 13');
    },
  },
  { name: 'put-back', width: 1440, height: 900, dark: true, reach: open('half back') },
  { name: 'off-the-machine', width: 1440, height: 900, reach: at('half back', 'F3') },
  { name: 'phone', width: 390, height: 844, reach: open('half back') },
];

async function startHost(workshop: string, secret: string) {
  const child = spawn(
    process.execPath,
    [
      join(ROOT, 'core', 'host', 'main.ts'),
      '--shell',
      '--workshop',
      workshop,
      '--renderer',
      join(ROOT, 'dist', 'renderer'),
    ],
    { stdio: ['pipe', 'pipe', 'inherit'], env: { ...process.env, XDG_CACHE_HOME: `${workshop}-cache` } },
  );
  child.stdin.write(`${JSON.stringify({ secret })}\n`);
  const [line] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
  const { address } = JSON.parse(line) as { address: string };
  return { address, end: () => child.stdin.end() };
}

const folder = mkdtempSync(join(tmpdir(), 'everybolt-pictures-'));
const workshop = join(folder, 'workshop');
await runCommand(['sample', '--workshop', workshop]);
const secret = randomBytes(32).toString('hex');
const host = await startHost(workshop, secret);
const browser = await chromium.launch({
  ...(process.argv[2] === undefined ? {} : { executablePath: process.argv[2] }),
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
});
try {
  for (const { name, width, height, dark, reach } of PICTURES) {
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: dark === true ? 'dark' : 'light',
      locale: 'en-GB',
      timezoneId: 'Europe/Berlin',
    });
    const { hostname } = new URL(host.address);
    const cookie = { name: 'everybolt-session', value: secret, domain: hostname, path: '/' };
    await context.addCookies([{ ...cookie, httpOnly: true, sameSite: 'Strict' }]);
    const page = await context.newPage();
    await page.goto(host.address);
    await page.getByRole('button', { name: /^Carry on/ }).waitFor();
    await reach(page);
    await page.waitForLoadState('networkidle');
    const shot = await page.screenshot();
    writeFileSync(join(FOLDER, `${name}.webp`), await sharp(shot).webp({ quality: 82 }).toBuffer());
    process.stdout.write(`${name}.webp\n`);
    await context.close();
  }
} finally {
  await browser.close();
  host.end();
  rmSync(folder, { recursive: true, force: true });
}
