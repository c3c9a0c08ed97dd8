import { spawn } from 'node:child_process';

/** How a started program ended. `code` is null when a signal ended it or it never started. */
export interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  /** Set when it was still running at its time limit and was stopped for it. */
  readonly overMinutes?: number;
  /** Why it could not be started at all. */
  readonly notStarted?: string;
  /** What it wrote, both streams as they came, the last 200 000 characters. */
  readonly output: string;
}

export interface Run {
  readonly args: readonly string[];
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly limitMinutes: number;
}

const keptCharacters = 200_000;
/** A grandchild that was left behind can hold the streams open for ever; what it would still say is not waited for. */
const graceMs = 500;

function killGroup(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    // The runner leads a group of its own (see `detached`), so this ends what it started and nothing else.
    process.kill(process.platform === 'win32' ? pid : -pid, 'SIGKILL');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code !== 'ESRCH' && code !== 'EPERM') throw error;
  }
}

function cleanEnvironment(extra: Readonly<Record<string, string>>): NodeJS.ProcessEnv {
  const env: NodeJS.ProcessEnv = { ...process.env, NO_COLOR: '1', ...extra };
  // What an outer test runner sets for its workers; an inner one would take itself for one of them.
  const foreign = Object.keys(env).filter((key) => key.startsWith('VITEST') || key.startsWith('TEST_'));
  for (const key of ['FORCE_COLOR', 'NODE_ENV', ...foreign]) delete env[key];
  return env;
}

/** Runs this Node with the arguments to its end and never throws: what went wrong is in the answer. */
export function runNode({ args, cwd, env = {}, limitMinutes }: Run): Promise<Ended> {
  return new Promise((done) => {
    let output = '';
    let overMinutes: number | undefined;
    const child = spawn(process.execPath, args, {
      cwd,
      env: cleanEnvironment(env),
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: process.platform !== 'win32',
    });
    const keep = (chunk: Buffer): void => {
      output = (output + chunk.toString('utf8')).slice(-keptCharacters);
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    const limit = setTimeout(() => {
      overMinutes = limitMinutes;
      killGroup(child.pid);
    }, limitMinutes * 60_000);
    const stopWithUs = (): void => {
      killGroup(child.pid);
      process.exit(130);
    };
    process.once('SIGINT', stopWithUs);
    process.once('SIGTERM', stopWithUs);
    const finish = (ended: Omit<Ended, 'output' | 'overMinutes'>): void => {
      clearTimeout(limit);
      process.off('SIGINT', stopWithUs);
      process.off('SIGTERM', stopWithUs);
      done({ ...ended, output, ...(overMinutes === undefined ? {} : { overMinutes }) });
    };
    child.once('error', (error) => finish({ code: null, signal: null, notStarted: error.message }));
    child.once('exit', (code, signal) => {
      killGroup(child.pid);
      const late = setTimeout(() => finish({ code, signal }), graceMs);
      child.once('close', () => {
        clearTimeout(late);
        finish({ code, signal });
      });
    });
  });
}
