import { as, has, type Atom } from './atom.ts';
import type { Condition, Happened, TokenKind } from './meaning.ts';
import { roleOf } from './scan-phrase.ts';
import { add, peek, use, type Draft, type DraftOf, type State } from './state.ts';

/** A run of words that name something: where it ends, its noun, and where "at …", "from …" begins. */
export interface Run {
  readonly length: number;
  readonly noun: number | null;
  readonly preposition: number | null;
}

/** The words as typed, with single spaces, quotes taken off. */
export function wording(state: State, from: number, to: number): string {
  const words: string[] = [];
  let last: Atom | undefined;
  for (let i = from; i < to; i += 1) {
    const atom = peek(state, i);
    if (!atom) continue;
    const text = as(atom, 'quoted')?.text ?? atom.text.replaceAll(/\s+/g, ' ');
    if (last && last.end === atom.start && words.length > 0) words[words.length - 1] += text;
    else words.push(text);
    last = atom;
  }
  return words.join(' ');
}

/** Takes over what was said before the noun: count, verb, conditions, bag. */
function common(state: State): {
  qty: number | null;
  start: number;
  conditions: Condition[];
  happened: Happened;
} {
  const qty = state.count?.value ?? null;
  const start = state.count?.start ?? peek(state)?.start ?? 0;
  const conditions = state.adjectives;
  const happened = state.verb ?? 'off';
  state.count = null;
  state.adjectives = [];
  if (!state.verbForAll) state.verb = null;
  return { qty, start, conditions, happened };
}

function finish(state: State, start: number, item: Draft, kind: TokenKind, length: number): void {
  if ('stow' in item && item.kind !== 'stow' && state.stow !== null) {
    item.stow = state.stow;
    state.stow = null;
  }
  add(state, start, item);
  use(state, kind, length);
}

/** A noun followed by quotes: only what stands in quotes is the name ('part "M8 bracket"'). */
function nameOf(state: State, run: Run): string {
  const noun = run.noun;
  if (noun === 0 && run.length === 2 && has(peek(state, 1), 'quoted')) return wording(state, 1, 2);
  return wording(state, 0, run.length);
}

const HOLDS = new Set(['on', 'by', 'from', 'with', 'to']);

/** Opens a part from a run of words. */
export function openPart(state: State, run: Run, front: number, look: DraftOf<'part'>['look']): void {
  const { qty, start, conditions, happened } = common(state);
  const word = (
    as(peek(state, front), 'preposition') ? (peek(state, front)?.text.toLowerCase() ?? '') : ''
  ).trim();
  const held = happened === 'aside' && run.length > front && HOLDS.has(word);
  const name = held ? wording(state, 0, front) : nameOf(state, run);
  const heldBy = held ? wording(state, front, run.length) : null;
  const item: DraftOf<'part'> = {
    kind: 'part',
    name,
    look,
    happened,
    qty,
    ownPlace: false,
    stamped: null,
    renew: null,
    heldBy,
    treatments: state.putOn.splice(0).map(({ treatment }) => treatment),
    stow: null,
    conditions,
  };
  finish(state, start, item, 'name', run.length);
}

/** Opens a hose, plug, cable … from a run of words. */
export function openConnection(
  state: State,
  run: Run,
  front: number,
  what: DraftOf<'connection'>['what'],
): void {
  const { qty, start, conditions, happened } = common(state);
  const word = (
    as(peek(state, front), 'preposition') ? (peek(state, front)?.text.toLowerCase() ?? '') : ''
  ).trim();
  const held = happened === 'aside' && run.length > front && HOLDS.has(word);
  const item: DraftOf<'connection'> = {
    kind: 'connection',
    what,
    name: held ? wording(state, 0, front) : nameOf(state, run),
    happened,
    qty,
    ends: null,
    clampMm: null,
    pins: state.pins,
    leaveAlone: false,
    heldBy: held ? wording(state, front, run.length) : null,
    treatments: state.putOn.splice(0).map(({ treatment }) => treatment),
    stow: null,
    conditions,
  };
  state.pins = null;
  finish(state, start, item, 'connection', run.length);
}

/** Opens a thing that was put in. */
export function openTemporary(state: State, run: Run, front: number): void {
  const { qty, start } = common(state);
  const name = wording(state, 0, front);
  const where = run.length > front ? wording(state, front, run.length) : null;
  const item: DraftOf<'temporary'> = { kind: 'temporary', name, role: roleOf(name), qty, where };
  finish(state, start, item, 'temporary', run.length);
}

/** Opens a fluid with the amount said before it. */
export function openFluid(state: State, run: Run): void {
  const { start, conditions } = common(state);
  const item: DraftOf<'fluid'> = {
    kind: 'fluid',
    name: nameOf(state, run),
    did: state.did,
    amountMl: state.amount?.ml ?? null,
    amountTyped: state.amount?.typed ?? null,
    type: null,
    conditions,
  };
  state.did = null;
  state.amount = null;
  finish(state, start, item, 'fluid', run.length);
}
