import { has } from './atom.ts';
import { endsHere } from './take-fastener.ts';
import { peek, type Draft, type State } from './state.ts';

type Stowed = Extract<Draft, { kind: 'fasteners' | 'part' | 'connection' }>;

const isStowed = (item: Draft): item is Stowed =>
  item.kind === 'fasteners' || item.kind === 'part' || item.kind === 'connection';

/** Whether a bag or shelf stands behind a comma of its own: "side cover, gasket, shelf 3". */
export function standsApart(state: State): boolean {
  return state.first && has(peek(state, -1), 'hard') && endsHere(peek(state, 1));
}

/**
 * A stow behind its own comma holds for all that came off in the line before it and has none yet. A bag behind bolts
 * holds for bolts only: a sump does not go into their bag, and a wrong place is worse than none.
 */
export function spreadStow(state: State): void {
  const last = state.stowApart;
  if (last === null || last.stow === null || last.stow.label === null) return;
  const { stow } = last;
  const all = state.items.map(({ item }) => item).filter(isStowed);
  const boltsOnly = stow.kind === 'bag' && last.kind === 'fasteners';
  for (const item of all.slice(0, all.indexOf(last))) {
    if (item.stow !== null || item.happened === 'aside' || item.happened === 'slackened') continue;
    if (!boltsOnly || item.kind === 'fasteners') item.stow = stow;
  }
}
