/**
 * The order of choice on numbers alone: among free nodes the one with the lowest rank comes next. Rings are found and
 * kept together as one block, which takes its place in the list as if it were one node; nothing inside it is guessed.
 */
export interface Ordered {
  /** Node numbers in list order. */
  readonly order: Int32Array;
  /** Block number by node; -1 = in no ring. */
  readonly block: Int32Array;
  readonly blocks: readonly (readonly number[])[];
}

/** Heads and tails of edges, and the rank of every node (each rank 0 … n−1 once). */
export interface Ranked {
  readonly nodes: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly rank: Int32Array;
}

export function orderNodes(graph: Ranked): Ordered {
  const { order, count } = choose(graph);
  const block = new Int32Array(graph.nodes).fill(-1);
  if (count === graph.nodes) return { order, block, blocks: [] };
  return withBlocks(graph, block);
}

/** Kahn's algorithm (Comm. ACM 5, 1962) with the lowest rank first. Growth: linear, times the height of the rank set. */
function choose(graph: Ranked): { order: Int32Array; count: number } {
  const { nodes, from, to, rank } = graph;
  const start = new Int32Array(nodes + 1);
  const waits = new Int32Array(nodes);
  for (let e = 0; e < from.length; e++) {
    const tail = from[e] as number;
    start[tail + 1] = (start[tail + 1] as number) + 1;
    const head = to[e] as number;
    waits[head] = (waits[head] as number) + 1;
  }
  for (let i = 0; i < nodes; i++) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const at = start.slice();
  const heads = new Int32Array(from.length);
  for (let e = 0; e < from.length; e++) {
    const tail = from[e] as number;
    heads[at[tail] as number] = to[e] as number;
    at[tail] = (at[tail] as number) + 1;
  }
  const byRank = new Int32Array(nodes);
  for (let i = 0; i < nodes; i++) byRank[rank[i] as number] = i;
  const free = new LowestFirst(nodes);
  for (let i = 0; i < nodes; i++) if (waits[i] === 0) free.add(rank[i] as number);
  const order = new Int32Array(nodes);
  let count = 0;
  for (let low = free.take(); low >= 0; low = free.take()) {
    const node = byRank[low] as number;
    order[count++] = node;
    for (let k = start[node] as number; k < (start[node + 1] as number); k++) {
      const head = heads[k] as number;
      const left = (waits[head] as number) - 1;
      waits[head] = left;
      if (left === 0) free.add(rank[head] as number);
    }
  }
  return { order, count };
}

/** A set of small numbers that gives its lowest first: a tree of 32-bit words, four levels for a million. */
class LowestFirst {
  private readonly levels: Int32Array[] = [];

  constructor(size: number) {
    let words = Math.max(1, Math.ceil(size / 32));
    for (;;) {
      this.levels.push(new Int32Array(words));
      if (words === 1) break;
      words = Math.ceil(words / 32);
    }
  }

  add(value: number): void {
    let at = value;
    for (const level of this.levels) {
      const word = at >>> 5;
      const had = level[word] as number;
      level[word] = had | (1 << (at & 31));
      if (had !== 0) return;
      at = word;
    }
  }

  /** Takes the lowest out; -1 when there is none. */
  take(): number {
    const { levels } = this;
    let at = 0;
    for (let l = levels.length - 1; l >= 0; l--) {
      const word = (levels[l] as Int32Array)[at] as number;
      if (word === 0) return -1;
      at = (at << 5) | (31 - Math.clz32(word & -word));
    }
    let out = at;
    for (const level of levels) {
      const word = out >>> 5;
      const left = (level[word] as number) & ~(1 << (out & 31));
      level[word] = left;
      if (left !== 0) break;
      out = word;
    }
    return at;
  }
}

/** The same again on the graph in which every ring is one node. */
function withBlocks(graph: Ranked, block: Int32Array): Ordered {
  const part = strongParts(graph);
  const parts = maximum(part) + 1;
  const members: number[][] = Array.from({ length: parts }, () => []);
  part.forEach((p, node) => members[p]?.push(node));
  for (const list of members) list.sort((a, b) => (graph.rank[a] as number) - (graph.rank[b] as number));
  const byLowest = members.map((_, p) => p);
  byLowest.sort(
    (a, b) => (graph.rank[members[a]?.[0] ?? 0] as number) - (graph.rank[members[b]?.[0] ?? 0] as number),
  );
  const rank = new Int32Array(parts);
  byLowest.forEach((p, r) => {
    rank[p] = r;
  });
  const from: number[] = [];
  const to: number[] = [];
  graph.from.forEach((tail, e) => {
    const a = part[tail] as number;
    const b = part[graph.to[e] as number] as number;
    if (a !== b) {
      from.push(a);
      to.push(b);
    }
  });
  const condensed = choose({ nodes: parts, from: Int32Array.from(from), to: Int32Array.from(to), rank });
  const blocks: number[][] = [];
  const order = new Int32Array(graph.nodes);
  let count = 0;
  for (const p of condensed.order) {
    const list = members[p] ?? [];
    if (list.length > 1) {
      for (const node of list) block[node] = blocks.length;
      blocks.push(list);
    }
    for (const node of list) order[count++] = node;
  }
  return { order, block, blocks };
}

function maximum(values: Int32Array): number {
  let most = -1;
  for (const value of values) if (value > most) most = value;
  return most;
}

/** Strongly connected parts (Tarjan, SIAM J. Comput. 1, 1972), with an own stack instead of recursion. */
function strongParts(graph: Ranked): Int32Array {
  const { nodes, from, to } = graph;
  const out: number[][] = Array.from({ length: nodes }, () => []);
  from.forEach((tail, e) => out[tail]?.push(to[e] as number));
  const part = new Int32Array(nodes).fill(-1);
  const found = new Int32Array(nodes).fill(-1);
  const low = new Int32Array(nodes);
  const next = new Int32Array(nodes);
  const open: number[] = [];
  let clock = 0;
  let parts = 0;
  for (let root = 0; root < nodes; root++) {
    if (found[root] !== -1) continue;
    const path = [root];
    while (path.length > 0) {
      const node = path.at(-1) as number;
      if (found[node] === -1) {
        found[node] = low[node] = clock++;
        open.push(node);
      }
      const head = out[node]?.[next[node] as number];
      if (head !== undefined) {
        next[node] = (next[node] as number) + 1;
        if (found[head] === -1) path.push(head);
        else if (part[head] === -1) low[node] = Math.min(low[node] as number, found[head] as number);
        continue;
      }
      path.pop();
      const above = path.at(-1);
      if (above !== undefined) low[above] = Math.min(low[above] as number, low[node] as number);
      if (low[node] !== found[node]) continue;
      for (let member = open.pop(); member !== undefined; member = open.pop()) {
        part[member] = parts;
        if (member === node) break;
      }
      parts += 1;
    }
  }
  return part;
}
