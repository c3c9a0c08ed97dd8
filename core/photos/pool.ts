import { type ChildProcess, spawn } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import { join } from 'node:path';
import { MEMORY_WORD } from './memory.ts';
import type { Answer, Ask, Outcome, PictureAsk, PictureFault, Values } from './protocol.ts';
import { takeFile } from './take.ts';

export interface PoolOptions {
  /** How many picture processes work at once. */
  readonly size?: number;
  /** Longest time for one picture, in milliseconds. */
  readonly timeoutMs?: number;
  /** Most memory of one process, in megabytes. */
  readonly memoryMb?: number;
  /** A process with nothing to do ends after this long, in milliseconds. */
  readonly idleMs?: number;
  /** The program that a picture process runs; another one only in tests of what happens when it fails. */
  readonly program?: string;
}

const DEFAULTS = { size: 2, timeoutMs: 60_000, memoryMb: 1400, idleMs: 20_000 } as const;

type Read = Outcome<Values[PictureAsk['op']]>;

interface Task {
  readonly ask: PictureAsk;
  readonly done: (outcome: Read) => void;
}

/**
 * Picture processes, started when there is work. Each has one task at a time, so that a crash, a hang or a picture that
 * eats memory ends one process and fails one photo; the next photo gets a new process.
 */
export class PicturePool {
  private readonly options: Required<PoolOptions>;
  private readonly waiting: Task[] = [];
  private readonly desks: Desk[];
  private closed = false;

  constructor(options: PoolOptions = {}) {
    const program = options.program ?? join(import.meta.dirname, 'worker.ts');
    this.options = { ...DEFAULTS, ...options, program };
    this.desks = Array.from({ length: this.options.size }, () => new Desk(this.options));
  }

  /** Does one task and answers; never throws for what a file or a process does. `first`: before all that waits. */
  async run<A extends Ask>(ask: A, first = false): Promise<Outcome<Values[A['op']]>> {
    // Copying waits for the disk, not for a processor: done beside the picture processes it costs them nothing.
    if (ask.op === 'take')
      return (await takeFile(ask.from, ask.to, ask.maxBytes)) as Outcome<Values[A['op']]>;
    return this.decode(ask, first) as Promise<Outcome<Values[A['op']]>>;
  }

  private async decode(ask: PictureAsk, first: boolean): Promise<Read> {
    return new Promise((resolve) => {
      const task: Task = { ask, done: resolve };
      if (first) this.waiting.unshift(task);
      else this.waiting.push(task);
      this.next();
    });
  }

  /** Process numbers of those alive. */
  pids(): number[] {
    return this.desks.flatMap((desk) => desk.pid() ?? []);
  }

  /** Ends all picture processes; what waits is answered as given up. */
  async close(): Promise<void> {
    this.closed = true;
    this.next();
    await Promise.all(this.desks.map(async (desk) => desk.end()));
  }

  private next(): void {
    if (this.closed) {
      for (const task of this.waiting.splice(0)) task.done({ ok: false, fault: STOPPED });
      return;
    }
    for (const desk of this.desks) {
      if (desk.busy) continue;
      const task = this.waiting.shift();
      if (!task) return;
      void desk.work(task).then(() => this.next());
    }
  }
}

const STOPPED: PictureFault = {
  code: 'crashed',
  sentence: 'The program was closed before this picture was read.',
};

/** Before it has started any thread: on Linux each thread has a priority of its own, taken from the one it comes from. */
function lowerPriority({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) setPriority(pid, constants.priority.PRIORITY_BELOW_NORMAL);
  } catch {
    // Where the system does not allow it the work is done all the same.
  }
}

/** One place at which one picture process works at a time. */
class Desk {
  busy = false;
  private readonly options: Required<PoolOptions>;
  private child: ChildProcess | null = null;
  private said = '';
  private nextId = 1;
  private idle: ReturnType<typeof setTimeout> | undefined;

  constructor(options: Required<PoolOptions>) {
    this.options = options;
  }

  pid(): number | null {
    return this.child?.pid ?? null;
  }

  async work(task: Task): Promise<void> {
    this.busy = true;
    clearTimeout(this.idle);
    const outcome = await this.ask(task.ask);
    this.busy = false;
    this.idle = setTimeout(() => void this.end(), this.options.idleMs);
    this.idle.unref();
    task.done(outcome);
  }

  private async ask(ask: PictureAsk): Promise<Read> {
    const child = this.alive();
    const id = this.nextId++;
    return new Promise((resolve) => {
      let late = false;
      const end = (outcome: Read) => {
        clearTimeout(timer);
        child.off('message', hear).off('exit', gone).off('error', failed);
        resolve(outcome);
      };
      const timer = setTimeout(() => {
        late = true;
        child.kill('SIGKILL');
      }, this.options.timeoutMs);
      const hear = (answer: Answer) => {
        if (answer.id === id) end(answer.outcome);
      };
      const gone = (code: number | null, signal: string | null) => {
        this.child = null;
        end({ ok: false, fault: late ? this.tooSlow() : this.ended(code, signal) });
      };
      const failed = (error: Error) => {
        child.kill('SIGKILL');
        if (child.pid === undefined) gone(null, error.message);
      };
      child.on('message', hear).on('exit', gone).on('error', failed);
      child.send({ id, ask }, (error) => {
        if (error && child.exitCode === null) child.kill('SIGKILL');
      });
    });
  }

  private tooSlow(): PictureFault {
    const seconds = Math.round(this.options.timeoutMs / 1000);
    return {
      code: 'too-slow',
      sentence: `Expected a picture that is read within ${seconds} s, got one that was not done by then. It was left out.`,
    };
  }

  private ended(code: number | null, signal: string | null): PictureFault {
    if (this.said.includes(MEMORY_WORD) || /heap out of memory|Allocation failed/i.test(this.said))
      return {
        code: 'too-much-memory',
        sentence: `Expected a picture that is read within ${this.options.memoryMb} MB of memory, got one that takes more. It was left out.`,
      };
    return {
      code: 'crashed',
      sentence: `Expected a picture that can be read, got one on which reading broke down (${signal ?? `code ${code}`}). It was left out.`,
    };
  }

  private alive(): ChildProcess {
    if (this.child && this.child.exitCode === null && this.child.signalCode === null && this.child.connected)
      return this.child;
    this.said = '';
    const child = spawn(process.execPath, ['--max-old-space-size=512', this.options.program], {
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
      env: { ...process.env, MALLOC_ARENA_MAX: '2', EVERYBOLT_PICTURE_MB: String(this.options.memoryMb) },
    });
    lowerPriority(child);
    child.stderr?.on('data', (chunk: Buffer) => {
      this.said = `${this.said}${chunk.toString()}`.slice(-4000);
    });
    child.on('error', () => {});
    child.once('exit', () => {
      if (this.child === child) this.child = null;
    });
    this.child = child;
    return child;
  }

  /** Ends the process, whatever it does, and waits until it is gone. */
  async end(): Promise<void> {
    clearTimeout(this.idle);
    const { child } = this;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGKILL');
    await gone;
  }
}
