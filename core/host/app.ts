import { randomBytes } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { readFile } from 'node:fs/promises';
import { type Context, Hono } from 'hono';
import { PHOTO_BATCH_HEADER, PHOTO_NAME_HEADER, type UploadAnswer } from '../contract/photos.ts';
import type { Result } from '../model/result.ts';
import type { ChangeStreams } from './change-stream.ts';
import type { Desk } from './desk.ts';
import {
  type Door,
  type Facts,
  judge,
  type PhotoSize,
  type Refused,
  type Route,
  type SheetAsk,
} from './guards.ts';
import { securityHeaders } from './headers.ts';
import { SESSION_COOKIE } from './launch.ts';
import { codePage, enterPage, spentPage, unbuiltPage } from './pages.ts';
import type { RendererFiles } from './renderer-files.ts';

/** A rendition on disk, by the identity of its original. Null: none such. */
export type PhotoFile = (id: string, size: PhotoSize) => Promise<{ path: string; type: string } | null>;

/** One photo file as it comes in. */
export interface Incoming {
  readonly jobId: string;
  /** As its owner calls it; null where that could not be read. */
  readonly fileName: string | null;
  readonly batch: string | null;
  readonly actor: string | null;
  readonly body: ReadableStream<Uint8Array> | null;
}

/** Takes a file in and answers in JSON what became of it. */
export type TakeUpload = (incoming: Incoming) => Promise<UploadAnswer>;

/** A put-back sheet as a PDF, or in words why there is none. */
export type MakeSheet = (ask: SheetAsk) => Promise<Result<Buffer>>;

/** What the host serves; each part is made elsewhere. */
export interface AppParts {
  readonly door: Door;
  readonly desk: Desk;
  readonly renderer: RendererFiles;
  readonly streams: ChangeStreams;
  readonly photoFile: PhotoFile;
  readonly takeUpload: TakeUpload;
  readonly sheet: MakeSheet;
  /** Answers a call of the contract; null when there is no such call. */
  readonly rpc: (request: Request, actor: string | null) => Promise<Response | null>;
  /** Told of bugs; the window gets a sentence without their inside. */
  readonly onFault: (error: unknown) => void;
}

interface Env {
  Bindings: { incoming: IncomingMessage };
  Variables: { route: Route; nonce: string };
}
type Ctx = Context<Env>;

/** Says which person of the workshop acts: an id, as this window was told. Not a proof of anything. */
const PERSON_HEADER = 'x-everybolt-person';

/** Every request passes the guards first; what they name is then served. Nothing is served by any other way. */
export function makeApp(parts: AppParts): Hono<Env> {
  const app = new Hono<Env>();
  app.use('*', async (c, next) => {
    const nonce = randomBytes(16).toString('base64');
    c.set('nonce', nonce);
    const verdict = judge(factsOf(c.env.incoming), parts.door);
    if (verdict.ok) {
      c.set('route', verdict.route);
      await next();
    } else c.res = refusal(verdict);
    for (const [name, value] of Object.entries(securityHeaders({ nonce })))
      if (!c.res.headers.has(name)) c.res.headers.set(name, value);
  });
  app.all('*', (c) => serveRoute(c, parts));
  app.onError((error, c) => {
    parts.onFault(error);
    const sentence = 'Something went wrong inside the program. What was saved is saved; try again.';
    return c.json({ code: 'fault', sentence }, 500, securityHeaders({ nonce: c.get('nonce') }));
  });
  return app;
}

async function serveRoute(c: Ctx, parts: AppParts): Promise<Response> {
  const route = c.get('route');
  switch (route.kind) {
    case 'page':
      return route.signedIn ? rendererPage(c, parts) : waitingPage(c, codePage('first', c.get('nonce')));
    case 'asset':
      return asset(c, parts, route.path);
    case 'photo':
      return photo(c, parts, route.id, route.size);
    case 'sheet':
      return sheet(c, parts, route.sheet);
    case 'changes':
      return changes(c, parts);
    case 'upload':
      return upload(c, parts, route.jobId);
    case 'rpc':
      return (await parts.rpc(c.req.raw, actorOf(c.req.header(PERSON_HEADER)))) ?? missing(c, 'a call');
    case 'ticket':
      return parts.desk.redeemTicket(await field(c, 'ticket'))
        ? enter(c, parts)
        : c.html(spentPage(c.get('nonce')), 403);
    case 'code': {
      const answer = parts.desk.redeemCode(await field(c, 'code'));
      return answer === 'right' ? enter(c, parts) : waitingPage(c, codePage(answer, c.get('nonce')), 403);
    }
  }
}

async function rendererPage(c: Ctx, parts: AppParts): Promise<Response> {
  const html = await parts.renderer.index(c.get('nonce'));
  return html === null ? c.html(unbuiltPage(c.get('nonce')), 503) : c.html(html);
}

/** A page with a form: it must be allowed to say where it comes from. */
function waitingPage(c: Ctx, html: string, status: 200 | 403 = 200): Response {
  return c.html(html, status, securityHeaders({ nonce: c.get('nonce'), ownReferrer: true }));
}

/** Lets a window in: the cookie lives as long as the browser's session, and no script can read it. */
function enter(c: Ctx, parts: AppParts): Response {
  return c.html(enterPage(c.get('nonce')), 200, {
    'Set-Cookie': `${SESSION_COOKIE}=${parts.door.secret}; HttpOnly; SameSite=Strict; Path=/`,
  });
}

async function asset(c: Ctx, parts: AppParts, path: string): Promise<Response> {
  const file = await parts.renderer.file(path);
  if (file === null || path === 'index.html') return missing(c, 'a file of the screens');
  // Names of built files carry a hash of what is in them.
  const cache = /-[\w-]{8,}\.\w+$/.test(path) ? 'private, max-age=31536000, immutable' : 'no-store';
  return c.body(file.bytes, 200, { 'Content-Type': file.type, 'Cache-Control': cache });
}

async function photo(c: Ctx, parts: AppParts, id: string, size: PhotoSize): Promise<Response> {
  const file = await parts.photoFile(id, size);
  if (file === null) return missing(c, 'a picture');
  // The id is the hash of the original: the same id is always the same picture.
  return c.body(new Uint8Array(await readFile(file.path)), 200, {
    'Content-Type': file.type,
    'Cache-Control': 'private, max-age=31536000, immutable',
  });
}

async function sheet(c: Ctx, parts: AppParts, ask: SheetAsk): Promise<Response> {
  const made = await parts.sheet(ask);
  if (!made.ok) return c.json(made.fault, 404);
  return c.body(new Uint8Array(made.value), 200, {
    'Content-Type': 'application/pdf',
    'Content-Disposition': 'inline; filename="put-back-sheet.pdf"',
  });
}

async function upload(c: Ctx, parts: AppParts, jobId: string): Promise<Response> {
  const answer = await parts.takeUpload({
    jobId,
    fileName: nameIn(c.req.header(PHOTO_NAME_HEADER)),
    batch: idIn(c.req.header(PHOTO_BATCH_HEADER)),
    actor: actorOf(c.req.header(PERSON_HEADER)),
    body: c.req.raw.body,
  });
  return c.json(answer);
}

/** A file's name as the page sent it, percent-encoded; only ever shown and kept, never a path. */
export function nameIn(header: string | undefined): string | null {
  if (header === undefined || header.length > 4096) return null;
  try {
    const name = decodeURIComponent(header)
      .replace(/\p{Cc}/gu, ' ')
      .trim();
    return name === '' ? null : name.slice(0, 300);
  } catch {
    return null;
  }
}

function idIn(header: string | undefined): string | null {
  return header !== undefined && /^[0-9a-f-]{36}$/.test(header) ? header : null;
}

function changes(c: Ctx, parts: AppParts): Response {
  const stream = parts.streams.open();
  if (stream === null)
    return c.json(
      { code: 'busy', sentence: 'Expected few open windows, got more than can be told of changes.' },
      503,
    );
  return c.body(stream, 200, { 'Content-Type': 'text/event-stream; charset=utf-8' });
}

function missing(c: Ctx, what: string): Response {
  return c.json(
    { code: 'not-found', sentence: `Expected ${what} that this program has, got one it does not know.` },
    404,
  );
}

/** One field of a small form; its length was checked by the guards. */
async function field(c: Ctx, name: string): Promise<string> {
  return new URLSearchParams(await c.req.text()).get(name) ?? '';
}

/** An id has letters, digits and dashes; anything else is nobody. */
export function actorOf(header: string | undefined): string | null {
  return header !== undefined && /^[\w-]{1,64}$/.test(header) ? header : null;
}

/** What the guards look at, from the request as it came: before any parser has made one reading of it. */
function factsOf(incoming: IncomingMessage): Facts {
  const header = (name: string) => incoming.headersDistinct[name] ?? [];
  return {
    method: incoming.method ?? '',
    target: incoming.url ?? '',
    host: header('host'),
    origin: header('origin'),
    site: header('sec-fetch-site'),
    mode: header('sec-fetch-mode'),
    dest: header('sec-fetch-dest'),
    contentType: header('content-type'),
    contentLength: header('content-length'),
    contentEncoding: header('content-encoding'),
    transferEncoding: header('transfer-encoding'),
    cookie: header('cookie'),
  };
}

function refusal({ status, code, sentence }: Refused): Response {
  return new Response(JSON.stringify({ code, sentence }), {
    status,
    headers: { 'Content-Type': 'application/json; charset=utf-8' },
  });
}
