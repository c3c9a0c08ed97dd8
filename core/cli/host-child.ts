import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { StartProcess } from '../host/launch.ts';

/** How `npm start` makes a host process. The secret goes through its input, where no other user can read it. */
export function hostProcess(root: string, more: readonly string[]): StartProcess {
  return (handover, { line, gone }) => {
    const main = join(root, 'core', 'host', 'main.ts');
    const child = spawn(process.execPath, [main, '--shell', ...more], { stdio: ['pipe', 'pipe', 'inherit'] });
    child.once('error', gone);
    child.once('exit', gone);
    child.stdin.on('error', () => {
      // It died before it read: its exit says so.
    });
    child.stdin.write(`${JSON.stringify(handover)}\n`);
    createInterface({ input: child.stdout }).once('line', line);
    return { end: () => child.stdin.end(), kill: () => child.kill('SIGKILL') };
  };
}
