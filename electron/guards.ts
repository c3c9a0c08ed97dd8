import { join } from 'node:path';
import type { ContentsPart, SessionPart } from './parts.ts';

/** Address of the host that the window shows, or null while there is none. */
export type Origin = () => string | null;

/** Whether a web address belongs to our host: its origin, to the letter. */
export function isOwn(url: string, origin: string | null): boolean {
  return origin !== null && URL.canParse(url) && new URL(url).origin === origin;
}

/** The window stays on our host: no navigation, no frame, no popup and no guest page leads anywhere else. */
export function guardContents(contents: ContentsPart, origin: Origin): void {
  const stay = (details: { readonly url: string; preventDefault(): void }) => {
    if (!isOwn(details.url, origin())) details.preventDefault();
  };
  for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'] as const)
    contents.on(event, stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Kinds of address that lead nowhere outside the window: pictures in memory, and the developer's own view. */
const INWARD: readonly string[] = ['blob:', 'data:', 'devtools:'];

/** Nothing is asked of any other server, and no permission is given: the program needs none. */
export function guardSession(session: SessionPart, origin: Origin): void {
  session.setPermissionRequestHandler((_contents, _permission, callback) => callback(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, callback) => callback({ cancel: !mayLoad(url, origin()) }));
}

export function mayLoad(url: string, origin: string | null): boolean {
  return isOwn(url, origin) || (URL.canParse(url) && INWARD.includes(new URL(url).protocol));
}

/**
 * A file of the workshop by its name in it, for showing it in its folder; null for anything but plain names.
 * The window never names a place on the disk.
 */
export function insideWorkshop(workshop: string, name: unknown): string | null {
  if (typeof name !== 'string' || name.length > 300) return null;
  const segments = name.split('/');
  return segments.every((segment) => /^\w[\w .-]*$/.test(segment) && !/[ .]$/.test(segment))
    ? join(workshop, ...segments)
    : null;
}
