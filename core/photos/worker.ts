import { setPriority } from 'node:os';
import { renderFull, renderViews, setLimits } from './render.ts';
import { type Answered, type Asked, TOO_MUCH_MEMORY } from './messages.ts';
import { Unreadable } from './unreadable.ts';

/**
 * The picture process: plain Node, at lower priority, one picture at a time. Native code that crashes, hangs or eats
 * memory ends this process and nothing else; whoever drives it says which photo it was, and starts another.
 * Arguments: the folder of the renditions, the memory it may take in MB.
 */
const [renditions, memoryMb] = [process.argv[2] ?? '', Number(process.argv[3])];

const say = (answer: Answered): void => {
  process.send?.(answer);
};

async function work({ id, path, want }: Asked): Promise<Answered> {
  try {
    if (want === 'full') {
      await renderFull(path, renditions, id);
      return { kind: 'done', id, facts: null };
    }
    return { kind: 'done', id, facts: await renderViews(path, renditions, id) };
  } catch (error) {
    if (error instanceof Unreadable) return { kind: 'refused', id, sentence: error.message };
    return {
      kind: 'fault',
      id,
      message: error instanceof Error ? (error.stack ?? error.message) : 'unknown',
    };
  }
}

setPriority(10);
setLimits();
setInterval(() => {
  if (process.memoryUsage.rss() > memoryMb * 1024 * 1024) process.exit(TOO_MUCH_MEMORY);
}, 25).unref();
process.on('message', (asked: Asked) => void work(asked).then(say));
// Never outlives the host, however that ended.
process.on('disconnect', () => process.exit(0));
say({ kind: 'ready' });
