import { has } from './atom.ts';
import { wording } from './open-item.ts';
import { currentFasteners, pass, peek, use, type State } from './state.ts';
import { endsHere } from './take-fastener.ts';

/** Whether the next words say nothing but where. */
export const allPlaces = (state: State, length: number): boolean =>
  Array.from({ length }, (_, i) => i).every((i) => has(peek(state, i), 'place', 'preposition', 'filler'));

/** Whether the words from here are places themselves: "drive end", "front left". */
export const onlyPlaces = (state: State, from: number, to: number): boolean =>
  to > from &&
  Array.from({ length: to - from }, (_, i) => from + i).every((i) => has(peek(state, i), 'place'));

/** "4 M8 at drive end" says where the removal is; with other bolts in the line it tells these from those by name. */
export function placeOfOnlySet(state: State): void {
  const [where, ...more] = state.whereSets;
  const sets = state.items.filter(({ item }) => item.kind === 'fasteners');
  if (!where || more.length > 0 || sets.length > 1 || where.item.name === null) return;
  state.items.push({ start: where.start, item: { kind: 'place', place: where.item.name } });
  where.item.name = null;
}

/** "front left": with a part or hose before it that has no such word yet it goes to its name, else it is the place. */
export function takePlace(state: State, length: number): void {
  const words = wording(state, 0, length);
  const start = peek(state)?.start ?? 0;
  const item = state.current;
  if (
    state.fresh === null &&
    endsHere(peek(state, length)) &&
    item &&
    (item.kind === 'part' || item.kind === 'connection')
  ) {
    item.name = `${words} ${item.name}`;
    use(state, 'place', length);
    return;
  }
  const fasteners = state.count === null ? null : currentFasteners(state);
  if (fasteners && state.fresh === null && !endsHere(peek(state, length))) return pass(state);
  const behind = peek(state, length);
  // "left 4 T25": the place first, then what came off there.
  if (!endsHere(behind) && !(state.first && state.count === null && has(behind, 'num', 'number', 'thread'))) {
    for (let i = 0; i < length; i += 1) pass(state);
    return;
  }
  pushPlace(state, start, words);
  use(state, 'place', length);
}

/** Several place words behind each other are one place: "front, left, under". */
function pushPlace(state: State, start: number, words: string): void {
  const last = state.items.at(-1)?.item;
  if (last?.kind === 'place' && state.fresh === null) last.place = `${last.place}, ${words}`;
  else state.items.push({ start, item: { kind: 'place', place: words } });
}

const PLACE_WORDS = new Set(['under', 'behind', 'below', 'above', 'near', 'beside', 'between']);

/** ", under": a preposition that stands alone says where. */
export function takePlaceWord(state: State): boolean {
  const atom = peek(state);
  if (!atom || !state.first || !endsHere(peek(state, 1)) || !PLACE_WORDS.has(atom.text.toLowerCase()))
    return false;
  pushPlace(state, atom.start, atom.text);
  use(state, 'place');
  return true;
}
