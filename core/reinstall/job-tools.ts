import type { JobState } from '../model/tables.ts';
import { begunFirst, toolInHand } from './in-hand.ts';
import { isTight } from './standing.ts';
import type { Situation } from './situation.ts';
import { NONE } from './tool-exact.ts';
import { changesOf, fewestChanges } from './tool-order.ts';
import { ToolBox, ToolSum, type ToolOf } from './tools.ts';
import type { ToolPlan } from './types.ts';
import { situated } from './weighed.ts';

/**
 * The tools for what is still to be put back, how many fasteners each, and the order of the steps with the fewest
 * changes of tool, from the step half done and the tool in hand: the same edges as the list, so every gate and need
 * holds. `now` in UTC ms. No order is offered while steps wait for each other in a ring.
 */
export function toolPlan(state: JobState, now: number): ToolPlan {
  const at = situated(state, now);
  const box = new ToolBox(state);
  const sum = new ToolSum();
  const first = begunFirst(at);
  const early = new Set(first);
  const order = [...first, ...[...at.ordered.order].filter((node) => !early.has(node))];
  const numbers = new Map<string, number>();
  const numberOf = (tool: string): number => {
    const had = numbers.get(tool);
    if (had !== undefined) return had;
    numbers.set(tool, numbers.size);
    return numbers.size - 1;
  };
  const tools = order.map((node) => useOf(at, box, node, sum).map(numberOf));
  const inHand = toolInHand(at, box);
  const hand = inHand === null ? NONE : numberOf(inHand);
  const listed = changesOf([...order.keys()], tools, hand);
  const base = { tools: sum.list(), listed };
  if (at.ordered.blocks.length > 0) return { ...base, order: [], changes: listed, exact: false, ring: true };
  const place = new Int32Array(order.length);
  order.forEach((node, i) => {
    place[node] = i;
  });
  // The step half done comes before all that is not done.
  const later = first.length === 0 ? [] : [...order.keys()].slice(first.length);
  const found = fewestChanges({
    from: Int32Array.from([
      ...at.graph.edges.map((edge) => place[edge.from] as number),
      ...later.map(() => first.length - 1),
    ]),
    to: Int32Array.from([...at.graph.edges.map((edge) => place[edge.to] as number), ...later]),
    tools,
    hand,
  });
  // A rule of thumb that found nothing better than the list leaves the list as it is.
  const better = found.changes < listed;
  const steps = (better ? found.order : [...order.keys()]).map((i) => order[i] as number);
  return {
    ...base,
    order: steps.filter((node) => isOpen(at, node)).map((node) => at.graph.nodes[node]?.id ?? ''),
    changes: Math.min(found.changes, listed),
    exact: found.exact,
    ring: false,
  };
}

const isOpen = (at: Situation, node: number): boolean =>
  !at.progress[node]?.done && at.graph.nodes[node]?.kind !== 'K';

/** The tools that a step still needs, each once; what is not recorded counts in the list and not in the order. */
function useOf(at: Situation, box: ToolBox, node: number, sum: ToolSum): string[] {
  if (!isOpen(at, node)) return [];
  const used = new Map<string, ToolOf>();
  for (const { position, set, mark } of at.content[node]?.holes ?? []) {
    if (isTight(mark) || mark === 'left out') continue;
    for (const tool of box.toolsFor(set.id, position.specId ?? set.specId)) {
      used.set(tool.tool, tool);
      sum.add(tool, 1, at.graph.nodes[node]?.id ?? '');
    }
  }
  return [...used.keys()].filter((tool) => tool !== '');
}
