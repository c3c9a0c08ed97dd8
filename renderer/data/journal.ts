import { create } from 'zustand';
import type { TickAhead } from '../model/ticked-ahead.ts';
import type { ScreenName } from './remember.ts';

/** A change shown before the reply came: what it was, until the record has it. */
export interface Pending {
  readonly command: string;
  readonly jobId: string;
  /** Set where a new removal is shown ahead of the record. */
  readonly removal: { readonly id: string; readonly text: string } | null;
  /** Set where things of the way back are shown as ticked ahead of the record. */
  readonly tick: TickAhead | null;
  /** The journal number that it got; null while it is on its way. */
  readonly seq: number | null;
}

interface Journal {
  /** Newest journal number heard of; readings older than this are asked for again. */
  readonly seq: number;
  readonly pending: readonly Pending[];
  /** The last refusal, in words. */
  readonly refusal: string | null;
  /** False while the host does not answer. */
  readonly connected: boolean;
  /** The screen whose command the record took last, undoing included; null = none in this window. */
  readonly doneOn: ScreenName | null;
  heard(seq: number): void;
  tookOne(on: ScreenName): void;
  begin(pending: Pending): void;
  end(command: string): void;
  /** Kept, but shown ahead until a reading that holds it has come. */
  kept(command: string, seq: number): void;
  /** Lets go of a removal shown ahead that the record put elsewhere. */
  forget(removalId: string): void;
  refuse(sentence: string | null): void;
  setConnected(connected: boolean): void;
}

/** How far the record is, as this window knows it, and what is on its way to it. */
export const journal = create<Journal>()((set) => ({
  seq: 0,
  pending: [],
  refusal: null,
  connected: true,
  doneOn: null,
  heard: (seq) => set((now) => (seq > now.seq ? { seq } : now)),
  tookOne: (doneOn) => set({ doneOn }),
  begin: (pending) => set((now) => ({ pending: [...now.pending, pending], refusal: null })),
  end: (command) => set((now) => ({ pending: now.pending.filter((one) => one.command !== command) })),
  kept: (command, seq) =>
    set((now) => ({ pending: now.pending.map((one) => (one.command === command ? { ...one, seq } : one)) })),
  forget: (removalId) =>
    set((now) => ({ pending: now.pending.filter((one) => one.removal?.id !== removalId) })),
  refuse: (refusal) => set({ refusal }),
  setConnected: (connected) => set({ connected }),
}));

/** Listens to the host's change stream; a lost stream is taken up again by the browser. */
export function listen(): () => void {
  const stream = new EventSource('/changes');
  const hear = (event: MessageEvent<string>) => {
    const change = JSON.parse(event.data) as { seq: number };
    journal.getState().heard(change.seq);
    journal.getState().setConnected(true);
  };
  stream.addEventListener('message', hear);
  stream.addEventListener('change', hear as EventListener);
  stream.addEventListener('open', () => journal.getState().setConnected(true));
  stream.addEventListener('error', () => journal.getState().setConnected(false));
  return () => stream.close();
}
