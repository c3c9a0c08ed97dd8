import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type ClientRequest, type IncomingMessage, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseReport, type Report } from '../../core/host/launch.ts';

/** The real host process, started as a shell starts it, on a folder of its own. */
export interface RunningHost {
  readonly address: string;
  /** Name and port. */
  readonly host: string;
  readonly port: number;
  readonly desk: string;
  readonly secret: string;
  readonly workshop: string;
  readonly child: ChildProcess;
  /** What it said on standard error. */
  faults(): string;
  /** Closes its input, as a shell that ends does, and gives its exit code. */
  end(): Promise<number | null>;
  kill(signal: NodeJS.Signals): Promise<void>;
}

export interface StartOptions {
  readonly folder: string;
  readonly secret?: string;
  /** Name and port to take again. */
  readonly again?: string;
  /** First line of its input, in place of a proper one. */
  readonly line?: string;
  readonly arguments?: readonly string[];
}

const MAIN = join(import.meta.dirname, '..', '..', 'core', 'host', 'main.ts');

/** A folder for one test, with a workshop and built screens of two small files in it. */
export function makeFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'everybolt-host-'));
  mkdirSync(join(path, 'renderer', 'assets'), { recursive: true });
  writeFileSync(
    join(path, 'renderer', 'index.html'),
    '<!doctype html><html><head><title>Workshop</title><script type="module" src="/assets/index-a1b2c3d4.js"></script></head><body></body></html>',
  );
  writeFileSync(
    join(path, 'renderer', 'assets', 'index-a1b2c3d4.js'),
    'document.title = "Workshop, running";',
  );
  writeFileSync(join(path, 'secret.txt'), 'not for the window');
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** Starts the host and gives its process and the one line it says. */
export async function startRaw(options: StartOptions) {
  const secret = options.secret ?? randomBytes(32).toString('hex');
  const workshop = join(options.folder, 'workshop');
  const child = spawn(
    process.execPath,
    [
      MAIN,
      '--workshop',
      workshop,
      '--renderer',
      join(options.folder, 'renderer'),
      ...(options.arguments ?? ['--shell']),
    ],
    {
      stdio: ['pipe', 'pipe', 'pipe'],
      env: { ...process.env, XDG_CACHE_HOME: join(options.folder, 'cache') },
    },
  );
  let faults = '';
  child.stderr.on('data', (chunk: Buffer) => {
    faults += chunk.toString();
  });
  const lines = createInterface({ input: child.stdout });
  child.stdin.on('error', () => {});
  const handover = options.again === undefined ? { secret } : { secret, host: options.again };
  child.stdin.write(`${options.line ?? JSON.stringify(handover)}\n`);
  const line = await new Promise<string>((resolve, reject) => {
    lines.once('line', resolve);
    child.once('exit', (code) =>
      setTimeout(() => reject(new Error(`Host ended with ${code}: ${faults}`)), 100),
    );
  });
  const report: Report | null = parseReport(line);
  if (report === null) throw new Error(`Expected the host's line, got ${line}`);
  return { child, report, secret, workshop, faults: () => faults };
}

export async function startHost(options: StartOptions): Promise<RunningHost> {
  const { child, report, secret, workshop, faults } = await startRaw(options);
  if (report.everybolt !== 'ready') throw new Error(report.sentence);
  const host = report.address.slice('http://'.length);
  const gone = once(child, 'exit');
  return {
    address: report.address,
    host,
    port: Number(host.split(':')[1]),
    desk: report.desk,
    secret,
    workshop,
    child,
    faults,
    end: async () => {
      child.stdin.end();
      await gone;
      return child.exitCode;
    },
    kill: async (signal) => {
      if (child.exitCode === null && child.signalCode === null) child.kill(signal);
      await gone;
    },
  };
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Sends exactly these headers to a port of this computer, the Host among them: what no browser lets a page do. */
export async function ask(
  port: number,
  method: string,
  path: string,
  headers: Readonly<Record<string, string | string[]>>,
  body?: string,
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, method, path, headers, setHost: false, agent: false },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8');
        answer.on('data', (chunk: string) => {
          text += chunk;
        });
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }),
        );
        answer.on('error', reject);
      },
    );
    asked.on('error', reject);
    asked.end(body);
  });
}

/** Headers as the program's own page sends them. */
export const own = (host: RunningHost) => ({
  Host: host.host,
  'Sec-Fetch-Site': 'same-origin',
  'Sec-Fetch-Mode': 'cors',
  'Sec-Fetch-Dest': 'empty',
  Cookie: `everybolt-session=${host.secret}`,
});

/** Headers as a browser sends them for a page typed into the address bar. */
export const typed = (host: RunningHost) => ({
  Host: host.host,
  'Sec-Fetch-Site': 'none',
  'Sec-Fetch-Mode': 'navigate',
  'Sec-Fetch-Dest': 'document',
});

/** One call of the contract, as the program's own page makes it; `change` replaces headers. */
export async function call(
  host: RunningHost,
  name: string,
  input: unknown,
  change: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const body = JSON.stringify({ json: input });
  const headers = {
    ...own(host),
    Origin: host.address,
    'Content-Type': 'application/json',
    'Content-Length': String(Buffer.byteLength(body)),
    ...change,
  };
  return ask(host.port, 'POST', `/rpc/${name}`, headers, body);
}

/** Opens the stream of changes and leaves it open. */
export async function listenTo(
  host: RunningHost,
): Promise<{ asked: ClientRequest; answer: IncomingMessage }> {
  const asked = request({
    host: '127.0.0.1',
    port: host.port,
    path: '/changes',
    headers: own(host),
    setHost: false,
  });
  asked.end();
  const [answer] = (await once(asked, 'response')) as [IncomingMessage];
  answer.on('error', () => {});
  return { asked, answer };
}
