import { as } from './atom.ts';
import { TREATMENT_WORD } from './text.ts';
import { add, emptyFasteners, peek, use, type DraftOf, type State } from './state.ts';

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
  item.treatments = plug.treatments.map(({ what }) => what);
  if (plug.happened === 'slackened') item.happened = 'slackened';
  add(state, start, item);
}

/** "key, own place": a key that has a place of its own is followed as a part, not counted as fasteners. */
export function takeKeyAsPart(state: State): DraftOf<'part'> | null {
  const key = state.current;
  if (key?.kind !== 'fasteners' || key.what !== 'key' || key.sizeMm !== null || key.thread !== null)
    return null;
  const at = state.items.findIndex(({ item }) => item === key);
  const start = state.items[at]?.start ?? 0;
  state.items.splice(at, 1);
  const part: DraftOf<'part'> = {
    kind: 'part',
    name: key.name === null ? 'key' : `${key.name} key`,
    look: null,
    happened: key.happened,
    qty: key.count,
    ownPlace: true,
    stamped: null,
    renew: key.renew,
    heldBy: null,
    treatments: key.treatments.flatMap((what) =>
      what === 'dry' ? [] : [{ what, typed: TREATMENT_WORD[what] }],
    ),
    stow: key.stow,
    conditions: key.conditions,
  };
  add(state, start, part);
  return part;
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
