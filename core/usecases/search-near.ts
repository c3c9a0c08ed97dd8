import type { NearNames } from '../contract/contract.ts';
import { nearNames } from '../model/near-names.ts';
import { namesIn } from './answers.ts';
import type { Context } from './frame.ts';
import { search } from './search.ts';

const MOST = 5;

/** Where the search over every job looks; held to what `searchTexts` makes. */
const LOOKED_IN =
  'titles and machines, removals, parts, fasteners and threads, bags, connections, fluids, what was made safe or must come out, marks, readings, notes, whom things were sent to, what is to get, looked for or done besides, and what was done';

/** For a search without a hit: names in the workshop that come nearest and are found, and where it looked. */
export function searchNear(context: Context, text: string): NearNames {
  const { workshop } = context;
  const names = workshop.jobs().flatMap((job) => {
    const state = workshop.job(job.id);
    const sentTo = (state?.away ?? []).map((away) => away.toWhom);
    return [...(state ? namesIn(state) : []), ...sentTo, job.title, job.machine];
  });
  const near = nearNames(
    text,
    names.filter((name) => name !== ''),
    MOST,
  );
  return { near: near.filter((name) => search(context, name).length > 0), lookedIn: LOOKED_IN };
}
