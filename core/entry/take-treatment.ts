import { has, type Atom } from './atom.ts';
import type { PutOn, Treatment } from './meaning.ts';
import { currentFasteners, describe, peek, use, type State } from './state.ts';
import { endsHere } from './take-fastener.ts';

/** Whether a part, hose or plug is named in this stretch behind here: "greased bearing". */
function partAhead(state: State): boolean {
  for (let i = 1; i < 6; i += 1) {
    const atom = peek(state, i);
    if (has(atom, 'part', 'connection')) return true;
    if (!has(atom, 'word', 'place', 'condition', 'remark', 'treatment', 'head')) return false;
  }
  return false;
}

function ofSet(state: State, what: Treatment): true {
  describe(state, (it) => {
    if (!it.treatments.includes(what)) it.treatments = [...it.treatments, what];
  });
  use(state, 'treatment');
  return true;
}

/**
 * "sealant", "greased": of the bolts or the part before it, else of what comes next; what is put on again on the way
 * back is never lost. False: nothing that is put on ("dry" on a part).
 */
export function takeTreatment(state: State, what: Treatment): boolean {
  const atom = peek(state);
  if (!atom) return false;
  const ahead = state.fresh === null && partAhead(state);
  if (state.count !== null || (currentFasteners(state) && !ahead)) return ofSet(state, what);
  const item = state.current;
  if (what === 'dry') return item === null ? ofSet(state, what) : false;
  // "bearing, sealed" is a kind of bearing, not one with sealant on it.
  if (/^sealed$/i.test(atom.text) && item?.kind === 'part' && /bearings?$/i.test(item.name)) return false;
  const treatment: PutOn = { what, typed: atom.text.replaceAll(/\s+/g, ' ') };
  if ((item?.kind === 'part' || item?.kind === 'connection') && !ahead) {
    const known = item.treatments.some((one) => one.typed.toLowerCase() === treatment.typed.toLowerCase());
    if (!known) item.treatments = [...item.treatments, treatment];
  } else if (item === null || ahead) state.putOn.push({ start: atom.start, treatment });
  else state.items.push({ start: atom.start, item: { kind: 'treatment', treatment } });
  use(state, 'treatment');
  return true;
}

/** "bearing, grease": a fluid elsewhere; behind what it was on, with no amount and not drained, it is put on again. */
export function isPutOn(state: State, atom: Atom): boolean {
  if (!has(atom, 'treatment') || !has(atom, 'fluid') || state.did !== null || state.amount !== null)
    return false;
  const ends = endsHere(peek(state, 1)) && !has(peek(state, 2), 'amount', 'fluid-did', 'fluid-type');
  return ends && state.first && state.current !== null && state.count === null;
}
