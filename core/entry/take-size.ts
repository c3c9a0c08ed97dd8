import { as, has, type Atom, type SenseName } from './atom.ts';
import type { DriveStyle, Unit } from './meaning.ts';
import { inchText } from './numbers.ts';
import {
  currentFasteners,
  describe,
  freshFasteners,
  openFasteners,
  peek,
  use,
  type DraftOf,
  type State,
} from './state.ts';
import { bareSize, endsHere, isSized, setDriveSize, setLength, hasKeyHead } from './take-fastener.ts';

/** What a number can count when it stands right before it. */
export const COUNTABLE: readonly SenseName[] = [
  'thread',
  'fastener',
  'stack',
  'head',
  'drive',
  'drive-style',
  'size',
  'part',
  'connection',
  'temporary',
  'condition',
  'missing',
  'of-them',
  'more',
  'place',
  'remark',
  'word',
  'treatment',
  'stack-word',
  'left-hand',
];

/** The number pad: count, then the width of the head. */
export function padHead(state: State, mm: number, unit: Unit): void {
  const item = openFasteners(state);
  setDriveSize(item, mm, unit, null);
  use(state, 'drive');
}

/**
 * A size (mm, inches, or a bare number where the word before or behind says what it is). False: not used.
 * `bare`: without a unit, so only a word beside it decides.
 */
export function takeSize(state: State, mm: number, unit: Unit, bare: boolean): boolean {
  if (!(mm > 0)) return false;
  const next = peek(state, 1);
  if (state.picked !== null) return pickLength(state, mm, unit);
  if (state.awaiting === 'drive' && takeStyled(state, mm, unit)) return true;
  // "washers 13 mm AF": the word behind knows better than the word before.
  if (state.awaiting === 'size' && has(next, 'across-flats')) state.awaiting = null;
  if (state.awaiting !== null && !has(next, 'long', 'missing', 'of-them', 'condition')) {
    return takeAwaited(state, mm, unit, bare);
  }
  if (has(next, 'long') && !has(peek(state, 2), 'fastener', 'part', 'connection'))
    return takeLong(state, mm, unit);
  const heading = has(next, 'across-flats') ? 1 : 0;
  if (heading === 1 && (state.count !== null || !bare || state.first || freshFasteners(state))) {
    return takeHeadSize(state, mm, unit);
  }
  if (bare) return takeBare(state, mm, unit);
  return takeUnitSize(state, mm, unit);
}

/** The word just before wants a size: "hex 16", "clamp 35", "length 30". */
export function takeAwaited(state: State, mm: number, unit: Unit, bare = false): boolean {
  const kind = state.awaiting;
  const item = currentFasteners(state);
  state.awaiting = null;
  if (kind === 'clamp' && state.current?.kind === 'connection') {
    state.current.clampMm = mm;
    use(state, 'clamp');
    return true;
  }
  if (kind === 'length') {
    describe(state, (it) => setLength(it, mm, unit, null));
    use(state, 'length');
    return true;
  }
  if (!item) return false;
  if (kind === 'size') {
    if (bare && item.count === null && plural(peek(state, -1))) return takePlural(state, item, mm);
    item.sizeMm = mm;
    use(state, item.what === 'clamp' ? 'clamp' : 'length');
  } else {
    setDriveSize(item, mm, unit, null);
    use(state, 'drive');
    if (has(peek(state), 'across-flats')) use(state, 'drive');
  }
  return true;
}

const plural = (atom: Atom | undefined): boolean => atom !== undefined && /s$/i.test(atom.text);

/** Kinds that nobody gives a size to on the line: "clips 3" are three. */
const COUNTED = new Set(['clip', 'push rivet', 'rivet', 'cable tie']);

/** "clips 3" is a count; "circlips 25" could be either, so it is neither. */
function takePlural(state: State, item: DraftOf<'fasteners'>, value: number): boolean {
  if (!COUNTED.has(item.what) || !Number.isInteger(value)) return false;
  item.count = value;
  use(state, 'count');
  return true;
}

/** "20 long", also for some of them: "2 45 long". */
function takeLong(state: State, mm: number, unit: Unit): boolean {
  const item = currentFasteners(state);
  const count = state.count?.value ?? null;
  if (item && state.fresh === null && count !== null) {
    setLength(item, mm, unit, count);
    state.count = null;
  } else describe(state, (it) => setLength(it, mm, unit, null));
  use(state, 'length', 2);
  return true;
}

/** "6 of them 20", "the rest 45". */
function pickLength(state: State, mm: number, unit: Unit): boolean {
  const item = currentFasteners(state);
  if (!item) return false;
  const known = item.lengths.reduce<number | null>(
    (sum, g) => (sum === null || g.count === null ? null : sum + g.count),
    item.lengthMm === null ? 0 : null,
  );
  const left = item.count === null || known === null || item.count <= known ? null : item.count - known;
  const holes = state.holes ?? [];
  const said = holes.length > 0 ? holes.length : (state.count?.value ?? null);
  setLength(item, mm, unit, said ?? (state.picked === 'rest' ? left : null), holes);
  state.holes = null;
  state.count = null;
  state.picked = null;
  use(state, 'length');
  if (has(peek(state), 'long')) use(state, 'length');
  return true;
}

/** "13 AF", "16 mm hex", "6 mm Allen", "13 head". */
function takeHeadSize(state: State, mm: number, unit: Unit): boolean {
  const item = state.count !== null ? openFasteners(state) : setWithoutDrive(state);
  setDriveSize(item, mm, unit, hasKeyHead(item) ? null : 'hex external');
  use(state, 'drive', 2);
  return true;
}

function setWithoutDrive(state: State): DraftOf<'fasteners'> {
  const item = freshFasteners(state) ?? (state.fresh === null ? currentFasteners(state) : null);
  return item && (item.drive === null || item.drive.size === null) ? item : openFasteners(state);
}

/** "16 mm hex", "6 Allen": the word for the head or the key stands behind. */
function takeStyled(state: State, mm: number, unit: Unit): boolean {
  const next = peek(state, 1);
  const style = as(next, 'drive-style');
  const head = as(next, 'head');
  if (!style && !head) return false;
  const item = state.count !== null ? openFasteners(state) : setWithoutDrive(state);
  state.awaiting = null;
  if (head) item.head = head.head;
  const named: DriveStyle | null = style?.style ?? null;
  setDriveSize(item, mm, unit, named);
  use(state, 'drive', 2);
  return true;
}

/** A number without a unit and without a word that claims it. */
function takeBare(state: State, mm: number, unit: Unit): boolean {
  const item = freshFasteners(state);
  if (item && item.drive === null && state.count === null && takeStyled(state, mm, unit)) return true;
  if (!item && state.first && state.count === null && currentFasteners(state)?.drive === null) {
    const styled = has(peek(state, 1), 'drive-style') && endsHere(peek(state, 2));
    if (styled && takeStyled(state, mm, unit)) return true;
  }
  if (state.count !== null && has(peek(state, 1), 'drive-style', 'head')) return takeStyled(state, mm, unit);
  if (!item || state.count !== null) return false;
  if (
    has(peek(state, -1), 'times') &&
    item.thread !== null &&
    item.lengthMm === null &&
    item.thread.system === 'metric'
  ) {
    setLength(item, mm, unit, null);
    use(state, 'length');
    return true;
  }
  // "bolts 13" is a head or a count.
  if (item.count === null && has(peek(state, -1), 'fastener') && plural(peek(state, -1))) return false;
  if (
    has(peek(state, 1), ...COUNTABLE.filter((name) => name !== 'word')) &&
    !has(peek(state, 1), 'treatment', 'drive')
  ) {
    return false;
  }
  // Behind an inch thread a bare number is neither inches nor millimetres.
  if (item.thread !== null && item.thread.system !== 'metric') return false;
  return takeRole(state, item, mm, unit);
}

function takeRole(state: State, item: DraftOf<'fasteners'>, mm: number, unit: Unit): boolean {
  const role = bareSize(item, mm);
  if (role === null) return false;
  if (role === 'drive') setDriveSize(item, mm, unit, null);
  else setLength(item, mm, unit, null);
  use(state, role);
  return true;
}

/** A size with a unit. */
function takeUnitSize(state: State, mm: number, unit: Unit): boolean {
  if (takeStyled(state, mm, unit)) return true;
  const next = peek(state, 1);
  if (as(next, 'connection')?.what === 'union' && state.count === null) {
    // "11 mm union"
    padHead(state, mm, unit);
    const set = freshFasteners(state);
    if (set) set.name = next?.text ?? null;
    return true;
  }
  const kind = as(next, 'fastener');
  if (kind && isSized(kind.what)) {
    state.size = { mm, unit, lengthMm: null };
    use(state, 'length');
    return true;
  }
  const item = freshFasteners(state);
  if (state.count !== null || (!item && kind && !bareInch(state))) {
    if (kind && bareInch(state)) return false;
    padHead(state, mm, unit);
    return true;
  }
  if (item && has(peek(state, -1), 'times') && item.lengthMm === null) {
    setLength(item, mm, unit, null);
    use(state, 'length');
    return true;
  }
  if (item) return takeRole(state, item, mm, unit);
  return takeThickness(state) || takeOfPlug(state, mm, unit) || takeAlone(state, mm, unit);
}

/** "3/8 bolts" is a diameter to some and a head to others. */
function bareInch(state: State): boolean {
  return as(peek(state), 'size')?.bare === true;
}

/** "shim 0.15 mm": the thickness is its name. */
function takeThickness(state: State): boolean {
  const item = state.fresh;
  if (item?.kind !== 'part' || item.look !== 'shim') return false;
  item.name = `${item.name} ${peek(state)?.text ?? ''}`;
  use(state, 'name');
  return true;
}

/** "union 11 mm", "drain plug, 17 mm": the head of a thing that is screwed in itself. */
function takeOfPlug(state: State, mm: number, unit: Unit): boolean {
  const item = state.current;
  if (item?.kind !== 'part' && item?.kind !== 'connection') return false;
  const screwed =
    item.kind === 'connection'
      ? item.what === 'union' || item.what === 'earth lead'
      : /plug$/i.test(item.name);
  if (!screwed || (state.fresh !== item && !endsHere(peek(state, 1)))) return false;
  const name = item.name;
  const before = state.items.at(-2)?.item;
  if (
    before?.kind === 'fasteners' &&
    before.drive === null &&
    before.count === null &&
    before.name === null
  ) {
    // "M16x1.5 drain plug, 17 mm": thread and head of the same plug.
    before.name = name;
    setDriveSize(before, mm, unit, null);
    use(state, 'drive');
    return true;
  }
  padHead(state, mm, unit);
  const set = freshFasteners(state);
  if (set) set.name = name;
  return true;
}

/** ", 13 mm": a stretch with nothing but a size. */
function takeAlone(state: State, mm: number, unit: Unit): boolean {
  if (!endsHere(peek(state, 1))) return false;
  const item = currentFasteners(state);
  if (item) return takeRole(state, item, mm, unit);
  if (state.current !== null) return false;
  padHead(state, mm, unit);
  return true;
}

/** What a size that nobody could place might have been. */
export function sizeSuggestion(state: State, mm: number, unit: Unit): string {
  if (bareInch(state)) return `${inchText(mm)} AF`;
  return `${unit === 'in' ? `${inchText(mm)} in` : `${mm} mm`} long`;
}
