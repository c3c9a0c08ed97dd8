import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseReport } from '../../core/host/launch.ts';
import { plainEnvironment } from '../host-process.ts';
import { packedPaths } from './places.ts';

/**
 * Starts a laid-out host with its own Node, in an empty workshop, and ends it. Answers with the address it gave; throws
 * with its words where it does not start. What this leaves untried is the runtime and its window.
 */
export async function tryHost(host: string, platform: NodeJS.Platform): Promise<string> {
  const { node, main, screens } = packedPaths(dirname(host), platform);
  const folder = mkdtempSync(join(tmpdir(), 'everybolt-packed-'));
  const child = spawn(
    node,
    [main, '--shell', '--workshop', join(folder, 'workshop'), '--renderer', screens],
    {
      stdio: ['pipe', 'pipe', 'inherit'],
      env: { ...plainEnvironment(process.env), XDG_CACHE_HOME: join(folder, 'cache') },
    },
  );
  try {
    child.stdin.write(`${JSON.stringify({ secret: randomBytes(32).toString('hex') })}\n`);
    const gone = once(child, 'exit').then(() => '');
    const line = await Promise.race([
      once(createInterface({ input: child.stdout }), 'line').then(([text]) => String(text)),
      gone,
    ]);
    const report = parseReport(line);
    if (report?.everybolt !== 'ready') throw new Error(`Expected the packed host to start, got: ${line}`);
    child.stdin.end();
    await gone;
    return report.address;
  } finally {
    child.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}
