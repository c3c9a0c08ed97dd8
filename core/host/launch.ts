/**
 * The launch contract: what whoever starts a host (the desktop shell, `npm start`, a test) and the host say to
 * each other. Start:  `node core/host/main.ts --workshop DIR --shell`
 *  1. one line of JSON to its standard input: a `Handover`;
 *  2. one line of JSON from its standard output: a `Report`;
 *  3. closing its standard input ends it.
 * Nothing here imports anything, so that the shell may use it.
 */

/** Told to the host on its standard input: never in an argument, which other users of the computer can read. */
export interface Handover {
  /** What the session cookie must hold: 64 hex digits, made by whoever starts the host. */
  readonly secret: string;
  /** Name and port of the host before this one, so that open windows find the new one. */
  readonly host?: string;
}

/** The host answers here. */
export interface Ready {
  readonly everybolt: 'ready';
  /** `http://eb-….localhost:port`, without a slash at the end. */
  readonly address: string;
  /** Folder where tickets and codes for this host are left. */
  readonly desk: string;
  readonly workshop: string;
  readonly pid: number;
}

/** The host could not start, and why. When another one holds the workshop: where that one answers. */
export interface Refusal {
  readonly everybolt: 'refused';
  readonly code: string;
  readonly sentence: string;
  readonly holder: { readonly address: string; readonly desk: string } | null;
}

export type Report = Ready | Refusal;

/** Name of the session cookie, for the shell that sets it itself. */
export const SESSION_COOKIE = 'everybolt-session';

/** `eb-<20 hex digits>.localhost:<port>`: long enough that nobody else on the computer can guess the name. */
const HOST_PATTERN = /^eb-[0-9a-f]{20}\.localhost:[1-9]\d{0,4}$/;

/** Reads the host's line; null when it is anything else. */
export function parseReport(line: string): Report | null {
  const value = object(line);
  if (value === null) return null;
  const text = (name: string) => (typeof value[name] === 'string' ? value[name] : null);
  if (value['everybolt'] === 'ready') {
    const [address, desk, workshop, pid] = [text('address'), text('desk'), text('workshop'), value['pid']];
    if (address === null || desk === null || workshop === null || typeof pid !== 'number') return null;
    return isAddress(address) ? { everybolt: 'ready', address, desk, workshop, pid } : null;
  }
  if (value['everybolt'] !== 'refused') return null;
  const [code, sentence] = [text('code'), text('sentence')];
  if (code === null || sentence === null) return null;
  return { everybolt: 'refused', code, sentence, holder: holderIn(value['holder']) };
}

/** Reads what was handed over; null when it is anything else. */
export function parseHandover(line: string): Handover | null {
  const value = object(line);
  if (value === null) return null;
  const { secret, host } = value;
  if (typeof secret !== 'string' || !/^[0-9a-f]{64}$/.test(secret)) return null;
  if (host === undefined) return { secret };
  return typeof host === 'string' && HOST_PATTERN.test(host) ? { secret, host } : null;
}

/** An address as hosts of this program have it: plain HTTP, our kind of name, a port, no path. */
export function isAddress(address: string): boolean {
  return address.slice(0, 7) === 'http://' && HOST_PATTERN.test(address.slice(7));
}

/** Pauses before a dead host is started again, in milliseconds; after that many deaths it stays down. */
const PAUSES_MS: readonly number[] = [0, 500, 2000, 5000, 15_000];
/** A host that ran this long, in milliseconds, was well: earlier deaths are forgotten. */
const WELL_MS = 120_000;

/** How long to wait before starting again, given the times of past deaths in milliseconds; null: stay down. */
export function pauseBefore(deaths: readonly number[]): number | null {
  let run = 1;
  for (let at = deaths.length - 1; at > 0; at--) {
    if ((deaths[at] ?? 0) - (deaths[at - 1] ?? 0) > WELL_MS) break;
    run++;
  }
  return deaths.length === 0 ? 0 : (PAUSES_MS[run - 1] ?? null);
}

/** How a host process is started; the starter knows how to make processes, this file does not. */
export type StartProcess = (handover: Handover, hears: ProcessHears) => HostProcess;

export interface ProcessHears {
  /** A line of its standard output. */
  readonly line: (text: string) => void;
  /** It is gone, or never came to be. */
  readonly gone: () => void;
}

export interface HostProcess {
  /** Closes its input: it puts things away and ends. */
  readonly end: () => void;
  readonly kill: () => void;
}

export interface KeepOptions {
  readonly start: StartProcess;
  readonly secret: string;
  /** Each time a host answers; `again` after one that died. */
  readonly onReady: (ready: Ready, again: boolean) => void;
  /** It could not start, or stays down: said once, nothing follows. */
  readonly onDown: (refusal: Refusal) => void;
  readonly onDeath: (pauseMs: number) => void;
}

export interface KeptHost {
  /** Ends the host and waits for it. */
  close(): Promise<void>;
}

/** A host that does not end after this long, in milliseconds, is killed: what was saved is saved. */
const PATIENCE_MS = 10_000;

/**
 * Keeps a host running: it is started again when it dies, under the same name, port and session if it can, so that
 * open windows go on by themselves; after too many deaths it stays down.
 */
export function keepHost(options: KeepOptions): KeptHost {
  const deaths: number[] = [];
  let running: HostProcess | null = null;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let over = false;
  let host: string | undefined;
  let whenGone = () => {};

  const down = (refusal: Refusal) => {
    over = true;
    options.onDown(refusal);
  };
  const line = (text: string) => {
    const report = parseReport(text);
    if (over) return;
    if (report === null) running?.kill();
    else if (report.everybolt === 'refused') down(report);
    else {
      const again = host !== undefined;
      host = report.address.slice('http://'.length);
      options.onReady(report, again);
    }
  };
  const gone = () => {
    running = null;
    whenGone();
    if (over) return;
    deaths.push(Date.now());
    // One that never answered will not answer the next time either.
    const pauseMs = host === undefined ? null : pauseBefore(deaths);
    if (pauseMs === null) return down(staysDown(deaths.length));
    options.onDeath(pauseMs);
    waiting = setTimeout(start, pauseMs);
  };
  const start = () => {
    const { secret } = options;
    let alive = true;
    running = options.start(host === undefined ? { secret } : { secret, host }, {
      line,
      gone: () => {
        if (alive) gone();
        alive = false;
      },
    });
  };
  const close = async () => {
    over = true;
    clearTimeout(waiting);
    const last = running;
    if (last === null) return;
    const patience = setTimeout(() => last.kill(), PATIENCE_MS);
    await new Promise<void>((resolve) => {
      whenGone = resolve;
      last.end();
    });
    clearTimeout(patience);
  };
  start();
  let closing: Promise<void> | null = null;
  return { close: async () => (closing ??= close()) };
}

function staysDown(times: number): Refusal {
  const often = times === 1 ? 'at once' : `${times} times in a row`;
  const sentence = `Expected the program to stay up, but it ended ${often}. What was saved is saved.`;
  return { everybolt: 'refused', code: 'fault', sentence, holder: null };
}

function holderIn(value: unknown): Refusal['holder'] {
  if (typeof value !== 'object' || value === null) return null;
  const { address, desk } = value as Record<string, unknown>;
  return typeof address === 'string' && typeof desk === 'string' && isAddress(address)
    ? { address, desk }
    : null;
}

function object(line: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}
