import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type Handover, parseReport, pauseBefore, type Ready, type Refusal } from '../host/launch.ts';

/** A host kept running: started again when it dies, under the same name, port and session if it can. */
export interface KeptHost {
  /** Ends the host and waits for it. */
  close(): Promise<void>;
}

export interface KeepOptions {
  readonly root: string;
  readonly arguments: readonly string[];
  readonly secret: string;
  /** Each time a host answers; `again` after one that died. */
  readonly onReady: (ready: Ready, again: boolean) => void;
  /** It could not start, or stays down: said once, nothing follows. */
  readonly onDown: (refusal: Refusal) => void;
  readonly onDeath: (pauseMs: number) => void;
}

export function keepHost(options: KeepOptions): KeptHost {
  const deaths: number[] = [];
  let child: ChildProcess | null = null;
  let waiting: NodeJS.Timeout | null = null;
  let closing = false;
  let host: string | undefined;

  const start = () => {
    waiting = null;
    const handover: Handover =
      host === undefined ? { secret: options.secret } : { secret: options.secret, host };
    const started = startHostProcess(options.root, options.arguments, handover, (report) => {
      if (report.everybolt === 'refused') {
        closing = true;
        options.onDown(report);
        return;
      }
      const again = host !== undefined;
      host = report.address.slice('http://'.length);
      options.onReady(report, again);
    });
    child = started;
    started.once('exit', () => {
      child = null;
      if (closing) return;
      deaths.push(Date.now());
      // One that never answered will not answer the next time either.
      const pauseMs = host === undefined ? null : pauseBefore(deaths);
      if (pauseMs === null) {
        closing = true;
        options.onDown(staysDown(deaths.length));
        return;
      }
      options.onDeath(pauseMs);
      waiting = setTimeout(start, pauseMs);
    });
  };
  start();
  return {
    close: async () => {
      closing = true;
      if (waiting) clearTimeout(waiting);
      const last = child;
      if (last === null || last.exitCode !== null) return;
      await new Promise<void>((resolve) => {
        last.once('exit', () => resolve());
        last.stdin?.end();
      });
    },
  };
}

function staysDown(times: number): Refusal {
  const often = times === 1 ? 'at once' : `${times} times in a row`;
  const sentence = `Expected the program to stay up, but it ended ${often}. What was saved is saved; what it said stands above.`;
  return { everybolt: 'refused', code: 'fault', sentence, holder: null };
}

/** One host process. The secret goes through its input, where no other user can read it. */
function startHostProcess(
  root: string,
  more: readonly string[],
  handover: Handover,
  onReport: (report: Ready | Refusal) => void,
): ChildProcess {
  const main = join(root, 'core', 'host', 'main.ts');
  const child = spawn(process.execPath, [main, '--shell', ...more], { stdio: ['pipe', 'pipe', 'inherit'] });
  child.stdin.on('error', () => {
    // It died before it read: its exit says so.
  });
  child.stdin.write(`${JSON.stringify(handover)}\n`);
  createInterface({ input: child.stdout }).once('line', (line) => {
    const report = parseReport(line);
    if (report) onReport(report);
    else child.kill();
  });
  return child;
}
