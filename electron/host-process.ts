import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { StartProcess } from '../core/host/launch.ts';

export interface HostProgram {
  /** A plain Node, never the one inside the runtime: native modules of one crash the other. */
  readonly node: string;
  /** `core/host/main.ts`. */
  readonly main: string;
  readonly workshop: string;
  readonly screens: string;
}

/** How the shell makes a host process; see the launch contract. */
export function hostProcess(program: HostProgram): StartProcess {
  return (handover, { line, gone }) => {
    const child = spawn(
      program.node,
      [program.main, '--shell', '--workshop', program.workshop, '--renderer', program.screens],
      { stdio: ['pipe', 'pipe', 'inherit'], env: plainEnvironment(process.env) },
    );
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

/** The environment without what is meant for the runtime. */
export function plainEnvironment(env: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(env).filter(([name]) => !/^(ELECTRON_|CHROME_)/.test(name)));
}
