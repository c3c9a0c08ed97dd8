import { createHash, timingSafeEqual } from 'node:crypto';
import { SESSION_COOKIE } from './launch.ts';

/**
 * Who may ask this host for what, as pure functions over what a request says.
 *
 * Kept out: pages of other sites, pages of other servers on this computer (another port is another origin, but
 * cookies do not know ports), names that are made to point at this computer, other users of this computer.
 * Not kept out: programs of the same user. They can read the files themselves.
 */

/** What the guards look at. Lists, because a header sent twice is an attack and must be seen. */
export interface Facts {
  readonly method: string;
  /** As it stands in the request line, before anything parsed it. */
  readonly target: string;
  readonly host: readonly string[];
  readonly origin: readonly string[];
  readonly site: readonly string[];
  readonly mode: readonly string[];
  readonly dest: readonly string[];
  readonly contentType: readonly string[];
  readonly contentLength: readonly string[];
  readonly contentEncoding: readonly string[];
  readonly transferEncoding: readonly string[];
  readonly cookie: readonly string[];
}

/** What this host answers to. */
export interface Door {
  /** Name and port, exactly: `eb-….localhost:41234`. */
  readonly host: string;
  /** What the session cookie must hold. */
  readonly secret: string;
}

export type Route =
  | { readonly kind: 'page'; readonly signedIn: boolean }
  | { readonly kind: 'asset'; readonly path: string }
  | { readonly kind: 'photo'; readonly id: string; readonly size: PhotoSize }
  | { readonly kind: 'sheet'; readonly sheet: SheetAsk }
  | { readonly kind: 'changes' }
  | { readonly kind: 'rpc' }
  /** One photo file on its way in, as it is. */
  | { readonly kind: 'upload'; readonly jobId: string }
  | { readonly kind: 'ticket' }
  | { readonly kind: 'code' };

/** A put-back sheet: of one step by its number in the list, or (null) of all that is left. */
export interface SheetAsk {
  readonly jobId: string;
  readonly step: number | null;
  /** Photos as lines, to save ink. */
  readonly light: boolean;
}

export interface Refused {
  readonly ok: false;
  readonly status: number;
  readonly code: string;
  readonly sentence: string;
}

export type Verdict = { readonly ok: true; readonly route: Route } | Refused;

/**
 * Longest edge in pixels of what is served: small for lists, large for work, all pixels for a close look. Originals
 * are not served: they may tell where they were taken.
 */
const PHOTO_SIZES = ['320', '2048', 'full'] as const;
export type PhotoSize = (typeof PHOTO_SIZES)[number];

/** Largest body taken, in bytes. A job as one file is the largest thing that is sent as JSON. */
export const BODY_LIMITS = {
  rpc: 8 * 1024 * 1024,
  upload: 200 * 1000 * 1000,
  ticket: 512,
  code: 512,
} as const;

/** The whole judgement over one request. The order matters only for which sentence is said. */
export function judge(facts: Facts, door: Door): Verdict {
  if (facts.host.length !== 1 || facts.host[0] !== door.host)
    return refused(
      421,
      'host',
      `Expected the host name this program was started under, got ${show(facts.host)}.`,
    );
  const path = pathOf(facts.target);
  if (path === null)
    return refused(400, 'path', 'Expected a plain path, got one with signs that do not belong there.');
  const route = routeOf(facts.method, path);
  if (!route.ok) return route;
  if (path.query && route.route.kind !== 'page')
    return refused(400, 'path', 'Expected no question mark in this path, got one.');
  return (
    wrongSource(route.route, facts) ??
    wrongOrigin(route.route, facts, door) ??
    wrongBody(route.route, facts) ??
    admit(route.route, facts, door)
  );
}

function admit(route: Route, facts: Facts, door: Door): Verdict {
  const signedIn = hasSession(facts.cookie, door.secret);
  switch (route.kind) {
    case 'page':
      return { ok: true, route: { kind: 'page', signedIn } };
    case 'ticket':
    case 'code':
      return { ok: true, route };
    case 'asset':
    case 'photo':
    case 'sheet':
    case 'changes':
    case 'rpc':
    case 'upload':
      return signedIn
        ? { ok: true, route }
        : refused(
            401,
            'session',
            'Expected a window opened by this program, got a request without its session.',
          );
  }
}

/**
 * Where the request comes from, as the browser says. Every current browser says it on addresses under localhost,
 * and no page can forge it. The page itself is also reached from the address bar (`none`). The ticket is posted
 * from a file, which browsers call `cross-site`; there the ticket alone decides, and only as a whole page.
 */
function wrongSource(route: Route, facts: Facts): Refused | null {
  const wanted = route.kind === 'page' ? PAGE_SITES : route.kind === 'ticket' ? TICKET_SITES : OWN_SITES;
  const [site] = facts.site;
  if (facts.site.length !== 1 || site === undefined || !wanted.includes(site))
    return refused(
      403,
      'source',
      `Expected a request from this program's own page, got one from ${show(facts.site)}.`,
    );
  const whole = route.kind === 'page' || route.kind === 'ticket' || route.kind === 'code';
  if (whole && !(only(facts.mode, 'navigate') && only(facts.dest, 'document')))
    return refused(403, 'source', `Expected a page in a window of its own, got ${show(facts.dest)}.`);
  return null;
}

const OWN_SITES: readonly string[] = ['same-origin'];
const PAGE_SITES: readonly string[] = ['same-origin', 'none'];
const TICKET_SITES: readonly string[] = ['cross-site', 'none'];

/** Every POST says its origin with the port; anything else that says one must say ours. */
function wrongOrigin(route: Route, facts: Facts, door: Door): Refused | null {
  const { origin } = facts;
  if (origin.length === 0 && facts.method === 'GET') return null;
  // A file has no origin of its own: browsers send the word null.
  const wanted = route.kind === 'ticket' ? 'null' : `http://${door.host}`;
  return only(origin, wanted)
    ? null
    : refused(403, 'origin', `Expected a request from this program's own page, got origin ${show(origin)}.`);
}

/** Bodies: one stated length, no packing, one type. Plain forms only for the two ways in. */
function wrongBody(route: Route, facts: Facts): Refused | null {
  const { contentLength, contentType, contentEncoding, transferEncoding } = facts;
  if (facts.method === 'GET')
    return transferEncoding.length === 0 && (contentLength.length === 0 || only(contentLength, '0'))
      ? null
      : refused(400, 'body', 'Expected no content with this request, got some.');
  if (transferEncoding.length > 0 || contentEncoding.length > 0)
    return refused(415, 'body', 'Expected content sent as it is, got it packed or in pieces.');
  const [length] = contentLength;
  if (contentLength.length !== 1 || length === undefined || !/^\d{1,12}$/.test(length))
    return refused(411, 'body', `Expected the length of the content, got ${show(contentLength)}.`);
  const { limit, type, word } = bodyOf(route);
  if (Number(length) > limit) return refused(413, 'body', `Expected at most ${limit} bytes, got ${length}.`);
  const [said] = contentType;
  if (contentType.length !== 1 || said === undefined || !type.test(said))
    return refused(415, 'body', `Expected ${word}, got ${show(contentType)}.`);
  return null;
}

/** What each kind of POST may carry. */
function bodyOf(route: Route): { readonly limit: number; readonly type: RegExp; readonly word: string } {
  switch (route.kind) {
    case 'ticket':
    case 'code':
      return { limit: BODY_LIMITS[route.kind], type: FORM, word: 'a plain form' };
    case 'upload':
      return { limit: BODY_LIMITS.upload, type: RAW, word: 'plain bytes (application/octet-stream)' };
    case 'page':
    case 'asset':
    case 'photo':
    case 'sheet':
    case 'changes':
    case 'rpc':
      return { limit: BODY_LIMITS.rpc, type: JSON_TYPE, word: 'JSON' };
  }
}

const JSON_TYPE = /^application\/json(; ?charset=utf-8)?$/i;
// No form can send this type, so a foreign page cannot either without asking first.
const RAW = /^application\/octet-stream$/i;
const FORM = /^application\/x-www-form-urlencoded(; ?charset=utf-8)?$/i;

/** A path taken apart: plain segments only, nothing escaped, nothing hidden, nothing that climbs. */
export interface PlainPath {
  readonly segments: readonly string[];
  readonly query: boolean;
}

/** Longest path taken, in characters. Ids and asset names are far shorter. */
const MAX_TARGET = 1024;

/**
 * The path of a request target, or null when it is anything but plain. Nothing is decoded: a percent sign, a
 * backslash, an empty, hidden or dotted segment, or a whole address in place of a path is refused outright,
 * so that no two parsers can read it in two ways.
 */
export function pathOf(target: string): PlainPath | null {
  if (target.length > MAX_TARGET) return null;
  const match = /^\/([\w./-]*)(\?[\x21-\x7e]*)?$/.exec(target);
  if (match === null) return null;
  const inner = match[1] ?? '';
  const segments = inner === '' ? [] : inner.split('/');
  if (!segments.every((segment) => /^\w[\w.-]*$/.test(segment))) return null;
  return { segments, query: match[2] !== undefined };
}

/** Which of the few things this host does is asked for. */
function routeOf(method: string, path: PlainPath): Verdict {
  const [first, ...rest] = path.segments;
  const wanted = first === 'rpc' || first === 'session' || first === 'upload' ? 'POST' : 'GET';
  if (method !== wanted)
    return refused(405, 'method', `Expected ${wanted} for this path, got ${show([method])}.`);
  switch (first) {
    case 'rpc':
      return rest.length > 0 ? { ok: true, route: { kind: 'rpc' } } : NOTHING;
    case 'session':
      return rest.length === 1 && (rest[0] === 'ticket' || rest[0] === 'code')
        ? { ok: true, route: { kind: rest[0] } }
        : NOTHING;
    case 'upload': {
      const [jobId] = rest;
      return rest.length === 1 && jobId !== undefined && /^[0-9a-f-]{36}$/.test(jobId)
        ? { ok: true, route: { kind: 'upload', jobId } }
        : NOTHING;
    }
    case 'changes':
      return rest.length === 0 ? { ok: true, route: { kind: 'changes' } } : NOTHING;
    case 'photo': {
      const photo = photoOf(rest);
      return photo ? { ok: true, route: { kind: 'photo', ...photo } } : NOTHING;
    }
    case 'sheet': {
      const sheet = sheetOf(rest);
      return sheet ? { ok: true, route: { kind: 'sheet', sheet } } : NOTHING;
    }
    default: {
      // The renderer's own addresses have no dot; files of the renderer always have one.
      const last = path.segments.at(-1) ?? '';
      return last.includes('.')
        ? { ok: true, route: { kind: 'asset', path: path.segments.join('/') } }
        : { ok: true, route: { kind: 'page', signedIn: false } };
    }
  }
}

const NOTHING: Refused = refused(
  404,
  'not-found',
  'Expected something this program has, got a path it does not know.',
);

/** Id and size of a picture from the two last segments of its path: the id is a SHA-256 in hex, nothing else. */
export function photoOf(segments: readonly string[]): { id: string; size: PhotoSize } | null {
  const [id, size] = segments;
  if (segments.length !== 2 || id === undefined || !/^[0-9a-f]{64}$/.test(id)) return null;
  const known = PHOTO_SIZES.find((each) => each === size);
  return known === undefined ? null : { id, size: known };
}

/** Job, step and manner from the last segments of a sheet's path: "JOB/all", "JOB/3/light". */
function sheetOf(segments: readonly string[]): SheetAsk | null {
  const [jobId = '', which = '', manner] = segments;
  if (!/^[0-9a-f-]{36}$/.test(jobId) || !/^(all|[1-9]\d{0,5})$/.test(which)) return null;
  if (segments.length > 3 || (manner !== undefined && manner !== 'light')) return null;
  return { jobId, step: which === 'all' ? null : Number(which), light: manner === 'light' };
}

/**
 * Whether one of the cookies sent is this session's. All of that name are tried, since another server under
 * localhost may have set one too; each in a time that does not depend on where it differs.
 */
export function hasSession(cookies: readonly string[], secret: string): boolean {
  let found = false;
  for (const pair of cookies.join(';').split(';')) {
    const at = pair.indexOf('=');
    if (
      at > 0 &&
      pair.slice(0, at).trim() === SESSION_COOKIE &&
      sameSecret(pair.slice(at + 1).trim(), secret)
    )
      found = true;
  }
  return found;
}

/** Compares two secrets in a time that tells nothing about either; an empty one is never the same. */
export function sameSecret(given: string, wanted: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text, 'utf8').digest();
  return timingSafeEqual(digest(given), digest(wanted)) && wanted.length > 0;
}

function only(values: readonly string[], wanted: string): boolean {
  return values.length === 1 && values[0] === wanted;
}

function refused(status: number, code: string, sentence: string): Refused {
  return { ok: false, status, code, sentence };
}

/** What came, for a sentence: never more than a few harmless signs of it. */
function show(values: readonly string[]): string {
  if (values.length === 0) return 'none';
  const text = values.join(', ').replace(/[^\w.:/;, -]/g, '?');
  return text.length > 80 ? `${text.slice(0, 80)}…` : text || 'none';
}
