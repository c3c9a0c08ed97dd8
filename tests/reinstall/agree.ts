import { planJob } from '../../core/reinstall/index.ts';
import { jobOf, type Recipe, tickOff } from './any-job.ts';
import { reference } from './reference.ts';

const sorted = (list: Iterable<string>): string => [...list].sort().join(' ');

/**
 * Plans the job of a recipe and asks the reference; gives what differs, or nothing. With `clean` only steps whose
 * forerunners are done are ticked, so that nothing is held; then also what can go ahead is compared.
 */
export function differs(recipe: Recipe, clean: boolean): string | null {
  const job = jobOf(recipe);
  const start = reference(job.state(), new Set());
  const done = new Set<string>();
  const list = planJob(job.state(), job.at).steps.map((one) => ({
    ...one,
    name: `${one.kind}:${one.thingId}`,
  }));
  const shared = new Set(list.filter((one) => one.kind === 'F').map((one) => one.thingId));
  for (const n of recipe.done) {
    const open = clean
      ? list.filter((one) => !done.has(one.name) && start.ahead.has(one.name) && free(start, done, one.name))
      : list.filter((one) => !done.has(one.name) && (one.kind !== 'T' || free(start, done, one.name)));
    const step = open[n % Math.max(1, open.length)];
    if (!step) continue;
    done.add(step.name);
    tickOff(job, step.kind, step.thingId, shared);
  }
  const state = job.state();
  const plan = planJob(state, job.at);
  const want = reference(state, done);
  const name = new Map(plan.steps.map((one) => [one.id, `${one.kind}:${one.thingId}`]));
  const nodes = [...name.values()];
  if (sorted(nodes) !== sorted(want.nodes)) return `nodes: ${sorted(nodes)} instead of ${sorted(want.nodes)}`;
  const got = closureOf(
    nodes,
    plan.edges.map((one) => [name.get(one.from) ?? '', name.get(one.to) ?? ''] as const),
  );
  const extra = [...got].filter((one) => !want.before.has(one));
  const missing = [...want.before].filter((one) => !got.has(one));
  if (extra.length + missing.length > 0)
    return `edges: too many ${extra.join(' ')}; missing ${missing.join(' ')}`;
  if (want.order && want.order.join(' ') !== nodes.join(' '))
    return `order: ${nodes.join(' ')} instead of ${want.order.join(' ')}`;
  for (const step of plan.steps) {
    const own = name.get(step.id) ?? '';
    const state = want.done.has(own)
      ? 'done'
      : want.behind.has(own)
        ? 'behind'
        : want.lacking.has(own)
          ? 'waiting'
          : 'ready';
    if (step.state !== state && !(state === 'ready' && step.state === 'held' && !clean))
      return `state of ${own}: ${step.state} (${step.why}) instead of ${state}`;
  }
  const ahead = sorted([...plan.ahead].map((id) => name.get(id) ?? ''));
  if (clean && ahead !== sorted(want.ahead)) return `ahead: ${ahead} instead of ${sorted(want.ahead)}`;
  return null;
}

function free(start: ReturnType<typeof reference>, done: ReadonlySet<string>, v: string): boolean {
  return start.nodes.every((u) => done.has(u) || !start.before.has(`${u}>${v}`));
}

function closureOf(nodes: readonly string[], pairs: readonly (readonly [string, string])[]): Set<string> {
  const next = new Map(nodes.map((one) => [one, pairs.filter(([u]) => u === one).map(([, v]) => v)]));
  const found = new Set<string>();
  for (const u of nodes) {
    const open = [...(next.get(u) ?? [])];
    for (let v = open.pop(); v !== undefined; v = open.pop()) {
      if (found.has(`${u}>${v}`)) continue;
      found.add(`${u}>${v}`);
      open.push(...(next.get(v) ?? []));
    }
  }
  return found;
}
