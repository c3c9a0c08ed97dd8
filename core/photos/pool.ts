import { type ChildProcess, fork } from 'node:child_process';
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { ok, type Result, refuse } from '../model/result.ts';
import { type RenditionSize, renditionOf } from './disk.ts';
import type { PhotoFacts } from './facts.ts';
import { type Answered, type Asked, TOO_MUCH_MEMORY } from './messages.ts';

export interface PoolOptions {
  /** Folder that renditions go to. */
  readonly renditions: string;
  /** Processes at once; two by default, one where there is one core. */
  readonly size?: number;
  /** Longest time for one picture, in milliseconds. */
  readonly timeoutMs?: number;
  /** Most memory of one process, in MB. */
  readonly memoryMb?: number;
  /** A process without work ends after this long, in milliseconds. */
  readonly idleMs?: number;
  /** Another program in place of the picture process: only to try what happens when it misbehaves. */
  readonly program?: string;
}

/** Reads pictures in processes of their own. What breaks one of them costs one photo, with its own sentence. */
export interface PhotoPool {
  /** Facts, and the 320 and 2048 px renditions on disk. */
  read(id: string, path: string): Promise<Result<PhotoFacts>>;
  /** The rendition, made anew where it is missing. */
  rendition(id: string, path: string, size: RenditionSize): Promise<Result<{ path: string; type: string }>>;
  /** Ids of the processes alive. */
  pids(): number[];
  close(): Promise<void>;
}

interface Job extends Asked {
  readonly done: (answer: Result<PhotoFacts | null>) => void;
}

interface Hand {
  readonly child: ChildProcess;
  ready: boolean;
  job: Job | null;
  timer: NodeJS.Timeout | undefined;
  /** Why it was ended from here. */
  ended: 'time' | 'close' | null;
}

const WORKER = join(import.meta.dirname, 'worker.ts');

export function photoPool(options: PoolOptions): PhotoPool {
  const pool = new Pool(options);
  const making = new Map<string, Promise<Result<PhotoFacts | null>>>();
  const once = async (key: string, asked: Asked): Promise<Result<PhotoFacts | null>> => {
    const known = making.get(key);
    if (known) return known;
    const made = pool.ask(asked).finally(() => making.delete(key));
    making.set(key, made);
    return made;
  };
  return {
    read: async (id, path) => {
      const answer = await pool.ask({ id, path, want: 'views' });
      if (!answer.ok) return answer;
      if (answer.value === null) throw new Error('the picture process answered without facts');
      return ok(answer.value);
    },
    rendition: async (id, path, size) => {
      const at = renditionOf(options.renditions, id, size);
      if (existsSync(at.path)) return ok(at);
      const want = size === 'full' ? 'full' : 'views';
      const made = await once(`${id}/${want}`, { id, path, want });
      return made.ok ? ok(at) : made;
    },
    pids: () => pool.pids(),
    close: async () => pool.close(),
  };
}

class Pool {
  private readonly options: PoolOptions;
  private readonly hands = new Set<Hand>();
  private readonly waiting: Job[] = [];
  private readonly size: number;
  private closed = false;

  constructor(options: PoolOptions) {
    this.options = options;
    this.size = options.size ?? Math.max(1, Math.min(2, availableParallelism()));
  }

  async ask(asked: Asked): Promise<Result<PhotoFacts | null>> {
    if (this.closed) return refuse('refused', 'The program is closing; add this photo again afterwards.');
    return new Promise((done) => {
      this.waiting.push({ ...asked, done });
      this.next();
    });
  }

  pids(): number[] {
    return [...this.hands].flatMap(({ child }) => child.pid ?? []);
  }

  async close(): Promise<void> {
    this.closed = true;
    for (const job of this.waiting.splice(0))
      job.done(refuse('refused', 'The program is closing; add this photo again afterwards.'));
    await Promise.all(
      [...this.hands].map(
        async (hand) =>
          new Promise<void>((gone) => {
            hand.ended ??= 'close';
            hand.child.once('close', () => gone());
            hand.child.kill('SIGKILL');
          }),
      ),
    );
  }

  private next(): void {
    while (this.waiting.length > 0) {
      const free = [...this.hands].find((hand) => hand.ready && hand.job === null && hand.ended === null);
      if (free) {
        this.give(free, this.waiting.shift() as Job);
        continue;
      }
      const starting = [...this.hands].filter((hand) => !hand.ready).length;
      if (this.hands.size < this.size && starting < this.waiting.length) this.start();
      else return;
    }
  }

  private start(): void {
    const { renditions, program = WORKER, memoryMb = 1024 } = this.options;
    const child = fork(program, [renditions, String(memoryMb)], {
      execArgv: ['--max-old-space-size=768'],
      // The decoders' own chatter goes nowhere; what matters comes as a message.
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    const hand: Hand = { child, ready: false, job: null, timer: undefined, ended: null };
    this.hands.add(hand);
    child.on('message', (answer: Answered) => this.hear(hand, answer));
    child.once('error', () => child.kill('SIGKILL'));
    child.once('close', (code, signal) => this.gone(hand, code, signal));
  }

  private give(hand: Hand, job: Job): void {
    const { timeoutMs = 40_000 } = this.options;
    clearTimeout(hand.timer);
    hand.job = job;
    hand.timer = setTimeout(() => {
      hand.ended = 'time';
      hand.child.kill('SIGKILL');
    }, timeoutMs);
    const { id, path, want } = job;
    // A process that died a moment ago cannot be sent anything; its end is told by `close`.
    hand.child.send({ id, path, want } satisfies Asked, () => {});
  }

  private hear(hand: Hand, answer: Answered): void {
    if (answer.kind === 'ready') {
      hand.ready = true;
      this.rest(hand);
      return;
    }
    const { job } = hand;
    if (job === null || job.id !== answer.id) return;
    hand.job = null;
    clearTimeout(hand.timer);
    if (answer.kind === 'done') job.done(ok(answer.facts));
    else if (answer.kind === 'refused') job.done(refuse('input', answer.sentence));
    else
      job.done(
        refuse(
          'damaged',
          `Something went wrong inside the program while reading this photo (${answer.message.split('\n')[0]}). It was left out; the others go on.`,
        ),
      );
    this.rest(hand);
  }

  /** Waits for work; without any it ends after a while and gives its memory back. */
  private rest(hand: Hand): void {
    this.next();
    if (hand.job !== null) return;
    hand.timer = setTimeout(() => {
      hand.ended = 'close';
      hand.child.kill();
    }, this.options.idleMs ?? 15_000);
    hand.timer.unref();
  }

  private gone(hand: Hand, code: number | null, signal: string | null): void {
    clearTimeout(hand.timer);
    this.hands.delete(hand);
    // One that never came to be takes a photo with it, or this would start processes for ever.
    const job = hand.job ?? (hand.ready || hand.ended !== null ? null : (this.waiting.shift() ?? null));
    job?.done(refuse('input', this.endSentence(hand, code, signal)));
    if (!this.closed) this.next();
  }

  private endSentence(hand: Hand, code: number | null, signal: string | null): string {
    const { timeoutMs = 40_000, memoryMb = 1024 } = this.options;
    const after = 'It was left out; the others go on.';
    if (hand.ended === 'close') return 'The program is closing; add this photo again afterwards.';
    if (hand.ended === 'time')
      return `Expected a photo that can be read within ${timeoutMs / 1000} s, got one that takes longer. ${after}`;
    if (code === TOO_MUCH_MEMORY)
      return `Expected a photo that can be read with ${memoryMb} MB of memory, got one that needs more. ${after}`;
    return `Reading this photo ended the picture process (${signal ?? `code ${code}`}). ${after}`;
  }
}
