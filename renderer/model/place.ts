import type { JobView } from '../../core/contract/views.ts';
import { removal as say } from '../texts/removal.ts';
import { logOf } from './line.ts';

/** How many places of this job's own stand before the usual ones. */
const OWN = 2;

/** Places to choose from in one touch: the job's own ones used last, then the usual ones, always in the same order. */
export function placesOf(view: JobView, at: string): string[] {
  const usual: readonly string[] = say.places;
  const own = [
    ...new Set([
      at,
      ...logOf(view)
        .map((one) => one.place)
        .reverse(),
    ]),
  ].filter((place) => place !== '' && !usual.includes(place));
  return [...own.slice(0, OWN), ...usual];
}
