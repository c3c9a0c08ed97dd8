import { as, has, type Atom } from './atom.ts';
import { takeNumber } from './take-count.ts';
import { sizeSuggestion, takeSize } from './take-size.ts';
import {
  takeCondition,
  takeHappened,
  takeHeld,
  takeHoles,
  takeMissing,
  takeOf,
  takeStow,
} from './take-state.ts';
import { takeDetail } from './take-detail.ts';
import { startsName, takeLoneFlange, takeName, takeWhatItHolds, takeWhereItWas } from './take-name.ts';
import { placeOfOnlySet, takePlaceWord } from './take-place.ts';
import { isPutOn } from './take-treatment.ts';
import { spreadStow } from './spread-stow.ts';
import {
  emptyFasteners,
  openFasteners,
  pass,
  peek,
  startState,
  takeWaiting,
  use,
  type State,
} from './state.ts';
import {
  setLength,
  takeDrive,
  takeDriveStyle,
  takeHead,
  takeStackWord,
  takeThread,
  tryStack,
} from './take-fastener.ts';
import { describe, type Draft } from './state.ts';

/** Ends a stretch: a count that found nothing to count is a count of fasteners; what waited for a noun is let go. */
function closeStretch(state: State): void {
  if (state.count !== null) openFasteners(state);
  state.fresh = null;
  state.first = true;
  state.plus = false;
  state.awaiting = null;
  state.picked = null;
  state.more = false;
  state.holes = null;
  state.size = null;
  state.adjectives = [];
  if (!state.verbForAll) state.verb = null;
}

function takeSeparator(state: State, atom: Atom): boolean {
  if (has(atom, 'hard')) {
    if (/[;\n]/.test(atom.text)) state.verbForAll = false;
    closeStretch(state);
    use(state, 'separator');
    state.first = true;
    return true;
  }
  if (has(atom, 'plus', 'and')) {
    closeStretch(state);
    use(state, has(atom, 'plus') ? 'separator' : 'filler');
    state.first = true;
    state.plus = true;
    return true;
  }
  if (has(atom, 'with')) {
    const keep = state.plus;
    use(state, 'filler');
    state.plus = true;
    if (tryStack(state)) return true;
    state.plus = keep;
    return true;
  }
  return false;
}

/** Values that say by themselves what they are. */
function takeValue(state: State, atom: Atom): boolean {
  const thread = as(atom, 'thread');
  const length = as(atom, 'length');
  const size = as(atom, 'size');
  const number = as(atom, 'num');
  const item = as(atom, 'item');
  if (item) {
    const draft: Draft = { ...item.item };
    state.items.push({ start: atom.start, item: draft });
    if (draft.kind === 'temporary') state.current = draft;
    use(state, item.kind);
  } else if (thread) takeThread(state, thread.thread);
  else if (length) {
    describe(state, (it) => setLength(it, length.mm, length.unit, null));
    use(state, 'length');
  } else if (size) {
    if (!takeSize(state, size.mm, size.unit, false)) pass(state, sizeSuggestion(state, size.mm, size.unit));
  } else if (number) takeNumber(state, number.value, number.whole);
  else return false;
  return true;
}

/** Words that describe fasteners, conditions, bags, what happened. */
function takeDescription(state: State, atom: Atom): boolean {
  const drive = as(atom, 'drive');
  const style = as(atom, 'drive-style');
  const head = as(atom, 'head');
  const condition = as(atom, 'condition');
  const holes = as(atom, 'holes');
  const stow = as(atom, 'stow');
  const happened = as(atom, 'happened');
  if (drive) takeDrive(state, drive.drive);
  else if (style) takeDriveStyle(state, style.style);
  else if (head) takeHead(state, head.head);
  else if (condition) takeCondition(state, condition.what);
  else if (holes) takeHoles(state, holes.holes);
  else if (stow) takeStow(state, stow.stow);
  else if (happened) takeHappened(state, happened.what);
  else if (has(atom, 'missing')) takeMissing(state);
  else if (has(atom, 'of-them', 'rest', 'more')) takeOf(state, atom);
  else if (has(atom, 'held')) takeHeld(state);
  else if (has(atom, 'stack-word')) takeStackWord(state);
  else return false;
  return true;
}

function step(state: State, atom: Atom): void {
  if (takeSeparator(state, atom)) return;
  if (state.first && tryStack(state)) return;
  const word = as(atom, 'number');
  if (word) return takeNumber(state, word.value, true);
  if (takeLoneFlange(state, atom)) return;
  if (startsName(state) && !isPutOn(state, atom) && !nameMustWait(state, atom)) return takeName(state);
  if (takeValue(state, atom) || takeDescription(state, atom) || takeDetail(state, atom)) return;
  if (has(atom, 'preposition')) {
    if (!takeWhereItWas(state) && !takeWhatItHolds(state) && !takePlaceWord(state)) use(state, 'filler');
    return;
  }
  // "head rounded", "thread stripped"
  if (has(atom, 'across-flats') && has(peek(state, 1), 'condition')) return use(state, 'condition');
  if (takeArticle(state, atom)) return;
  if (has(atom, 'colon', 'filler', 'times', 'as-found', 'each', 'clamp-word')) {
    const first = state.first;
    if (has(atom, 'colon') && state.verb !== null) state.verbForAll = true;
    use(state, has(atom, 'colon', 'times') ? 'separator' : 'filler');
    // An article or colon does not use up the beginning of a stretch.
    if (!has(atom, 'times')) state.first = first;
    return;
  }
  pass(state);
}

/** "a bolt" is one bolt. */
function takeArticle(state: State, atom: Atom): boolean {
  if (!/^an?$/i.test(atom.text) || state.count !== null) return false;
  for (let i = 1; i < 5; i += 1) {
    const next = peek(state, i);
    if (has(next, 'fastener')) {
      if (next?.text.toLowerCase().endsWith('s') === true) return false;
      state.count = { value: 1, start: atom.start };
      use(state, 'count');
      return true;
    }
    if (!has(next, 'thread', 'length', 'head', 'drive', 'drive-style', 'size', 'word', 'place')) return false;
  }
  return false;
}

/** A condition before a noun ("cracked cover") is a condition, not a part of the name; so is "head" behind a size. */
function nameMustWait(state: State, atom: Atom): boolean {
  if (has(atom, 'condition')) return true;
  // "10-24 pan PH2": the head of the screws, not a pan.
  if (has(atom, 'head') && has(atom, 'part') && !has(peek(state, 1), 'part', 'word', 'connection'))
    return state.fresh?.kind === 'fasteners' || has(peek(state, 1), 'drive', 'drive-style');
  if (has(atom, 'across-flats') && state.fresh?.kind === 'fasteners') return true;
  if (has(atom, 'quoted') && !has(peek(state, 1), 'word', 'part', 'fastener'))
    return state.verb === null && state.count === null;
  return false;
}

/** What was said before any item: a bag is an item of its own, everything else makes a set of unknown fasteners. */
function closeLine(state: State): void {
  closeStretch(state);
  if (state.later.length > 0) {
    const item = emptyFasteners();
    for (const apply of state.later.splice(0)) apply(item);
    takeWaiting(state, item);
    item.stow = state.stow;
    state.stow = null;
    state.items.push({ start: 0, item });
  }
  for (const { start, treatment } of state.putOn.splice(0))
    state.items.push({ start, item: { kind: 'treatment', treatment } });
  for (const item of state.singular) item.count ??= 1;
  spreadStow(state);
  placeOfOnlySet(state);
  if (state.stow !== null) state.items.push({ start: 0, item: { kind: 'stow', stow: state.stow } });
  if (state.amount !== null || state.did !== null) {
    const { amount, did } = state;
    const item: Draft = {
      kind: 'fluid',
      name: '',
      did,
      amountMl: amount?.ml ?? null,
      amountTyped: amount?.typed ?? null,
      type: null,
      conditions: [],
    };
    state.items.push({ start: 0, item });
  }
}

/** Walks over the atoms of a line once and puts items together; every atom ends with a kind or stays not understood. */
export function assemble(text: string, atoms: readonly Atom[]): State {
  const state = startState(
    text,
    atoms.filter((atom) => !has(atom, 'space')),
  );
  for (const atom of atoms) if (has(atom, 'space')) atom.kind = 'space';
  for (let atom = peek(state); atom !== undefined; atom = peek(state)) {
    const before = state.at;
    step(state, atom);
    // A step that used nothing would stand still for ever: such an atom is not understood.
    if (state.at === before) pass(state);
  }
  closeLine(state);
  return state;
}
