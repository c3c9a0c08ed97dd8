import type { JobState } from '../model/tables.ts';
import { type LookAlike, lookAlikes } from '../tally/index.ts';
import type { Decision } from './frame.ts';

/** The job as it will stand once this decision is written: as far as look-alikes are looked for in it. */
function after({ state, writer }: Decision): JobState {
  const all = () => true;
  return {
    ...state,
    removal: writer.list('removal', all, state.removal),
    fset: writer.list('fset', all, state.fset),
    spec: writer.list('spec', all, state.spec),
    position: writer.list('position', all, state.position),
    stackItem: writer.list('stackItem', all, state.stackItem),
    part: writer.list('part', all, state.part),
    move: writer.list('move', all, state.move),
  };
}

const keyOf = (pair: LookAlike): string => [pair.stowId ?? '', pair.removalId ?? '', pair.sentence].join('|');

/**
 * What lies or goes together since this decision and is taken for each other by hand: said while the pieces are still
 * in that hand. One sentence for each difference, with where and what helps; "" where nothing new is alike.
 */
export function newlyAlike(decision: Decision): string {
  const { state, writer } = decision;
  const known = new Set(lookAlikes(state).map(keyOf));
  const fresh = lookAlikes(after(decision)).filter((pair) => !known.has(keyOf(pair)));
  const said = new Set<string>();
  const sentences: string[] = [];
  for (const pair of fresh) {
    // What lies in one bag and belongs to one joint is said of the bag, where it can still be parted.
    if (said.has(pair.sentence)) continue;
    said.add(pair.sentence);
    const stow = pair.stowId === null ? null : writer.get('stow', pair.stowId);
    const where = stow ? `in ${stow.kind} ${stow.label}` : 'in this removal';
    sentences.push(
      `Look-alikes ${where}: ${pair.sentence} Give each its own bag, or label the pieces by hole.`,
    );
  }
  return sentences.join(' ');
}
