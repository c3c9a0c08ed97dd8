import { describeSpec } from '../tally/index.ts';
import { allocate } from './allocation.ts';
import { titleOf, type Situation } from './situation.ts';
import type { PromiseOffer } from './types.ts';

/** Sets that are short while enough alike pieces lie ready for other sets: they could be served first. */
export function offersOf(at: Situation): PromiseOffer[] {
  const { short, have, keyOf, placeOf } = allocate(at);
  return short.flatMap(({ line, lacking }) => {
    const key = keyOf(line);
    if (key === null || line.setId === null) return [];
    const others = [...have]
      .filter(([other, pieces]) => other.setId !== line.setId && keyOf(other) === key && pieces > 0)
      .sort(([a], [b]) => placeOf(b) - placeOf(a));
    const from: string[] = [];
    let left = lacking;
    for (const [other, pieces] of others) {
      if (left <= 0) break;
      from.push(other.setId ?? '');
      left -= pieces;
    }
    if (left > 0 || from.length === 0) return [];
    const spec = at.graph.log.spec.get(line.specId ?? '');
    const name = (setId: string) => titleOf(at.graph, at.graph.stepOfThing(setId)) || 'another step';
    return [
      {
        setId: line.setId,
        qty: lacking,
        fromSetIds: from,
        sentence: `${lacking} × ${spec ? describeSpec(spec) : line.what}: serve ${name(line.setId)} first, out of what lies ready for ${[...new Set(from.map(name))].join(', ')}.`,
      },
    ];
  });
}
