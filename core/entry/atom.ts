import type { Drive, EntryItem, Stow, Thread, TokenKind, Torque, Unit } from './meaning.ts';
import type { WordSense } from './vocabulary.ts';

/** What one stretch of the line can mean taken by itself; the assembly decides by what stands around it. */
export type Sense =
  | WordSense
  | { readonly s: 'space' | 'hard' | 'colon' | 'plus' | 'times' | 'word' | 'kept' }
  | { readonly s: 'num'; readonly value: number; readonly whole: boolean }
  | { readonly s: 'size'; readonly mm: number; readonly unit: Unit; readonly bare: boolean }
  | { readonly s: 'thread'; readonly thread: Thread }
  | { readonly s: 'length'; readonly mm: number; readonly unit: Unit }
  | { readonly s: 'drive'; readonly drive: Drive }
  | { readonly s: 'class'; readonly value: string }
  | { readonly s: 'stow'; readonly stow: Stow }
  | { readonly s: 'holes'; readonly holes: readonly number[] }
  | { readonly s: 'torque'; readonly torque: Torque }
  | { readonly s: 'ends'; readonly ends: number }
  | { readonly s: 'pins'; readonly pins: number }
  | { readonly s: 'amount'; readonly ml: number | null }
  | { readonly s: 'fluid-type'; readonly type: string }
  | { readonly s: 'stamped'; readonly value: string }
  | { readonly s: 'quoted'; readonly text: string }
  | { readonly s: 'item'; readonly item: EntryItem; readonly kind: TokenKind };

export type SenseName = Sense['s'];

/** A stretch of the line with what it can mean, before and while it is put in its place. */
export interface Atom {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly senses: readonly Sense[];
  /** Set by the assembly. null: nobody used it, so it is not understood. */
  kind: TokenKind | null;
  suggestion: string | null;
}

/** The sense of this name that an atom has, or null. */
export function as<N extends SenseName>(atom: Atom | undefined, name: N): Extract<Sense, { s: N }> | null {
  if (!atom) return null;
  for (const sense of atom.senses) if (sense.s === name) return sense as Extract<Sense, { s: N }>;
  return null;
}

/** Whether an atom has one of these senses. */
export function has(atom: Atom | undefined, ...names: readonly SenseName[]): boolean {
  return atom !== undefined && atom.senses.some((sense) => names.includes(sense.s));
}
