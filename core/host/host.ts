import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { getRequestListener } from '@hono/node-server';
import { ok, type Result, refuse } from '../model/result.ts';
import { holderOf, type HostLock, takeLock } from '../store/lock.ts';
import { openWorkshop, type Workshop } from '../store/workshop.ts';
import { makeApp, type MakeSheet, type PhotoFile, type TakeUpload } from './app.ts';
import { changeStreams } from './change-stream.ts';
import { openDesk, sweepDesks } from './desk.ts';
import type { Door } from './guards.ts';
import { securityHeaders } from './headers.ts';
import { type Listening, listen } from './listen.ts';
import { makePrivate } from './private-folder.ts';
import { rendererFiles } from './renderer-files.ts';
import { rpcOver } from './rpc.ts';

export interface HostOptions {
  readonly workshop: string;
  /** The built screens. */
  readonly renderer: string;
  /** This user's private folder; desks are made in it. */
  readonly privateFolder: string;
  /** What the session cookie must hold; made here when nobody hands one over. */
  readonly secret?: string;
  /** Name and port of the host before this one. */
  readonly host?: string;
  /** Pictures of the workshop; without it none are served and none are taken. */
  readonly photos?: (workshop: Workshop) => HostPhotos;
  readonly onFault?: (error: unknown) => void;
  /** Puts long work aside, in order, before the workshop is closed. */
  readonly park?: readonly (() => Promise<void>)[];
}

export interface HostPhotos {
  readonly photoFile: PhotoFile;
  readonly takeUpload: TakeUpload;
  readonly sheet: MakeSheet;
  close(): Promise<void>;
}

export interface Host {
  readonly address: string;
  readonly desk: string;
  readonly workshop: Workshop;
  close(): Promise<void>;
}

/** Requests under way may take this long to end when the host stops, in milliseconds. */
const GRACE_MS = 3000;

/** Opens a workshop and answers on loopback. Refuses with a sentence where another holds it or it cannot be opened. */
export async function startHost(options: HostOptions): Promise<Result<Host>> {
  const lock = takeLock(options.workshop);
  if (!lock.ok) return lock;
  try {
    const workshop = openWorkshop(options.workshop, { write: true });
    if (!workshop.ok) {
      lock.value.release();
      return workshop;
    }
    return ok(await answer(options, lock.value, workshop.value));
  } catch (error) {
    lock.value.release();
    throw error;
  }
}

async function answer(options: HostOptions, lock: HostLock, workshop: Workshop): Promise<Host> {
  const onFault = options.onFault ?? ((error) => console.error(error));
  const streams = changeStreams(workshop);
  // The name is known once the port is; until then every request is refused, since no host name is empty.
  const door: { host: string; secret: string } = { host: '', secret: options.secret ?? newSecret() };
  const desks = makePrivate(join(makePrivate(options.privateFolder), 'desks'));
  sweepDesks(desks, Date.now());
  const desk = join(desks, randomBytes(8).toString('hex'));
  const openedDesk = openDesk(desk, Date.now);
  const photos = (options.photos ?? noPhotos)(workshop);
  const app = makeApp({
    door: door satisfies Door,
    desk: openedDesk,
    renderer: rendererFiles(options.renderer),
    streams,
    photoFile: photos.photoFile,
    takeUpload: photos.takeUpload,
    sheet: photos.sheet,
    rpc: rpcOver(workshop, onFault),
    onFault,
  });
  const handle = getRequestListener(async (request, env) => app.fetch(request, env), {
    errorHandler: unreadable,
  });
  const listening: Listening = await listen(
    (incoming, outgoing) => void handle(incoming, outgoing),
    options.host,
  );
  door.host = listening.host;
  const address = `http://${listening.host}`;
  lock.announce({ address, desk, pid: process.pid });
  let closing: Promise<void> | null = null;
  const close = async () => {
    streams.close();
    await listening.close(GRACE_MS);
    for (const park of options.park ?? []) await park();
    await photos.close();
    openedDesk.close();
    workshop.close();
    lock.release();
  };
  return { address, desk, workshop, close: async () => (closing ??= close()) };
}

function noPhotos(): HostPhotos {
  const sentence = 'Expected a host that takes photos; this one does not.';
  return {
    photoFile: async () => Promise.resolve(null),
    takeUpload: async () => Promise.resolve({ status: 'refused', photoId: null, filedWhy: '', sentence }),
    sheet: async () => Promise.resolve(refuse('refused', 'Expected a host with photos; this one has none.')),
    close: async () => Promise.resolve(),
  };
}

function newSecret(): string {
  return randomBytes(32).toString('hex');
}

/** A request that cannot even be read as one. */
function unreadable(): Response {
  const sentence = 'Expected a request that can be read, got one that cannot.';
  return new Response(JSON.stringify({ code: 'request', sentence }), {
    status: 400,
    headers: { 'Content-Type': 'application/json; charset=utf-8', ...securityHeaders({ nonce: '' }) },
  });
}

/** Where another host answers that holds this workshop, if one does. */
export function otherHost(workshop: string): Result<{ address: string; desk: string } | null> {
  const holder = holderOf(workshop);
  if (!holder.held) return ok(null);
  return holder.note
    ? ok({ address: holder.note.address, desk: holder.note.desk })
    : refuse('locked', 'Another program is writing this workshop. Try again in a moment.');
}
