import type { JobState, Row } from '../model/tables.ts';
import { contents } from './contents.ts';
import { inMm } from '../model/spec-words.ts';
import { holePieces } from './holes.ts';
import { compare, happened, lookup } from './lookup.ts';

type Spec = Row<'spec'>;
type Difference = 'length' | 'pitch' | 'class' | 'hand';

/** Two specifications that the hand takes for each other. */
export interface Alike {
  readonly specIds: readonly [string, string];
  readonly differs: readonly Difference[];
  /** Micrometres; null where a length is not recorded or both are equal. */
  readonly lengthApartUm: number | null;
  /** "Same thread (M8), same head, 10 mm apart (25 and 35 mm)." */
  readonly sentence: string;
}

export interface LookAlike extends Alike {
  /** The bag they lie in together, or the removal whose holes take both. */
  readonly stowId: string | null;
  readonly removalId: string | null;
}

const THREADED: ReadonlySet<string> = new Set([
  'bolt',
  'screw',
  'set screw',
  'stud',
  'wood screw',
  'self-tapping screw',
  'unknown',
]);
/** Kinds that are judged by size and length only. */
const PLAIN: ReadonlySet<string> = new Set([
  'pin',
  'split pin',
  'roll pin',
  'dowel pin',
  'taper pin',
  'clevis pin',
  'spacer',
  'push rivet',
]);

/**
 * Whether two specifications are look-alikes: the same thread and drive, as far as both were recorded, but another
 * length, pitch, class or hand. Null when they are alike in everything, or when the hand can tell them apart.
 * What was not recorded tells nobody apart, so it does not hinder; the thread (or the size of the tool) must be known.
 */
export function alike(a: Spec, b: Spec): Alike | null {
  const base = sameBase(a, b);
  if (base === null) return null;
  if (clash(a.head, b.head) || clash(a.drive, b.drive)) return null;
  if (clash(toolOf(a), toolOf(b))) return null;
  const apart = a.lengthUm !== null && b.lengthUm !== null ? Math.abs(a.lengthUm - b.lengthUm) : 0;
  const differs: Difference[] = [];
  if (apart > 0) differs.push('length');
  const pitchKnown = a.threadKnown && b.threadKnown;
  if (pitchKnown && a.pitchUm !== null && b.pitchUm !== null && a.pitchUm !== b.pitchUm)
    differs.push('pitch');
  if (clash(a.grade, b.grade)) differs.push('class');
  if (a.hand !== b.hand) differs.push('hand');
  if (differs.length === 0) return null;
  const [first, second] = a.id < b.id ? [a, b] : [b, a];
  return {
    specIds: [first.id, second.id],
    differs,
    lengthApartUm: apart > 0 ? apart : null,
    sentence: `${[base, headWords(a, b), ...differs.map((what) => wordsFor(what, a, b))].join(', ')}.`,
  };
}

/** "Same thread (M8)", or null when they do not go into the same hole. */
function sameBase(a: Spec, b: Spec): string | null {
  if (PLAIN.has(a.kind) && a.kind === b.kind) {
    const size = (spec: Spec) => plain(spec.thread) ?? plain(spec.more);
    return size(a) !== null && size(a) === size(b) ? `Same size (${a.thread ?? a.more})` : null;
  }
  const both = (THREADED.has(a.kind) && THREADED.has(b.kind)) || (a.kind === b.kind && a.kind !== 'washer');
  if (!both) return null;
  const [sizeA, sizeB] = [threadSize(a.thread), threadSize(b.thread)];
  if (sizeA !== null && sizeA === sizeB) return `Same thread (${sizeLabel(a.thread)})`;
  if (sizeA === null && sizeB === null && toolOf(a) !== null && toolOf(a) === toolOf(b))
    return 'Thread not recorded';
  return null;
}

/** Nominal size without pitch or series: "M8" of "M8x1", "5/16" of "5/16-18 UNC". */
function threadSize(thread: string | null): string | null {
  const text = plain(thread);
  if (text === null) return null;
  const size = /^(?:#\s?\d+|[a-z]+\s?\d[\d./]*|\d+[- ]\d+\/\d+|\d+\/\d+|\d[\d.]*)/.exec(text)?.[0] ?? text;
  return size.replace(/\s/g, '');
}

function sizeLabel(thread: string | null): string {
  const size = threadSize(thread) ?? '';
  return size.toUpperCase();
}

/** The tool that fits: across flats in micrometres, or the size as said (T30). */
function toolOf(spec: Spec): string | null {
  return spec.driveSizeUm === null ? plain(spec.driveTyped) : String(spec.driveSizeUm);
}

function headWords(a: Spec, b: Spec): string {
  if (a.head !== null && plain(a.head) === plain(b.head)) return 'same head';
  if (toolOf(a) !== null && toolOf(a) === toolOf(b)) return 'same drive';
  return 'head not recorded';
}

function wordsFor(what: Difference, a: Spec, b: Spec): string {
  switch (what) {
    case 'length':
      return `${inMm(Math.abs((a.lengthUm ?? 0) - (b.lengthUm ?? 0)))} mm apart (${pair(a.lengthUm, b.lengthUm)} mm)`;
    case 'pitch':
      return `pitch ${pair(a.pitchUm, b.pitchUm)} mm`;
    case 'class':
      return `class ${[a.grade ?? '', b.grade ?? ''].sort(compare).join(' and ')}`;
    case 'hand':
      return 'one has a left-hand thread';
  }
}

function pair(a: number | null, b: number | null): string {
  return [a ?? 0, b ?? 0]
    .sort((x, y) => x - y)
    .map(inMm)
    .join(' and ');
}

function plain(text: string | null): string | null {
  const clean = (text ?? '').trim().toLowerCase();
  return clean === '' ? null : clean;
}

/** Both known and not equal: the hand can tell. */
function clash(a: string | null, b: string | null): boolean {
  return plain(a) !== null && plain(b) !== null && plain(a) !== plain(b);
}

/** All look-alikes that lie in one bag now, then all that one removal takes: mixed lengths in one joint, above all. */
export function lookAlikes(state: JobState): LookAlike[] {
  const look = lookup(state);
  const inBag = new Map<string, Set<string>>();
  for (const { stowId, specId } of contents(state))
    if (stowId !== null && specId !== null) into(inBag, stowId, specId);
  const inRemoval = new Map<string, Set<string>>();
  for (const set of state.fset) {
    if (set.how !== 'out' || !happened(look.removals.get(set.removalId))) continue;
    const positions = look.positionsOf.get(set.id) ?? [null];
    for (const position of positions)
      for (const piece of holePieces(look, set, position))
        if (piece.specId !== null) into(inRemoval, set.removalId, piece.specId);
  }
  const pairsOf = (specIds: ReadonlySet<string>) => pairs(look.specs, oneOfEach(look.specs, specIds));
  return [
    ...[...inBag].flatMap(([stowId, ids]) =>
      pairsOf(ids).map((pair) => ({ ...pair, stowId, removalId: null })),
    ),
    ...[...inRemoval].flatMap(([removalId, ids]) =>
      pairsOf(ids).map((pair) => ({ ...pair, stowId: null, removalId })),
    ),
  ];
}

/** One of each kind: fifty sets of the same bolt in one bag are one kind, and nobody mixes them up. */
function oneOfEach(specs: ReadonlyMap<string, Spec>, ids: ReadonlySet<string>): string[] {
  const kinds = new Map<string, string>();
  for (const id of ids) {
    const spec = specs.get(id);
    if (!spec) continue;
    const { id: _id, jobId: _jobId, ...kind } = spec;
    const key = JSON.stringify(kind);
    if (!kinds.has(key)) kinds.set(key, id);
  }
  return [...kinds.values()];
}

/** What would lie with a look-alike if this specification went into that bag: to be said before it does. */
export function lookAlikesIfPutInto(state: JobState, specId: string, stowId: string): LookAlike[] {
  const specs = new Map(state.spec.map((spec) => [spec.id, spec]));
  const own = specs.get(specId);
  if (!own) return [];
  const there = new Set(
    contents(state).flatMap((c) => (c.stowId === stowId && c.specId !== null ? [c.specId] : [])),
  );
  return [...there].flatMap((id) => {
    const other = specs.get(id);
    const pair = other ? alike(own, other) : null;
    return pair ? [{ ...pair, stowId, removalId: null }] : [];
  });
}

function into(groups: Map<string, Set<string>>, key: string, value: string): void {
  const group = groups.get(key);
  if (group) group.add(value);
  else groups.set(key, new Set([value]));
}

/** Only specifications of one size or tool are compared with each other, so that a large removal stays quick. */
function pairs(specs: ReadonlyMap<string, Spec>, ids: readonly string[]): Alike[] {
  const bySize = new Map<string, Spec[]>();
  for (const id of ids) {
    const spec = specs.get(id);
    if (!spec) continue;
    const key = threadSize(spec.thread) ?? `tool ${toolOf(spec) ?? spec.more}`;
    const group = bySize.get(key);
    if (group) group.push(spec);
    else bySize.set(key, [spec]);
  }
  const found: Alike[] = [];
  for (const group of bySize.values()) {
    group.forEach((a, i) => {
      for (const b of group.slice(i + 1)) {
        const pair = alike(a, b);
        if (pair) found.push(pair);
      }
    });
  }
  return found;
}
