import { as, has, type Atom } from './atom.ts';
import type { Condition, ConditionKind, Happened, Stow } from './meaning.ts';
import { currentFasteners, pass, peek, use, type Draft, type State } from './state.ts';
import { standsApart } from './spread-stow.ts';
import { endsHere } from './take-fastener.ts';

type Describable = Extract<Draft, { conditions: readonly Condition[] }>;

function describable(item: Draft | null): Describable | null {
  return item !== null && 'conditions' in item ? item : null;
}

/** "one stripped", "hole 3 snapped", "cracked cover", "milky oil". */
export function takeCondition(state: State, what: ConditionKind): void {
  const qty = state.count?.value ?? null;
  const start = state.count?.start ?? peek(state)?.start ?? 0;
  const among = isOneOfThem(state);
  if (!among && beforeNoun(state)) {
    state.adjectives = [...state.adjectives, { what, qty: null, holes: state.holes ?? [] }];
    state.holes = null;
    use(state, 'condition');
    return;
  }
  const condition: Condition = { what, qty, holes: state.holes ?? [] };
  state.count = null;
  state.holes = null;
  state.picked = null;
  const item = describable(state.current);
  if (item) item.conditions = [...item.conditions, condition];
  else state.items.push({ start, item: { kind: 'condition', condition } });
  use(state, 'condition', among ? 2 : 1);
  if (among && has(peek(state), 'as-found')) use(state, 'condition');
  lateHoles(state, item, condition);
}

/** "4 M8x25, one wrong bolt": one of the four, not a fifth. */
function isOneOfThem(state: State): boolean {
  const item = currentFasteners(state);
  const noun = as(peek(state, 1), 'fastener');
  const behind = peek(state, 2);
  if (!item || item === state.fresh || !noun || state.count === null) return false;
  if (item.count === null || state.count.value >= item.count) return false;
  const same = item.what === 'unspecified' || noun.what === 'unspecified' || item.what === noun.what;
  return same && (endsHere(behind) || has(behind, 'as-found'));
}

/** "stripped in hole 3": the hole stands behind. */
function lateHoles(state: State, item: Describable | null, condition: Condition): void {
  let offset = 0;
  while (has(peek(state, offset), 'preposition', 'filler')) offset += 1;
  const found = peek(state, offset)?.senses.find((sense) => sense.s === 'holes');
  if (!found || condition.holes.length > 0) return;
  const after = peek(state, offset + 1);
  if (!endsHere(after) && !has(after, 'as-found')) return;
  const full = { ...condition, holes: found.holes };
  if (item) item.conditions = [...item.conditions.slice(0, -1), full];
  else {
    const last = state.items[state.items.length - 1]?.item;
    if (last?.kind === 'condition') last.condition = full;
  }
  use(state, 'condition', offset + 1);
}

/** Whether a noun or a fastener follows in this stretch, so that the condition is an adjective. */
function beforeNoun(state: State): boolean {
  if (state.fresh !== null) return false;
  for (let i = 1; i < 6; i += 1) {
    const atom = peek(state, i);
    if (has(atom, 'part', 'connection', 'fluid', 'fastener', 'thread')) return true;
    if (!has(atom, 'word', 'place', 'condition', 'remark', 'treatment', 'head')) return false;
  }
  return false;
}

export function takeHoles(state: State, holes: readonly number[]): void {
  const next = nextPlain(state, 1);
  if (has(next, 'condition', 'missing')) {
    state.holes = holes;
    use(state, has(next, 'missing') ? 'missing' : 'condition');
    return;
  }
  if (currentFasteners(state) && state.count === null && has(next, 'num', 'size')) {
    // "hole 3 is 40 long"
    state.holes = holes;
    state.picked = 'of them';
    use(state, 'length');
    return;
  }
  pass(state);
}

/** The next atom that is no filler. */
function nextPlain(state: State, from: number): Atom | undefined {
  let offset = from;
  while (has(peek(state, offset), 'filler')) offset += 1;
  return peek(state, offset);
}

/** "2 missing as found", "2 of them missing", "hole 3 empty", "4 M8 missing". */
export function takeMissing(state: State): void {
  const item = currentFasteners(state);
  const other = describable(state.current);
  if (!item || state.holes !== null || state.count !== null || item !== state.fresh) {
    if (!item && other && state.count === null && state.holes === null) {
      other.conditions = [...other.conditions, { what: 'missing', qty: null, holes: [] }];
      use(state, 'missing');
    } else takeMissingCount(state);
  } else {
    // "4 M8 missing": all of them.
    if (state.singular.includes(item)) item.count ??= 1;
    item.missingAsFound = item.count;
    item.missingAre = 'among';
    use(state, 'missing');
  }
  while (has(peek(state), 'as-found', 'filler', 'missing')) use(state, 'missing');
}

function takeMissingCount(state: State): void {
  const holes = state.holes ?? [];
  const qty = state.count?.value ?? (holes.length > 0 ? holes.length : null);
  const among = state.picked === 'of them' || holes.length > 0;
  const besides = state.more;
  state.count = null;
  state.holes = null;
  state.picked = null;
  state.more = false;
  if (qty === null) return pass(state);
  const apply = (it: Extract<Draft, { kind: 'fasteners' }>): void => {
    it.missingAsFound = (it.missingAsFound ?? 0) + qty;
    it.missingHoles = [...it.missingHoles, ...holes];
    it.missingAre = among ? 'among' : besides ? 'besides' : it.missingAre;
  };
  const item = currentFasteners(state);
  if (item) apply(item);
  else state.later.push(apply);
  use(state, 'missing');
}

/** "of them", "the rest", "more": the count picks from the set before. */
export function takeOf(state: State, atom: Atom): void {
  const next = nextPlain(state, 1);
  if (has(atom, 'more')) {
    if (!has(next, 'missing')) {
      use(state, 'filler');
      return;
    }
    state.more = true;
    use(state, 'missing');
    return;
  }
  const rest = has(atom, 'rest');
  const told = has(next, 'missing', 'condition') && state.count !== null;
  if ((!currentFasteners(state) && !told) || (!rest && state.count === null)) return pass(state);
  const kind = has(next, 'missing') ? 'missing' : has(next, 'condition') ? 'condition' : 'length';
  if (kind === 'length' && !has(next, 'num', 'size')) {
    // "2 of them" and nothing to say about them.
    if (!rest || state.count !== null) state.count = null;
    return pass(state);
  }
  if (kind === 'condition' && rest) {
    use(state, 'filler');
    return;
  }
  state.picked = rest ? 'rest' : 'of them';
  use(state, kind);
}

export function takeStow(state: State, stow: Stow): void {
  const item = state.current;
  const open = state.count !== null;
  if (!open && item && 'stow' in item && item.kind !== 'stow') {
    if (item.stow !== null) return pass(state);
    item.stow = stow;
    if (standsApart(state)) state.stowApart = item;
  } else if (state.stow === null) state.stow = stow;
  else return pass(state);
  use(state, 'stow');
}

/** "slackened …" before its thing, "… off" behind it, ", slackened" on its own. */
export function takeHappened(state: State, what: Happened): void {
  const item = state.fresh ?? (state.first && endsHere(peek(state, 1)) ? state.current : null);
  if (item === null || state.count !== null) {
    if (endsHere(peek(state, 1)) && state.count === null) return pass(state);
    state.verb = what;
    use(state, 'happened');
    state.first = true;
    return;
  }
  if (item.kind === 'part' || item.kind === 'connection') item.happened = what;
  else if (item.kind === 'fasteners') {
    if (what === 'aside' || what === 'opened') return pass(state);
    item.happened = what === 'slackened' ? 'slackened' : 'off';
  } else if (what !== 'off') return pass(state);
  // How it came off says that it cannot go back as it was.
  const atom = peek(state);
  if (atom && /^(?:drilled|cut)/i.test(atom.text))
    state.items.push({ start: atom.start, item: { kind: 'note', text: atom.text } });
  use(state, 'happened');
}

type Holdable = Extract<Draft, { heldBy: string | null }>;

const holdable = (item: Draft | null): item is Holdable =>
  item?.kind === 'part' || item?.kind === 'connection';

/** What "hung on wire" is said of: the thing at hand, else, behind a comma, the last one before its bolts. */
function heldThing(state: State): Holdable | null {
  if (holdable(state.current)) return state.current;
  if (!state.first) return null;
  return state.items.map(({ item }) => item).findLast(holdable) ?? null;
}

/**
 * "hung on wire": what holds a thing that was moved aside, up to the next comma. What it hangs on never came off, so
 * without a thing that hangs the words are a note.
 */
export function takeHeld(state: State): void {
  let length = 0;
  while (peek(state, length) !== undefined && !has(peek(state, length), 'hard')) length += 1;
  const item = heldThing(state);
  if (item === null || item.heldBy !== null) {
    const words = Array.from({ length }, (_, i) => peek(state, i));
    const holds = words.some((word) => /^(?:on|by|from|with|to)$/i.test(word?.text.trim() ?? ''));
    const stowed = words.some((word) => has(word, 'stow'));
    for (let i = 0; i < (holds && !stowed ? length : 1); i += 1) pass(state);
    return;
  }
  const second = peek(state, 1);
  const quoted = peek(state, 2)?.senses.find((sense) => sense.s === 'quoted');
  if (has(second, 'colon') && quoted) {
    item.heldBy = quoted.text;
    use(state, 'held-by', 3);
    return;
  }
  const from = peek(state)?.start ?? 0;
  const to = peek(state, length - 1)?.end ?? from;
  item.heldBy = state.text.slice(from, to);
  use(state, 'held-by', length);
}
