import type { JobState } from '../model/tables.ts';
import { carries } from './states.ts';
import type { DayAhead, FreeLine, Lack, Outlook } from './types.ts';
import { promisesOf } from './promised.ts';
import { offersOf } from './promises.ts';
import { weighed, type Weighed } from './weighed.ts';

/** Now, never by itself, and what two different lacks come to. */
const NOW = Number.NEGATIVE_INFINITY;
const NEVER = Number.POSITIVE_INFINITY;
const NONE = -1;
const MANY = -2;

/** What holds a step up: until when (UTC ms), and by which one lack, where it is only one. */
interface Block {
  readonly until: number;
  readonly lack: number;
}
const FREE: Block = { until: NOW, lack: NONE };

function both(a: Block, b: Block): Block {
  if (a === FREE) return b;
  if (b === FREE) return a;
  const lack = a.lack === b.lack ? a.lack : a.lack === NONE ? b.lack : b.lack === NONE ? a.lack : MANY;
  return { until: Math.max(a.until, b.until), lack };
}

/**
 * What becomes possible on which day, and what one more item would free. One pass down the list: a step is possible when
 * the last of what it lacks, what holds it, and what lies before it is there; and it is freed by one item alone when no
 * other lack stands before it. Linear in steps and edges. `now` in UTC ms; what is overdue is not counted on.
 */
export function outlookOf(state: JobState, now: number): Outlook {
  const all = weighed(state, now);
  const { items, numbers } = itemsOf(all);
  const blocks = blocksOf(all, numbers, items);
  const { at } = all;
  const idOf = (node: number) => at.graph.nodes[node]?.id ?? '';
  const byDate = new Map<number, string[]>();
  const byItem = items.map((): string[] => []);
  for (const node of at.ordered.order) {
    const block = blocks[node];
    if (!block || at.progress[node]?.done || block === FREE) continue;
    if (block.until !== NEVER) byDate.set(block.until, [...(byDate.get(block.until) ?? []), idOf(node)]);
    byItem[block.lack]?.push(idOf(node));
  }
  const dates = [...byDate]
    .sort(([a], [b]) => a - b)
    .map(([when, stepIds]) => ({ at: when, stepIds, what: whatComes(items, when) }));
  const oneMore = greatestFirst(items, byItem);
  const late = items
    .filter((item) => item.until !== null && item.until < now)
    .map((item) => ({ thingId: item.thingId, due: item.until ?? 0, sentence: item.sentence }));
  return { dates, late, oneMore, promises: promisesOf(state), offers: offersOf(at) };
}

function greatestFirst(items: readonly Item[], byItem: readonly (readonly string[])[]): FreeLine[] {
  return items
    .map((item, i) => ({ ...lineOf(item), stepIds: byItem[i] ?? [] }))
    .filter((line) => line.stepIds.length > 0)
    .sort((a, b) => b.stepIds.length - a.stepIds.length || (a.thingId < b.thingId ? -1 : 1));
}

/**
 * "On Thursday, when the head is back": what can go ahead by a time (UTC ms), once all that is promised up to then has
 * come and has cured; what cannot, with what it still lacks or what comes first; and what one more item would free then.
 * What is overdue is not counted on. A time before `now` is now.
 */
export function dayAheadOf(state: JobState, now: number, on: number): DayAhead {
  const all = weighed(state, now);
  const { items, numbers } = itemsOf(all);
  const blocks = blocksOf(all, numbers, items);
  const then = blocksOf(all, numbers, items, on);
  const { at } = all;
  const idOf = (node: number) => at.graph.nodes[node]?.id ?? '';
  const byItem = items.map((): string[] => []);
  const ahead: { stepId: string; at: number | null }[] = [];
  const not: { stepId: string; lacks: string[]; firstId: string | null }[] = [];
  for (const node of at.ordered.order) {
    const block = then[node];
    if (!block || at.progress[node]?.done) continue;
    const until = blocks[node]?.until ?? NOW;
    if (block === FREE) {
      ahead.push({ stepId: idOf(node), at: until === NOW ? null : until });
      continue;
    }
    byItem[block.lack]?.push(idOf(node));
    if (at.graph.nodes[node]?.kind === 'K') continue;
    const first = firstBefore(all, then, node);
    not.push({
      stepId: idOf(node),
      lacks: (all.lacks[node] ?? [])
        .filter((lack) => lack.until === null || lack.until < now || lack.until > on)
        .map((lack) => lack.sentence),
      firstId: first === null ? null : idOf(first),
    });
  }
  return { on, ahead, not, oneMore: greatestFirst(items, byItem) };
}

/** The first step right before this one that cannot go ahead by then either; null where what holds it is its own. */
function firstBefore({ at }: Weighed, then: readonly Block[], node: number): number | null {
  for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
    const before = at.into.to[k] as number;
    if (!at.progress[before]?.done && then[before] !== FREE) return before;
  }
  return null;
}

type Item = Lack & { readonly code: FreeLine['code'] };

function lineOf(item: Item): Omit<FreeLine, 'stepIds'> {
  const { code, thingId, qty, sentence } = item;
  return { code, thingId, qty, sentence };
}

function whatComes(items: readonly Item[], when: number): string[] {
  return [...new Set(items.filter((item) => item.until === when).map((item) => item.sentence))];
}

/** Every lack that can come to an end, once, whatever steps wait for it. What comes after closing is none. */
function itemsOf({ lacks }: Weighed): { items: Item[]; numbers: Map<string, number> } {
  const items: Item[] = [];
  const numbers = new Map<string, number>();
  for (const list of lacks)
    for (const lack of list) {
      const { code } = lack;
      if (code === 'after closing' || code === 'not drained' || code === 'blocked') continue;
      const key = keyOf(lack);
      if (numbers.has(key)) continue;
      numbers.set(key, items.length);
      items.push({ ...lack, code });
    }
  return { items, numbers };
}

const keyOf = (lack: Lack): string => `${lack.code} ${lack.thingId} ${lack.sentence}`;

/** What holds each step up, once everything promised up to a time (UTC ms) has come. */
function blocksOf(
  all: Weighed,
  numbers: ReadonlyMap<string, number>,
  items: readonly Item[],
  come = NOW,
): Block[] {
  const { at, lacks } = all;
  const ofLack = (lack: Lack): Block => {
    const number = numbers.get(keyOf(lack));
    if (number === undefined || lack.until === null || lack.until < at.now)
      return { until: NEVER, lack: number ?? MANY };
    if (lack.until <= come) return FREE;
    return { until: lack.until, lack: number };
  };
  const stops = stopsOf(all, items, ofLack);
  // What stands open underneath, whether its step is done or not, and what the step itself waits for.
  const below: Block[] = [];
  const blocks: Block[] = [];
  for (const node of at.ordered.order) {
    let own = FREE;
    let open = FREE;
    for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
      const before = at.into.to[k] as number;
      if (!at.progress[before]?.done) own = both(own, blocks[before] ?? { until: NEVER, lack: MANY });
      if (carries(at, at.into.edge[k] as number))
        open = both(open, both(below[before] ?? FREE, stops.get(before) ?? FREE));
    }
    below[node] = open;
    own = both(own, open);
    for (const lack of lacks[node] ?? []) own = both(own, ofLack(lack));
    if ((at.ordered.block[node] ?? -1) >= 0) own = { until: NEVER, lack: MANY };
    blocks[node] = own;
  }
  return blocks;
}

/** Stops that end with a lack: short, and what has not cured. */
const ENDS_WITH: ReadonlySet<string> = new Set(['fastener.short', 'cure.wait', 'renew.not-in-hand']);

/** By node: the stop findings on it. Those that only say what is lacking end when that comes; all others hold for good. */
function stopsOf(
  { at, findings }: Weighed,
  items: readonly Item[],
  ofLack: (lack: Lack) => Block,
): Map<number, Block> {
  const lacking = new Map<string, Block>();
  for (const item of items) lacking.set(item.thingId, both(lacking.get(item.thingId) ?? FREE, ofLack(item)));
  const stops = new Map<number, Block>();
  for (const finding of findings) {
    const node = at.graph.numberOf.get(finding.stepId ?? '');
    if (finding.severity !== 'stop' || finding.accepted || node === undefined) continue;
    const ends = ENDS_WITH.has(finding.code) ? finding.subjects.flatMap((id) => lacking.get(id) ?? []) : [];
    const block = ends.length > 0 ? ends.reduce(both) : { until: NEVER, lack: MANY };
    stops.set(node, both(stops.get(node) ?? FREE, block));
  }
  return stops;
}
