import { as, has, type Atom, type SenseName } from './atom.ts';
import { nearWord } from './near.ts';
import { openConnection, openFluid, openPart, openTemporary, wording, type Run } from './open-item.ts';
import { currentFasteners, pass, peek, use, type DraftOf, type State } from './state.ts';
import { endsHere, takeKind } from './take-fastener.ts';
import { allPlaces, onlyPlaces, takePlace } from './take-place.ts';

const NOUNS: readonly SenseName[] = ['part', 'connection', 'fluid', 'temporary', 'fastener'];
const NAMES: readonly SenseName[] = [...NOUNS, 'word', 'place', 'quoted'];
/** Words that only belong to a name when a noun follows: "flange gasket", "old seal", "cracked cover". */
const BEFORE_NOUN: readonly SenseName[] = [
  'remark',
  'head',
  'drive-style',
  'across-flats',
  'condition',
  'stack',
  'number',
];

const isNounAt = (state: State, offset: number): boolean => has(peek(state, offset), ...NOUNS);

/** Whether the word at `offset` leads on to a noun without anything in between that is no name. */
function leadsToNoun(state: State, offset: number, fasteners: boolean): boolean {
  for (let i = offset + 1; i < offset + 5; i += 1) {
    if (isNounAt(state, i)) return fasteners || !has(peek(state, i), 'fastener');
    if (!has(peek(state, i), 'word', 'place', 'remark')) return false;
  }
  return false;
}

function belongs(state: State, offset: number): boolean {
  const atom = peek(state, offset);
  if (has(atom, ...NAMES)) return true;
  // "10 head bolts": the bolts of the head; "13 mm head" was read before it comes to this.
  if (atom?.text.toLowerCase() === 'head' && has(peek(state, offset + 1), 'fastener'))
    return currentFasteners(state) === null || state.fresh === null;
  if (has(atom, 'head', 'drive-style', 'across-flats')) return leadsToNoun(state, offset, false);
  if (has(atom, ...BEFORE_NOUN)) return leadsToNoun(state, offset, true);
  // "sealed bearing" is a kind of bearing, not one with sealant on it.
  if (has(atom, 'treatment') && /^(?:sealed|dry|silicone)$/i.test(atom?.text ?? ''))
    return leadsToNoun(state, offset, false);
  // "caps 1 to 5"
  if (
    has(atom, 'num') &&
    peek(state, offset - 1)?.text === 'to' &&
    has(peek(state, offset - 2), 'num') &&
    offset > 2
  )
    return true;
  if (offset > 0 && isDimension(state, offset)) return true;
  // "cap 3", "bearing 2": a number right behind a part, with nothing it could count.
  const after = peek(state, offset + 1);
  return (
    offset > 0 &&
    has(atom, 'num') &&
    has(peek(state, offset - 1), 'part') &&
    (endsHere(after) || has(after, 'preposition', 'happened'))
  );
}

/** "O-ring 45x3", "seal 35x52x7": numbers with crosses right behind a part. */
function isDimension(state: State, offset: number): boolean {
  if (!has(peek(state, offset), 'num', 'times')) return false;
  let from = offset;
  while (has(peek(state, from - 1), 'num', 'times')) from -= 1;
  return (
    has(peek(state, from - 1), 'part') &&
    has(peek(state, from), 'num') &&
    has(peek(state, from + 1), 'times') &&
    has(peek(state, from + 2), 'num')
  );
}

function readRun(state: State): Run {
  let length = 0;
  let noun: number | null = null;
  let preposition: number | null = null;
  for (;;) {
    const atom = peek(state, length);
    if (belongs(state, length)) {
      if (preposition === null && has(atom, ...NOUNS)) noun = length;
      length += 1;
    } else if (length > 0 && has(atom, 'preposition', 'filler') && leads(state, length)) {
      if (has(atom, 'preposition')) preposition ??= length;
      length += 1;
    } else break;
  }
  return { length, noun, preposition };
}

/** Whether a preposition or article is followed by a name. */
function leads(state: State, offset: number): boolean {
  let next = offset + 1;
  while (has(peek(state, next), 'preposition', 'filler')) next += 1;
  return belongs(state, next);
}

/** Reads a run of words: a part, a connection, a fluid, a thing put in, fasteners with a name, a place, or nothing known. */
export function takeName(state: State): void {
  const run = readRun(state);
  if (run.length === 0) return pass(state);
  const front = run.preposition ?? run.length;
  if (run.noun === null) return takeNameless(state, run, front);
  // Words behind the noun belong to it when they say where; others are not understood, unless a verb takes them all.
  let end = run.length;
  if (state.verb === null) {
    end = run.noun + 1;
    while (end < front && (has(peek(state, end), 'place', 'quoted', 'num', 'times') || isShare(state, end)))
      end += 1;
    if (end === front) end = run.length;
  }
  takeNoun(state, { ...run, length: end }, Math.min(front, end));
}

/** "coupling half", "bearing pair": what share of the thing came off belongs to its name. */
const isShare = (state: State, offset: number): boolean =>
  /^(?:half|halves|pairs?|assembly|assemblies)$/i.test(peek(state, offset)?.text ?? '');

function takeNameless(state: State, run: Run, front: number): void {
  if (allPlaces(state, run.length)) return takePlace(state, run.length);
  const readable = Array.from({ length: front }, (_, i) => peek(state, i)?.text ?? '').some((text) =>
    /\p{L}{2}/u.test(text),
  );
  const verb = state.verb !== null || (state.fresh === null && has(peek(state, run.length), 'happened'));
  const strange = Array.from({ length: front }, (_, i) => peek(state, i)).some(
    (atom) => has(atom, 'word') && nearWord(atom?.text ?? '') !== null,
  );
  // "upper half of the casing", "2 halves"
  const share =
    isShare(state, front - 1) &&
    (state.count !== null || (run.preposition !== null && run.length > front + 1));
  if (
    verb ||
    share ||
    (state.count !== null && readable && !strange && has(peek(state, front - 1), 'word'))
  ) {
    openPart(state, run, front, null);
    return;
  }
  if (!strange && run.length === 1 && takeWhichOne(state)) return;
  if (strange && state.current !== null) letCountGo(state);
  for (let i = 0; i < run.length; i += 1) pass(state);
}

/** "hose, suction": a word of its own behind a hose, pipe or plug says which of them; one that is near a known word does not. */
function takeWhichOne(state: State): boolean {
  const item = state.current;
  const atom = peek(state);
  if (item?.kind !== 'connection' || state.fresh !== null || state.count !== null) return false;
  if (!has(atom, 'word') || !/^\p{L}{3,}$/u.test(atom?.text ?? '') || !endsHere(peek(state, 1))) return false;
  item.name = `${atom?.text ?? ''} ${item.name}`;
  use(state, 'connection');
  return true;
}

/** "4 M8, 1 streched": how many of what nobody knows, so the number stays with the word. */
function letCountGo(state: State): void {
  const start = state.count?.start;
  const atom = state.sig.find((one) => one.start === start);
  if (atom) atom.kind = null;
  state.count = null;
}

function takeNoun(state: State, run: Run, front: number): void {
  const atom = peek(state, run.noun ?? 0);
  const fastener = as(atom, 'fastener');
  const part = as(atom, 'part');
  const connection = as(atom, 'connection');
  const temporary = as(atom, 'temporary');
  if (part && namesThePlug(state, run)) return;
  const fed = as(peek(state, 0), 'connection');
  if (fastener) takeNamedFasteners(state, run, front);
  else if (part && fed && has(peek(state, 1), ...NAMES) && isPlugOf(state, run, fed.what))
    openConnection(state, run, front, fed.what);
  else if (connection && !part) openConnection(state, run, front, connection.what);
  else if (part) openPart(state, run, front, part.look);
  else if (temporary) openTemporary(state, run, front);
  else openFluid(state, run);
}

/** What a plug feeds: "plug throttle sensor" is the plug of the sensor, "plug cover" is a cover. */
const FED =
  /(?:sensor|motor|switch|solenoid|valve|injector|coil|relay|fan|pump|starter|alternator|generator|dynamo|lamp|light|headlamp|gauge|actuator|battery|control box|control unit|display|element|encoder|resolver|throttle body)s?$/i;

function isPlugOf(state: State, run: Run, what: DraftOf<'connection'>['what']): boolean {
  return (what === 'plug' || what === 'connector') && FED.test(wording(state, 1, (run.noun ?? 0) + 1));
}

/** "plug, pressure switch": right behind a bare plug, what it feeds is its name and did not come off. */
function namesThePlug(state: State, run: Run): boolean {
  const plug = state.current;
  if (plug?.kind !== 'connection' || (plug.what !== 'plug' && plug.what !== 'connector')) return false;
  if (
    !/^(?:electrical )?(?:plug|connector)$/i.test(plug.name) ||
    state.fresh !== null ||
    state.count !== null
  )
    return false;
  const words = wording(state, 0, run.length);
  if (state.verb !== null || !endsHere(peek(state, run.length)) || !FED.test(words)) return false;
  plug.name = `${words} ${plug.name}`;
  use(state, 'name', run.length);
  return true;
}

/** "flange, tray 5": a head only beside bolts; alone it is a part. */
export function takeLoneFlange(state: State, atom: Atom): boolean {
  if (!/^flanges?$/i.test(atom.text) || !state.first || state.count !== null) return false;
  const next = peek(state, 1);
  if (currentFasteners(state) !== null || state.later.length > 0) return false;
  if (!endsHere(next) && !has(next, 'stow', 'happened', 'condition', 'missing')) return false;
  openPart(state, { length: 1, noun: 0, preposition: null }, 1, null);
  return true;
}

/** "hose off at the caliper end": where it was undone belongs to its name, and nothing more came off. */
export function takeWhereItWas(state: State): boolean {
  const item = state.fresh;
  if ((item?.kind !== 'part' && item?.kind !== 'connection') || !has(peek(state, -1), 'happened'))
    return false;
  if (item.happened === 'aside' || !leads(state, 0)) return false;
  const length = whereLength(state);
  item.name = `${item.name} ${wording(state, 0, length)}`;
  use(state, 'name', length);
  return true;
}

function whereLength(state: State): number {
  let length = 1;
  while (
    belongs(state, length) ||
    (has(peek(state, length), 'preposition', 'filler') && leads(state, length))
  )
    length += 1;
  return length;
}

function takeNamedFasteners(state: State, run: Run, front: number): void {
  const noun = run.noun ?? 0;
  const sense = as(peek(state, noun), 'fastener');
  if (!sense) return pass(state);
  const connection = state.current?.kind === 'connection' && sense.what === 'clamp' && state.count === null;
  if (
    connection &&
    (state.size !== null || has(peek(state, noun + 1), 'size', 'num', 'length-word', 'clamp-word'))
  ) {
    return takeClampSize(state, noun);
  }
  if (sense.what === 'pin' && takePins(state, noun)) return;
  const name = noun > 0 ? wording(state, 0, noun) : null;
  // takeKind opens or continues the set; the words before the noun are stepped over first.
  const start = peek(state)?.start ?? 0;
  if (state.count === null && noun > 0) state.fresh = null;
  const before = state.current;
  for (let i = 0; i < noun; i += 1) use(state, 'name');
  const item =
    noun > 0 && state.count === null ? newSet(state, start, sense) : takeKind(state, sense.what, sense.head);
  if (name !== null && item.name === null) item.name = name;
  if (before === item && name !== null) item.name = name;
  const behind = wording(state, 0, front - noun - 1);
  if (front > noun + 1 && behind !== '') use(state, 'name', front - noun - 1);
  takeTail(state, item, run.length - front);
}

/** "plug, 3 pin": the ways of a plug, not fasteners. */
function takePins(state: State, noun: number): boolean {
  const plug = state.current;
  if (noun > 0 || plug?.kind !== 'connection' || (plug.what !== 'plug' && plug.what !== 'connector'))
    return false;
  if (state.count === null || !endsHere(peek(state, 1))) return false;
  plug.pins = state.count.value;
  state.count = null;
  use(state, 'connection');
  return true;
}

function newSet(
  state: State,
  start: number,
  sense: { what: DraftOf<'fasteners'>['what']; head: DraftOf<'fasteners'>['head'] },
): DraftOf<'fasteners'> {
  state.current = null;
  state.count = { value: 0, start };
  const item = takeKind(state, sense.what, sense.head);
  item.count = null;
  return item;
}

/** "… from the cover": what the fasteners hold. */
function takeTail(state: State, item: DraftOf<'fasteners'>, length: number): void {
  if (length <= 0) return;
  let from = 0;
  while (from < length && has(peek(state, from), 'preposition', 'filler')) from += 1;
  if (item.name !== null) {
    for (let i = 0; i < length; i += 1) pass(state);
    return;
  }
  const words = wording(state, from, length);
  if (onlyPlaces(state, from, length)) state.whereSets.push({ item, start: peek(state, from)?.start ?? 0 });
  item.name = words;
  use(state, 'name', length);
}

/** "on bracket", "for the cover" behind a set whose kind was not named: "4 M8x25 for the cover". */
export function takeWhatItHolds(state: State): boolean {
  const item = currentFasteners(state);
  if (!item || item !== state.fresh || state.count !== null || item.name !== null || !leads(state, 0))
    return false;
  takeTail(state, item, whereLength(state));
  return true;
}

function takeClampSize(state: State, noun: number): void {
  const item = state.current;
  if (item?.kind !== 'connection') return pass(state);
  use(state, 'clamp', noun + 1);
  if (state.size !== null) {
    item.clampMm = state.size.mm;
    state.size = null;
    return;
  }
  while (has(peek(state), 'length-word', 'clamp-word')) use(state, 'clamp');
  state.awaiting = 'clamp';
}

/** Whether words at this place can name something. */
export function startsName(state: State): boolean {
  return belongs(state, 0);
}
