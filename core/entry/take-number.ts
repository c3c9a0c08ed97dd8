import { as, has, type Atom, type SenseName } from './atom.ts';
import type { DriveStyle, Unit } from './meaning.ts';
import { inchText } from './numbers.ts';
import {
  currentFasteners,
  describe,
  freshFasteners,
  openFasteners,
  pass,
  peek,
  use,
  type DraftOf,
  type State,
} from './state.ts';
import { bareSize, endsHere, isSized, setDriveSize, setLength } from './take-fastener.ts';

/** What a number can count when it stands right before it. */
const COUNTABLE: readonly SenseName[] = [
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

const MOST = 9999;

/** A bare number: a count, a head width, a length, by what stands before and behind it. */
export function takeNumber(state: State, value: number, whole: boolean): void {
  const next = peek(state, 1);
  if (has(next, 'times')) {
    takeTimes(state, value, whole);
    return;
  }
  if (takeSize(state, value, 'mm', true)) return;
  const counts = whole && value <= MOST && (value > 0 || missingFollows(state));
  if (counts && state.count === null && countFits(state, next)) {
    state.count = { value, start: peek(state)?.start ?? 0 };
    use(state, 'count');
    return;
  }
  if (state.count !== null && value > 0) {
    padHead(state, value, 'mm');
    return;
  }
  const item = currentFasteners(state);
  const said =
    item && !isSized(item.what) && item.thread !== null && item.lengthMm === null ? `${value} long` : null;
  pass(state, said ?? (freshFasteners(state)?.lengthMm === null ? `${value} long` : null));
}

function missingFollows(state: State): boolean {
  return (
    has(peek(state, 1), 'missing') ||
    (has(peek(state, 1), 'of-them', 'more') && has(peek(state, 2), 'missing'))
  );
}

function countFits(state: State, next: Atom | undefined): boolean {
  if (has(next, ...COUNTABLE)) return true;
  // "5 13": the first of two numbers on the pad, "5" alone on the line.
  if (state.first && has(next, 'num')) return true;
  return state.first && state.current === null && endsHere(next);
}

/** The number pad: count, then the width of the head. */
function padHead(state: State, mm: number, unit: Unit): void {
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
    return takeAwaited(state, mm, unit);
  }
  if (has(next, 'long')) return takeLong(state, mm, unit);
  const heading = has(next, 'across-flats') ? 1 : 0;
  if (heading === 1 && (state.count !== null || !bare || state.first || freshFasteners(state))) {
    return takeHeadSize(state, mm, unit);
  }
  if (bare) return takeBare(state, mm, unit);
  return takeUnitSize(state, mm, unit);
}

/** The word just before wants a size: "hex 16", "clamp 35", "length 30". */
function takeAwaited(state: State, mm: number, unit: Unit): boolean {
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
    item.sizeMm = mm;
    use(state, item.what === 'clamp' ? 'clamp' : 'length');
  } else {
    setDriveSize(item, mm, unit, null);
    use(state, 'drive');
    if (has(peek(state), 'across-flats')) use(state, 'drive');
  }
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
  setLength(item, mm, unit, state.count?.value ?? (state.picked === 'rest' ? left : null));
  state.count = null;
  state.picked = null;
  use(state, 'length');
  if (has(peek(state), 'long')) use(state, 'length');
  return true;
}

/** "13 AF", "16 mm hex", "6 mm Allen", "13 head". */
function takeHeadSize(state: State, mm: number, unit: Unit): boolean {
  const item = state.count !== null ? openFasteners(state) : setWithoutDrive(state);
  setDriveSize(item, mm, unit, null);
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
  if (
    has(peek(state, 1), ...COUNTABLE.filter((name) => name !== 'word')) &&
    !has(peek(state, 1), 'treatment', 'drive')
  ) {
    return false;
  }
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
  return takeAlone(state, mm, unit);
}

/** "3/8 bolts" is a diameter to some and a head to others. */
function bareInch(state: State): boolean {
  return as(peek(state), 'size')?.bare === true;
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
export function sizeSuggestion(mm: number, unit: Unit): string {
  return `${unit === 'in' ? `${inchText(mm)} in` : `${mm} mm`} long`;
}

/** "5x13", "5 x M8", "split pin 3.2x40", "4 6x20 dowel pins". */
function takeTimes(state: State, value: number, whole: boolean): void {
  const behind = peek(state, 2);
  const other = as(behind, 'num') ?? null;
  const sized = as(behind, 'size');
  const second = other?.value ?? sized?.mm ?? null;
  const unit: Unit = sized?.unit ?? 'mm';
  const counts = whole && value > 0 && value <= MOST && state.count === null;
  const noun = as(peek(state, 3), 'fastener');
  if (second === null) {
    if (!counts) return pass(state);
    state.count = { value, start: peek(state)?.start ?? 0 };
    use(state, 'count', 2);
    return;
  }
  const item = freshFasteners(state);
  if (state.awaiting === 'size' && item) {
    state.awaiting = null;
    item.sizeMm = value;
    setLength(item, second, unit, null);
    use(state, 'length', 3);
  } else if (noun && isSized(noun.what)) {
    state.size = { mm: value, unit, lengthMm: second };
    use(state, 'length', 3);
  } else if (counts && state.first) {
    state.count = { value, start: peek(state)?.start ?? 0 };
    use(state, 'count', 2);
    padHead(state, second, unit);
  } else {
    const suggestion = `M${value}x${second}`;
    for (let i = 0; i < 3; i += 1) pass(state, i === 0 ? suggestion : null);
  }
}
