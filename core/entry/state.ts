import type { Atom } from './atom.ts';
import type { Condition, EntryItem, FastenerItem, Happened, PutOn, TokenKind, Unit } from './meaning.ts';

/** A meaning while it is being put together. */
export type Draft<T extends EntryItem = EntryItem> = T extends EntryItem
  ? { -readonly [K in keyof T]: T[K] }
  : never;
export type DraftOf<K extends EntryItem['kind']> = Draft<Extract<EntryItem, { kind: K }>>;

/** A description that came before the fasteners it belongs to. */
export type Later = (item: DraftOf<'fasteners'>) => void;

/** What the assembly knows while it walks over the atoms of a line, spaces left out. */
export interface State {
  readonly text: string;
  readonly sig: readonly Atom[];
  at: number;
  readonly items: { readonly start: number; readonly item: Draft }[];
  /** The last item that more words can describe. */
  current: Draft | null;
  /** The item opened between the last separator and here. */
  fresh: Draft | null;
  /** True until something was read in this stretch. */
  first: boolean;
  /** The stretch began behind a "+". */
  plus: boolean;
  /** Behind "stack": pieces until another thing is named. */
  stacking: boolean;
  count: { readonly value: number; readonly start: number } | null;
  /** "6 of them", "the rest": the count picks from the item before. */
  picked: 'of them' | 'rest' | null;
  more: boolean;
  holes: readonly number[] | null;
  /** A size before its noun: "35 mm clamp", "6x20 dowel". */
  size: { readonly mm: number; readonly unit: Unit; readonly lengthMm: number | null } | null;
  /** A condition before its noun: "cracked cover". */
  adjectives: Condition[];
  /** Sealant, grease … said before what it is on: "greased bearing". */
  putOn: { readonly start: number; readonly treatment: PutOn }[];
  verb: Happened | null;
  verbForAll: boolean;
  did: DraftOf<'fluid'>['did'];
  amount: { readonly ml: number | null; readonly typed: string } | null;
  /** "3-pin plug": ways said before the plug. */
  pins: number | null;
  /** What a size at this place would be, because of the word just before it. */
  awaiting: 'drive' | 'size' | 'clamp' | 'length' | null;
  readonly later: Later[];
  /** Sets of what is one piece by itself, named in the singular: one, unless a count is said. */
  readonly singular: DraftOf<'fasteners'>[];
  /** Sets that were named by nothing but a place, and where it stands. */
  readonly whereSets: { readonly item: DraftOf<'fasteners'>; readonly start: number }[];
  /** Descriptions before any item: a bag, of which at the end an item of its own is made. */
  stow: DraftOf<'fasteners'>['stow'];
  /** What the last stow behind a comma of its own was given to. */
  stowApart: DraftOf<'fasteners'> | DraftOf<'part'> | DraftOf<'connection'> | null;
}

export function startState(text: string, sig: readonly Atom[]): State {
  return {
    text,
    sig,
    at: 0,
    items: [],
    current: null,
    fresh: null,
    first: true,
    plus: false,
    stacking: false,
    count: null,
    picked: null,
    more: false,
    holes: null,
    size: null,
    adjectives: [],
    putOn: [],
    verb: null,
    verbForAll: false,
    did: null,
    amount: null,
    pins: null,
    awaiting: null,
    later: [],
    singular: [],
    whereSets: [],
    stow: null,
    stowApart: null,
  };
}

/** The atom `offset` places from here, or undefined. */
export function peek(state: State, offset = 0): Atom | undefined {
  return state.sig[state.at + offset];
}

/** Marks the next `n` atoms as understood and steps over them. */
export function use(state: State, kind: TokenKind, n = 1): void {
  for (let i = 0; i < n; i += 1) {
    const atom = state.sig[state.at];
    if (atom) atom.kind = kind;
    state.at += 1;
  }
  state.first = false;
}

/** Steps over an atom that nobody understands; it becomes a note. */
export function pass(state: State, suggestion: string | null = null): void {
  const atom = state.sig[state.at];
  if (atom && suggestion !== null) atom.suggestion = suggestion;
  state.at += 1;
  state.first = false;
}

/** Adds an item that begins at `start`; it is what the following words describe. */
export function add(state: State, start: number, item: Draft): void {
  state.items.push({ start, item });
  state.current = item;
  state.fresh = item;
  state.stacking = false;
}

/** A fastener set of which nothing is known. */
export function emptyFasteners(): DraftOf<'fasteners'> {
  const item: FastenerItem = {
    kind: 'fasteners',
    what: 'unspecified',
    name: null,
    happened: 'off',
    count: null,
    missingAsFound: null,
    missingHoles: [],
    missingAre: 'not said',
    thread: null,
    threadsPossible: [],
    threadToConfirm: null,
    lengthMm: null,
    lengthUnit: null,
    lengths: [],
    sizeMm: null,
    head: null,
    drive: null,
    propertyClass: null,
    leftHand: false,
    treatments: [],
    stack: [],
    torque: null,
    renew: null,
    stow: null,
    conditions: [],
  };
  return { ...item };
}

/** The fasteners that words here describe, or null when the last thing was something else. */
export function currentFasteners(state: State): DraftOf<'fasteners'> | null {
  return state.current?.kind === 'fasteners' ? state.current : null;
}

/** The fasteners opened in this stretch, or null. */
export function freshFasteners(state: State): DraftOf<'fasteners'> | null {
  return state.fresh?.kind === 'fasteners' ? state.fresh : null;
}

/** Gives a set the sealant or grease that was said before it. */
export function takeWaiting(state: State, item: DraftOf<'fasteners'>): void {
  const said = state.putOn.splice(0).map(({ treatment }) => treatment.what);
  item.treatments = [...new Set([...item.treatments, ...said])];
}

/** Opens a new set with the count that was waiting, what was said before, and the word for what happened. */
export function openFasteners(state: State): DraftOf<'fasteners'> {
  const item = emptyFasteners();
  item.count = state.count?.value ?? null;
  const start = state.count?.start ?? peek(state)?.start ?? state.text.length;
  state.count = null;
  if (state.verb === 'slackened') item.happened = 'slackened';
  if (!state.verbForAll) state.verb = null;
  item.conditions = state.adjectives.map((c) => ({ ...c, qty: c.qty ?? item.count }));
  state.adjectives = [];
  if (state.size) {
    item.sizeMm = state.size.mm;
    if (state.size.lengthMm !== null) {
      item.lengthMm = state.size.lengthMm;
      item.lengthUnit = 'mm';
    }
    state.size = null;
  }
  item.stow = state.stow;
  state.stow = null;
  for (const apply of state.later.splice(0)) apply(item);
  takeWaiting(state, item);
  add(state, start, item);
  return item;
}

/** Gives a description to the fasteners at hand, or keeps it for the next ones. */
export function describe(state: State, apply: Later): void {
  const item = currentFasteners(state);
  if (state.count !== null) apply(openFasteners(state));
  else if (item) apply(item);
  else state.later.push(apply);
}
