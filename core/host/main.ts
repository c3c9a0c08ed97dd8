import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { type Host, otherHost, startHost } from './host.ts';
import { hostPhotos } from './photos.ts';
import { type Handover, parseHandover, type Report } from './launch.ts';
import { defaultWorkshop, here, privateFolder } from './private-folder.ts';

/**
 * The host process. Says one line of JSON on standard output (see launch.ts), faults on standard error.
 * With `--shell` it takes its secret from standard input and ends when that closes, so that it never outlives
 * whoever started it, however they ended.
 */
async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      workshop: { type: 'string' },
      renderer: { type: 'string' },
      shell: { type: 'boolean', default: false },
    },
  });
  const workshop = values.workshop ?? defaultWorkshop(here());
  const inputEnded = new Promise<void>((resolve) => {
    process.stdin.once('end', resolve);
    process.stdin.once('close', resolve);
  });
  const handover = values.shell ? await readHandover() : {};
  if (handover === null)
    return fail('Expected one line with a secret on standard input, got something else.');
  const started = await startHost({
    workshop,
    renderer: values.renderer ?? join(import.meta.dirname, '..', '..', 'dist', 'renderer'),
    privateFolder: privateFolder(here()),
    photos: hostPhotos,
    ...handover,
  });
  if (!started.ok) {
    const other = started.fault.code === 'locked' ? otherHost(workshop) : null;
    report({ everybolt: 'refused', ...started.fault, holder: other?.ok ? other.value : null });
    process.exitCode = 1;
    process.stdin.destroy();
    return;
  }
  const host = started.value;
  endWith(host, values.shell ? inputEnded : null);
  report({ everybolt: 'ready', address: host.address, desk: host.desk, workshop, pid: process.pid });
}

/** The first line of standard input; the rest is only watched for its end. */
async function readHandover(): Promise<Handover | null> {
  const lines = createInterface({ input: process.stdin });
  const timer = setTimeout(() => lines.close(), 10_000);
  const line = await new Promise<string>((resolve) => {
    lines.once('line', resolve);
    lines.once('close', () => resolve(''));
  });
  clearTimeout(timer);
  lines.removeAllListeners();
  return parseHandover(line);
}

function endWith(host: Host, shellGone: Promise<void> | null): void {
  const end = () => {
    host.close().then(
      () => process.exit(0),
      (error: unknown) => {
        console.error(error);
        process.exit(1);
      },
    );
  };
  process.once('SIGTERM', end);
  // A terminal sends these to the whole family of processes; with a shell, the shell decides and closes our input.
  for (const signal of ['SIGINT', 'SIGHUP'] as const) process.on(signal, shellGone ? () => {} : end);
  if (!shellGone) return;
  void shellGone.then(end);
  process.stdin.resume();
}

function report(line: Report): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}

function fail(sentence: string): void {
  report({ everybolt: 'refused', code: 'input', sentence, holder: null });
  process.exitCode = 2;
  process.stdin.destroy();
}

await main();
