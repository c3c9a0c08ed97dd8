import type { JobView } from '../../core/contract/views.ts';
import { removalWords, thingWords } from '../../core/model/thing-words.ts';
import { off as say } from '../texts/off.ts';
import { day } from './time.ts';

/** Something new that came in and stands on no line of the list to get any more. */
export interface Arrival {
  readonly id: string;
  readonly what: string;
  readonly quantity: number;
  /** "for Gear cover, came 26 November" */
  readonly about: string;
}

/**
 * What came in, the newest first. What was noted as here keeps its own line in the list; of the rest the books alone
 * would know, and a wrong touch on "here" would leave no trace to see.
 */
export function arrivalsOf(view: JobView, now: number): Arrival[] {
  const { state } = view;
  const noted = new Set(state.want.filter((want) => want.state === 'here').map((want) => want.thingId));
  return state.move
    .filter((move) => move.src === 'supply' && move.cause === 'received')
    .filter((move) => !noted.has(move.partId ?? move.homeSetId))
    .sort((a, b) => b.at - a.at)
    .map((move) => {
      const set = state.fset.find((row) => row.id === move.homeSetId);
      const part = state.part.find((row) => row.id === move.partId);
      const what = part ? thingWords(state, part.id) : (view.specNames[move.specId ?? ''] ?? set?.name ?? '');
      const title = removalWords(state, (part ?? set)?.removalId ?? null);
      const words = [title === '' ? '' : say.getFor(title), say.cameOn(day(move.at, now))];
      return { id: move.id, what, quantity: move.qty, about: words.filter(Boolean).join(', ') };
    });
}
