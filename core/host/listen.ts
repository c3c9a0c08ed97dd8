import { randomBytes } from 'node:crypto';
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Listening {
  /** Name and port, as windows must name this host. */
  readonly host: string;
  /** Stops taking requests, lets the ones under way end, and cuts what is left after `graceMs`. */
  close(graceMs: number): Promise<void>;
}

/** A name that nobody can guess. Cookies do not know ports, so the name is what keeps this host's own apart. */
function newName(): string {
  return `eb-${randomBytes(10).toString('hex')}.localhost`;
}

/** How often another port is tried where somebody else has half of one. */
const TRIES = 20;

/**
 * Answers on both loopback addresses of one port. Both, because a browser may try `::1` first for a name under
 * localhost: if another user of this computer had that half, the ticket would be handed to them. Where there is
 * no IPv6 there is nobody to take it.
 * `wanted` is the name and port of the host before this one; a port that is taken meanwhile is given up.
 */
export async function listen(listener: RequestListener, wanted?: string): Promise<Listening> {
  const [name, port] = wanted?.split(':') ?? [];
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const again = attempt === 0 && name !== undefined;
    const servers = await claim(listener, again ? Number(port) : 0);
    if (servers === null) continue;
    const at = (servers[0].address() as AddressInfo).port;
    return { host: `${name ?? newName()}:${at}`, close: async (graceMs) => closeAll(servers, graceMs) };
  }
  throw new Error(`Expected a free port on this computer, found none in ${TRIES} tries.`);
}

async function claim(listener: RequestListener, port: number): Promise<[Server, ...Server[]] | null> {
  const first = makeServer(listener);
  if ((await bind(first, port, '127.0.0.1')) !== null) return null;
  const second = makeServer(listener);
  const fault = await bind(second, (first.address() as AddressInfo).port, '::1');
  if (fault === null) return [first, second];
  if (fault === 'EADDRNOTAVAIL' || fault === 'EAFNOSUPPORT') return [first];
  await closeAll([first], 0);
  return null;
}

function makeServer(listener: RequestListener): Server {
  const server = createServer(
    { headersTimeout: 10_000, requestTimeout: 60_000, keepAliveTimeout: 5000 },
    listener,
  );
  server.maxConnections = 128;
  return server;
}

/** Null when bound, else the code of what was in the way. */
async function bind(server: Server, port: number, address: string): Promise<string | null> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === undefined) reject(error);
      else resolve(error.code);
    });
    server.listen({ port, host: address, exclusive: true }, () => {
      server.removeAllListeners('error');
      resolve(null);
    });
  });
}

async function closeAll(servers: readonly Server[], graceMs: number): Promise<void> {
  await Promise.all(
    servers.map(
      async (server) =>
        new Promise<void>((resolve) => {
          const cut = setTimeout(() => server.closeAllConnections(), graceMs);
          // A connection whose last reply ends now stays open for the next one: it is let go as soon as it is idle.
          const idle = setInterval(() => server.closeIdleConnections(), 20);
          server.close(() => {
            clearTimeout(cut);
            clearInterval(idle);
            resolve();
          });
        }),
    ),
  );
}
