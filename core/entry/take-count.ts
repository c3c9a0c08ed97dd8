import { as, has, type Atom } from './atom.ts';
import type { Unit } from './meaning.ts';
import { INCH_MM } from './numbers.ts';
import { currentFasteners, freshFasteners, openFasteners, pass, peek, use, type State } from './state.ts';
import { endsHere, isSized, setLength } from './take-fastener.ts';
import { COUNTABLE, padHead, takeAwaited, takeSize } from './take-size.ts';

const MOST = 9999;

/** A bare number: a count, a head width, a length, by what stands before and behind it. */
export function takeNumber(state: State, value: number, whole: boolean): void {
  const next = peek(state, 1);
  if (has(next, 'times')) {
    takeTimes(state, value, whole);
    return;
  }
  if (takeRatio(state, value) || takeHoleBehind(state, value, whole)) return;
  if (whole && value > 0 && value <= MOST) {
    if (takeCountOfHeads(state, value) || takeOff(state, value) || takeInches(state, value)) return;
  }
  if (takeSize(state, value, 'mm', true)) return;
  const counts = whole && value <= MOST && (value > 0 || missingFollows(state));
  if (counts && state.count === null && lateCount(state, value)) return;
  if (counts && state.count === null && countFits(state, next)) {
    state.count = { value, start: peek(state)?.start ?? 0 };
    use(state, 'count');
    return;
  }
  if (state.count !== null && value > 0) {
    padHead(state, value, 'mm');
    return;
  }
  pass(state, numberSuggestion(state, value));
}

/** What a number that nobody could place might have been. */
function numberSuggestion(state: State, value: number): string | null {
  const item = freshFasteners(state) ?? (state.first ? currentFasteners(state) : null);
  if (!item) return null;
  if (isSized(item.what)) return item.sizeMm === null ? `${value} mm` : null;
  if (item.thread === null && item.drive === null) return `${value} AF`;
  return item.lengthMm === null && item.lengths.length === 0 ? `${value} long` : null;
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
  if (has(next, 'long') && has(peek(state, 2), 'fastener')) return true;
  // "cover 5 13": the pad right behind a part.
  const named = state.fresh !== null && state.fresh.kind !== 'fasteners';
  if (named && has(next, 'num', 'size') && endsHere(peek(state, 2))) return true;
  return state.first && state.current === null && endsHere(next);
}

/** "3 of 5 missing": three of them, of five. */
function takeRatio(state: State, value: number): boolean {
  const all = as(peek(state, 2), 'num');
  if (!has(peek(state, 1), 'preposition') || peek(state, 1)?.text.toLowerCase() !== 'of' || all === null)
    return false;
  if (!has(peek(state, 3), 'missing', 'condition') || !Number.isInteger(value) || !all.whole) return false;
  const start = peek(state)?.start ?? 0;
  if (currentFasteners(state) === null) {
    state.count = { value: all.value, start };
    openFasteners(state);
  }
  state.count = { value, start };
  state.picked = 'of them';
  use(state, 'count', 3);
  return true;
}

/** "bolt 3 sheared" is the bolt in hole 3; "bolts 3 sheared" is three of them. */
function takeHoleBehind(state: State, value: number, whole: boolean): boolean {
  const before = peek(state, -1);
  if (!whole || value < 1 || !has(before, 'fastener') || !has(peek(state, 1), 'condition', 'missing'))
    return false;
  if (state.count !== null || state.holes !== null || before?.text.toLowerCase().endsWith('s') === true)
    return false;
  state.awaiting = null;
  state.holes = [value];
  use(state, 'condition');
  return true;
}

/** "push rivets, 6", "wheel nuts 5 19 mm": the count behind the word. */
function lateCount(state: State, value: number): boolean {
  const item = currentFasteners(state);
  if (!item || item.count !== null || item.what === 'unspecified') return false;
  const next = peek(state, 1);
  const alone = state.first && endsHere(next);
  const before =
    state.fresh === item &&
    has(peek(state, -1), 'fastener') &&
    ((has(next, 'num', 'size') && endsHere(peek(state, 2))) || has(next, 'thread'));
  if (!alone && !before) return false;
  item.count = value;
  use(state, 'count');
  return true;
}

/** "10 head bolts" are ten, and "2 spanner 17" two: not bolts with a head of 10 mm. */
function takeCountOfHeads(state: State, value: number): boolean {
  if (!state.first || state.count !== null || !has(peek(state, 1), 'across-flats')) return false;
  const behind = peek(state, 2);
  const bolts = peek(state, 1)?.text.toLowerCase() === 'head' && /s$/i.test(behind?.text ?? '');
  if (!(bolts && has(behind, 'fastener')) && !has(behind, 'num', 'size')) return false;
  state.count = { value, start: peek(state)?.start ?? 0 };
  use(state, 'count');
  if (!has(behind, 'fastener')) use(state, 'drive');
  return true;
}

/** ", 4 off", ", 2": how many, behind the thing. */
function takeOff(state: State, value: number): boolean {
  const next = peek(state, 1);
  if (!state.first || state.count !== null) return false;
  const off = next?.text.toLowerCase() === 'off' && endsHere(peek(state, 2));
  const item = state.current;
  if (item?.kind === 'fasteners' && off && item.count === null) item.count = value;
  else if (item?.kind === 'part' && item.qty === null && (off || (endsHere(next) && /s$/i.test(item.name))))
    item.qty = value;
  else return false;
  use(state, 'count', off ? 2 : 1);
  return true;
}

/** '… screws 1 1/2"': one and a half inches, where the count was said before. */
function takeInches(state: State, value: number): boolean {
  const item = freshFasteners(state);
  const part = as(peek(state, 1), 'size');
  if (!item || item.count === null || !part || part.unit !== 'in' || part.mm >= INCH_MM) return false;
  if (item.lengthMm !== null || state.count !== null || !/[\/½¼¾⅛⅜⅝⅞]/.test(peek(state, 1)?.text ?? ''))
    return false;
  state.awaiting = null;
  setLength(item, Math.round((value * INCH_MM + part.mm) * 1000) / 1000, 'in', null);
  use(state, 'length', 2);
  return true;
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
  if (state.awaiting === 'drive' && item) {
    // "hex 13 x 30": the head, then the length.
    takeAwaited(state, value, 'mm');
    use(state, 'separator');
    setLength(item, second, unit, null);
    use(state, 'length');
  } else if (state.awaiting === 'size' && item) {
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
