/**
 * The launch contract: what whoever starts a host (the desktop shell, `npm start`, a test) and the host say to
 * each other. Start:  `node core/host/main.ts --workshop DIR --shell`
 *  1. one line of JSON to its standard input: a `Handover`;
 *  2. one line of JSON from its standard output: a `Report`;
 *  3. closing its standard input ends it.
 * Nothing here imports anything, so that the shell may.
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
export const HOST_PATTERN = /^eb-[0-9a-f]{20}\.localhost:[1-9]\d{0,4}$/;

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
