import type { Needs } from './needs.ts';

/**
 * Answers "does h come to need r0, directly or through others?" (rule 1) over and over. Most answers come from an interval
 * on the tree of latest needs, in one comparison; only the rest walks, and never below r0 in the log.
 */
export function needReach(needs: Needs): (from: number, to: number) => boolean {
  const n = needs.links.length;
  const forward = needs.links.some((links, i) => links.some((link) => link.on > i));
  const { enter, leave } = forward
    ? { enter: new Int32Array(n), leave: new Int32Array(n).fill(-1) }
    : tree(needs, n);
  const seen = new Int32Array(n);
  let stamp = 0;
  return (from, to) => {
    if (from === to) return true;
    const at = enter[from] ?? 0;
    if ((enter[to] ?? 0) <= at && at <= (leave[to] ?? -1)) return true;
    if (!forward && from < to) return false;
    stamp += 1;
    const open = [from];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      for (const link of needs.links[next] ?? []) {
        if (link.on === to) return true;
        if (seen[link.on] === stamp || (!forward && link.on < to)) continue;
        seen[link.on] = stamp;
        open.push(link.on);
      }
    }
    return false;
  };
}

/** Every removal hangs under its latest need; entry and exit numbers of that forest tell who is above whom. */
function tree(needs: Needs, n: number): { enter: Int32Array; leave: Int32Array } {
  const parent = new Int32Array(n).fill(-1);
  const size = new Int32Array(n).fill(1);
  for (let i = 0; i < n; i++) {
    for (const link of needs.links[i] ?? []) parent[i] = Math.max(parent[i] ?? -1, link.on);
  }
  // Needs point to earlier entries, so walking from the end adds up every subtree before its parent is read.
  for (let i = n - 1; i >= 0; i--) {
    const p = parent[i] ?? -1;
    if (p >= 0) size[p] = (size[p] ?? 0) + (size[i] ?? 0);
  }
  const enter = new Int32Array(n);
  const leave = new Int32Array(n);
  const nextFree = new Int32Array(n);
  let root = 0;
  for (let i = 0; i < n; i++) {
    const p = parent[i] ?? -1;
    const start = p >= 0 ? (nextFree[p] ?? 0) : root;
    if (p >= 0) nextFree[p] = start + (size[i] ?? 0);
    else root += size[i] ?? 0;
    enter[i] = start;
    leave[i] = start + (size[i] ?? 0) - 1;
    nextFree[i] = start + 1;
  }
  return { enter, leave };
}
