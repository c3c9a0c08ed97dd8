import type { JobState } from '../model/tables.ts';
import { isTight } from './standing.ts';
import type { Situation } from './situation.ts';
import { changesOf, fewestChanges } from './tool-order.ts';
import { ToolBox, ToolSum, type ToolOf } from './tools.ts';
import type { ToolPlan } from './types.ts';
import { situated } from './weighed.ts';

/**
 * The tools for what is still to be put back, how many fasteners each, and the order of the steps with the fewest
 * changes of tool: the same edges as the list, so every gate and need holds. `now` in UTC ms. No order is offered while
 * steps wait for each other in a ring.
 */
export function toolPlan(state: JobState, now: number): ToolPlan {
  const at = situated(state, now);
  const box = new ToolBox(state);
  const sum = new ToolSum();
  const order = [...at.ordered.order];
  const numbers = new Map<string, number>();
  const tools = order.map((node) =>
    useOf(at, box, node, sum).map((tool) => {
      const had = numbers.get(tool);
      if (had !== undefined) return had;
      numbers.set(tool, numbers.size);
      return numbers.size - 1;
    }),
  );
  const listed = changesOf([...order.keys()], tools);
  const base = { tools: sum.list(), listed };
  if (at.ordered.blocks.length > 0) return { ...base, order: [], changes: listed, exact: false, ring: true };
  const place = new Int32Array(order.length);
  order.forEach((node, i) => {
    place[node] = i;
  });
  const found = fewestChanges({
    from: Int32Array.from(at.graph.edges, (edge) => place[edge.from] as number),
    to: Int32Array.from(at.graph.edges, (edge) => place[edge.to] as number),
    tools,
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
