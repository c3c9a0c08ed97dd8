import { assemble } from './assemble.ts';
import { as, has, type Atom } from './atom.ts';
import { threadsThatFit } from './fits.ts';
import type { Entry, EntryItem, Token } from './meaning.ts';
import { nearWord } from './near.ts';
import { scan } from './scan.ts';
import type { Draft } from './state.ts';

/** Threads that fit the head, for a set whose thread was not said. */
function withThreads(item: Draft): EntryItem {
  if (item.kind !== 'fasteners' || item.thread !== null || item.drive === null) return item;
  const threadsPossible = threadsThatFit(item.drive, item.head);
  return { ...item, threadsPossible, threadToConfirm: threadsPossible[0] ?? null };
}

/** What was not understood, joined over the spaces between, each as one note at its place in the line. */
function unknownNotes(text: string, atoms: readonly Atom[]): { start: number; item: EntryItem }[] {
  const notes: { start: number; item: EntryItem }[] = [];
  let open: { start: number; end: number } | null = null;
  const close = (): void => {
    if (open)
      notes.push({ start: open.start, item: { kind: 'note', text: text.slice(open.start, open.end) } });
    open = null;
  };
  for (const atom of atoms) {
    if (has(atom, 'space')) continue;
    if (atom.kind !== null) close();
    else if (open) open = { start: open.start, end: atom.end };
    else open = { start: atom.start, end: atom.end };
  }
  close();
  return notes;
}

function token(atom: Atom): Token {
  const { start, end, text, kind } = atom;
  if (kind !== null) return { start, end, text, kind, understood: true };
  const suggestion = atom.suggestion ?? (as(atom, 'word') ? nearWord(text) : null);
  const unknown: Token = { start, end, text, kind: 'unknown', understood: false };
  return suggestion === null ? unknown : { ...unknown, suggestion };
}

/**
 * Reads one entry line. Total: any text gives an entry, nothing throws, and the tokens join up to the text.
 * What is not understood is a token with `understood: false` and stands in a note item as typed.
 */
export function readEntry(text: string): Entry {
  const atoms = scan(text);
  const { items } = assemble(text, atoms);
  const all = [
    ...items.map(({ start, item }) => ({ start, item: withThreads(item) })),
    ...unknownNotes(text, atoms),
  ].sort((a, b) => a.start - b.start);
  return { text, tokens: atoms.map(token), items: all.map(({ item }) => item) };
}
