import type { JobState, Row } from '../model/tables.ts';
import { compare } from './job-log.ts';
import { ownerOf } from './nodes.ts';
import { situated } from './weighed.ts';

/** What was done to each removal on the way back. */
export interface Worked {
  /** Removals that are back. */
  readonly back: ReadonlySet<string>;
  /** By removal: deeds on it, its parts, holes and connections, the earliest first. */
  readonly deeds: ReadonlyMap<string, readonly Row<'deed'>[]>;
}

/** One pass over steps and deeds, without the list itself. `now` in UTC ms. */
export function workedOn(state: JobState, now: number): Worked {
  const at = situated(state, now);
  const back = new Set<string>();
  at.graph.nodes.forEach((node, i) => {
    if (node.kind === 'S' && at.progress[i]?.done) back.add(node.thingId);
  });
  const deeds = new Map<string, Row<'deed'>[]>();
  for (const deed of state.deed) {
    const owner = ownerOf(at.graph.log, deed.thingId);
    if (owner === null) continue;
    const list = deeds.get(owner);
    if (list) list.push(deed);
    else deeds.set(owner, [deed]);
  }
  for (const list of deeds.values()) list.sort((a, b) => a.at - b.at || compare(a.id, b.id));
  return { back, deeds };
}
