import type { Situation } from './situation.ts';
import type { ToolBox } from './tools.ts';

/** Deeds that are done with the tool of the fastener. */
const TURNED: ReadonlySet<string> = new Set(['started', 'tightened', 'came off again']);

/**
 * The tool that was used last, so that an order walked step by step goes on with it; null while nothing is back, or where
 * nobody recorded it. Of several tools on one fastener the first.
 */
export function toolInHand(at: Situation, box: ToolBox): string | null {
  let last: { readonly at: number; readonly tool: string } | null = null;
  for (const { thingId, what, at: when } of at.state.deed) {
    const position = TURNED.has(what) ? at.graph.log.position.get(thingId) : undefined;
    const set = position && at.graph.log.set.get(position.setId);
    if (!set || (last !== null && when < last.at)) continue;
    const [tool] = box.toolsFor(set.id, position.specId ?? set.specId);
    last = { at: when, tool: tool?.tool ?? '' };
  }
  return last === null || last.tool === '' ? null : last.tool;
}

/**
 * The step that was begun last and is not through, with everything it waits for in front of it, in list order; empty
 * where there is none, or something that it waits for is open. Nobody is sent away from a step half done because another
 * order would cost as little.
 */
export function begunFirst(at: Situation): readonly number[] {
  let begun = -1;
  let when = Number.NEGATIVE_INFINITY;
  for (const deed of at.state.deed) {
    const node = deed.at < when ? -1 : at.graph.stepOfThing(deed.thingId);
    if (node < 0) continue;
    when = deed.at;
    begun = at.progress[node]?.done || !at.progress[node]?.touched ? -1 : node;
  }
  if (begun < 0) return [];
  const seen = new Set([begun]);
  const open = [begun];
  for (let node = open.pop(); node !== undefined; node = open.pop())
    for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
      const before = at.into.to[k] as number;
      if (seen.has(before)) continue;
      if (!at.progress[before]?.done) return [];
      seen.add(before);
      open.push(before);
    }
  return [...at.ordered.order].filter((node) => seen.has(node));
}
