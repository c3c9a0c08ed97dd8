/** One change of the record, as the windows are told of it. */
export interface Change {
  /** Number of the newest journal entry. */
  readonly seq: number;
  /** Which chain grew; empty in the first message, which only says how far the journal is. */
  readonly chain: string;
}

export interface ChangeSource {
  readonly changes: { subscribe(listener: (change: Change) => void): () => void };
  lastSeq(): number;
}

export interface ChangeStreams {
  /** A stream of server-sent events, or null when too many are open. */
  open(): ReadableStream<Uint8Array> | null;
  /** Ends them all, so that the host can stop. */
  close(): void;
}

/** Browsers open at most six connections to a host; tabs share one stream. More than this is a fault. */
const MOST = 32;
/** How often a quiet stream says that it is alive, in milliseconds. */
const BEAT_MS = 20_000;
/** A window that is this many bytes behind is let go; it asks again and gets the newest number. */
const BEHIND_BYTES = 256 * 1024;

/**
 * Tells windows how far the journal is. Nothing is replayed: the first message is the present number, and a window
 * that knows an older one asks again for what it shows.
 */
export function changeStreams(source: ChangeSource): ChangeStreams {
  const enders = new Set<() => void>();
  const open = (): ReadableStream<Uint8Array> | null => {
    if (enders.size >= MOST) return null;
    let end = () => {};
    return new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          const send = (text: string) => {
            if ((controller.desiredSize ?? 0) <= 0) end();
            else controller.enqueue(encoder.encode(text));
          };
          // Listen first, then read the number: a change in between is told twice rather than not at all.
          const unsubscribe = source.changes.subscribe((change) => send(eventText(change)));
          const beat = setInterval(() => send(': still here\n\n'), BEAT_MS);
          beat.unref();
          end = () => {
            if (!enders.delete(end)) return;
            clearInterval(beat);
            unsubscribe();
            try {
              controller.close();
            } catch {
              // Cancelled by the window: closed already.
            }
          };
          enders.add(end);
          send(`retry: 1000\n${eventText({ seq: source.lastSeq(), chain: '' })}`);
        },
        cancel: () => end(),
      },
      { highWaterMark: BEHIND_BYTES, size: (chunk) => chunk?.byteLength ?? 0 },
    );
  };
  return {
    open,
    close: () => {
      for (const end of [...enders]) end();
    },
  };
}

const encoder = new TextEncoder();

function eventText({ seq, chain }: Change): string {
  return `id: ${seq}\ndata: ${JSON.stringify({ seq, chain })}\n\n`;
}
