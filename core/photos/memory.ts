import { writeSync } from 'node:fs';
import { Worker } from 'node:worker_threads';

/** Said on standard error just before a process that took too much memory ends itself. */
export const MEMORY_WORD = 'everybolt: too much memory';

/**
 * Ends this process when it holds more than so many megabytes, decoders' own memory included. It runs beside the work,
 * because a decoder may keep the main thread for seconds. 0 = no limit.
 */
export function watchMemory(limitMb: number): void {
  if (!(limitMb > 0)) return;
  const code = `
    const { writeSync } = require('node:fs');
    const { limitMb, word } = require('node:worker_threads').workerData;
    setInterval(() => {
      if (process.memoryUsage.rss() < limitMb * 1048576) return;
      writeSync(2, word + '\\n');
      process.kill(process.pid, 'SIGKILL');
    }, 100);`;
  const watcher = new Worker(code, {
    eval: true,
    workerData: { limitMb, word: MEMORY_WORD },
    resourceLimits: { maxOldGenerationSizeMb: 16, maxYoungGenerationSizeMb: 4 },
  });
  watcher.unref();
  watcher.on('error', (error) => writeSync(2, `${String(error)}\n`));
}
