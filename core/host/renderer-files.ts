import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';

interface RendererFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
}

/**
 * The built screens. A path from a request is only ever looked up in the list of files that are there; it never
 * becomes a path on the disk.
 */
export interface RendererFiles {
  /** The page, with the nonce for styles put in; null when the screens are not built. */
  index(nonce: string): Promise<string | null>;
  file(path: string): Promise<RendererFile | null>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
};

export function rendererFiles(dir: string): RendererFiles {
  let listed: ReadonlyMap<string, string> | null = null;
  const read = async (path: string): Promise<Uint8Array<ArrayBuffer> | null> => {
    listed ??= listFiles(dir);
    const at = listed.get(path);
    if (at === undefined) return null;
    try {
      return new Uint8Array(await readFile(at));
    } catch {
      return null;
    }
  };
  return {
    index: async (nonce) => {
      // Built anew while the host runs: the page is what names the other files, so the list is made again with it.
      listed = listFiles(dir);
      const bytes = await read('index.html');
      return bytes === null ? null : withNonce(new TextDecoder().decode(bytes), nonce);
    },
    file: async (path) => {
      const type = TYPES[extname(path)];
      const bytes = type === undefined ? null : await read(path);
      return type === undefined || bytes === null ? null : { bytes, type };
    },
  };
}

/** The screen library puts a style into the page by itself, and takes the nonce for it from this element. */
function withNonce(html: string, nonce: string): string {
  return html.replace(/<head>/i, (head) => `${head}<meta property="csp-nonce" nonce="${nonce}">`);
}

/** Plain files below a folder, by their path in it with forward slashes. Links are left out. */
function listFiles(dir: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (folder: string, prefix: string) => {
    let entries: ReturnType<typeof entriesOf>;
    try {
      entries = entriesOf(folder);
    } catch {
      return;
    }
    for (const entry of entries) {
      if (entry.isDirectory()) walk(join(folder, entry.name), `${prefix}${entry.name}/`);
      else if (entry.isFile()) found.set(prefix + entry.name, join(folder, entry.name));
    }
  };
  walk(dir, '');
  return found;
}

const entriesOf = (folder: string) => readdirSync(folder, { withFileTypes: true });
