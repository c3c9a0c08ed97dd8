import { as } from './atom.ts';
import { add, emptyFasteners, peek, use, type State } from './state.ts';

/** "2 plugs G 1/4": a plug with a thread is screwed in, so it is counted as fasteners and not joined again. */
export function takeScrewPlug(state: State): void {
  const plug = state.fresh;
  if (plug?.kind !== 'connection' || plug.what !== 'plug' || state.count !== null) return;
  const at = state.items.findIndex(({ item }) => item === plug);
  const start = state.items[at]?.start ?? 0;
  state.items.splice(at, 1);
  const item = emptyFasteners();
  item.name = plug.name;
  item.count = plug.qty;
  item.stow = plug.stow;
  item.conditions = plug.conditions;
  if (plug.happened === 'slackened') item.happened = 'slackened';
  add(state, start, item);
}

/** "union G 1/2": the thread is the union's own, not one of bolts that hold it. */
export function takeUnionThread(state: State): boolean {
  const union = state.fresh;
  const atom = peek(state);
  if (union?.kind !== 'connection' || union.what !== 'union' || state.count !== null || !atom) return false;
  if (as(atom, 'length')) return false;
  union.name = `${union.name} ${atom.text}`;
  use(state, 'connection');
  return true;
}
