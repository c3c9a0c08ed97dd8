import type { JobCard, JobView } from '../contract/views.ts';
import { keptTimes, type WorkTimes, workTimes } from '../model/work-times.ts';
import { outlookOf, type Plan, planJob, suggestionsOf, timeLeftOf } from '../reinstall/index.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import {
  bagCounts,
  countLines,
  describeSpec,
  expectedIn,
  lookAlikes,
  openSearches,
  poolLines,
  toGet,
} from '../tally/index.ts';
import { historyState } from './history.ts';
import { logOrder } from './log/order.ts';
import { changesOf, type Context } from './frame.ts';
import { patternOf } from './pattern/differences.ts';
import { usedStows, withOwnLabels } from './stow-labels.ts';
import { walkedPlan } from './walk.ts';

/** A job, or a refusal that says which are there. */
export function jobState(context: Context, jobId: string): Result<JobState> {
  const state = context.workshop.job(jobId);
  if (state) return ok(state);
  const known = context.workshop
    .jobs()
    .map((job) => `“${job.title}” (${job.id})`)
    .join(', ');
  return refuse(
    'not-found',
    `Expected a job of this workshop, got ${jobId}. There are: ${known || 'none yet'}.`,
  );
}

/** Everything a window needs to draw a job. */
export function jobView(context: Context, jobId: string): Result<JobView> {
  const kept = jobState(context, jobId);
  if (!kept.ok) return kept;
  const state = withOwnLabels(kept.value);
  const now = context.workshop.now();
  const counts = countLines(state);
  return ok({
    state,
    plan: walkedPlan(context, state, now),
    walk: context.workshop.walk(jobId),
    outlook: outlookOf(state, now),
    timeLeft: timeLeftOf(state, now),
    suggestions: suggestionsOf(state, now),
    counts,
    pools: poolLines(state, counts),
    searches: openSearches(state),
    bags: bagCounts(state),
    toGet: toGet(state),
    lookAlikes: lookAlikes(state),
    specNames: Object.fromEntries(state.spec.map((spec) => [spec.id, describeSpec(spec)])),
    inBag: Object.fromEntries(usedStows(state).map((id) => [id, expectedIn(state, id)])),
    pattern: patternOf(context, state),
    times: timesOf(context, state),
    history: historyState(context, jobId),
  });
}

/** When each removal was worked on: as kept where it has ended, from the journal while it is under way. */
function timesOf(context: Context, state: JobState): JobView['times'] {
  const halts = state.halt.map((halt) => halt.at);
  const times: Record<string, WorkTimes> = {};
  for (const removal of state.removal) {
    const kept = keptTimes(removal);
    const since = removal.startedAt ?? Number.POSITIVE_INFINITY;
    const known =
      kept ??
      (removal.phase === 'under way'
        ? workTimes(removal, changesOf(context.workshop, state.job.id, since), halts, context.workshop.now())
        : null);
    if (known) times[removal.id] = known;
  }
  return times;
}

/** Pieces of each removal, for the length of its notch. */
export function piecesByRemoval(state: JobState): Map<string, number> {
  const home = new Map(state.fset.map((set) => [set.id, set.removalId]));
  const pieces = new Map<string, number>();
  const add = (id: string | null | undefined, qty: number) => {
    if (id) pieces.set(id, (pieces.get(id) ?? 0) + qty);
  };
  for (const hole of state.position) if (hole.found !== 'empty') add(home.get(hole.setId), 1);
  for (const part of state.part) add(part.removalId, part.qty);
  return pieces;
}

/** Slackened and not tight again. */
function looseOf(state: JobState, tight: ReadonlySet<string | null>): string[] {
  const begun = state.removal.filter((removal) => removal.phase !== 'planned');
  const titles = new Map(begun.map((removal) => [removal.id, removal.title]));
  return state.fset
    .filter((set) => set.how === 'slackened' && titles.has(set.removalId) && !tight.has(set.removalId))
    .map((set) => {
      const count = state.position.filter((hole) => hole.setId === set.id).length;
      return `${set.name || titles.get(set.removalId) || 'Fasteners'}, ${count} slackened only`;
    });
}

function openToAir(state: JobState, plan: Plan): string[] {
  const open = new Set(plan.steps.filter((s) => s.kind === 'C1' && s.state !== 'done').map((s) => s.thingId));
  return state.fluid.filter((fluid) => open.has(fluid.id)).map((fluid) => fluid.name);
}

/** Temporaries that are in and not yet out. */
function insideOf(state: JobState): string[] {
  const out = new Set(state.deed.filter((deed) => deed.what === 'taken out').map((deed) => deed.thingId));
  return state.temporary
    .filter((one) => !out.has(one.id))
    .map((one) => (one.qty > 1 ? `${one.qty} × ${one.name}` : one.name));
}

/** Bags that hold something by the books and were never counted. */
function notCounted(job: JobState): string[] {
  const state = withOwnLabels(job);
  const used = new Set(state.fset.map((set) => set.stowId));
  const counted = new Set(state.counting.map((count) => count.stowId));
  return state.stow
    .filter((stow) => used.has(stow.id) && !counted.has(stow.id) && expectedIn(state, stow.id) > 0)
    .map((stow) => `${stow.kind} ${stow.label}`);
}

function haltOf(state: JobState): JobCard['halt'] {
  const halt = state.halt.filter((one) => one.seenAt === null).at(-1);
  if (!halt) return null;
  const by = state.person.find((person) => person.id === halt.personId)?.name ?? null;
  return { at: halt.at, note: halt.note, by };
}

function nameOf(state: JobState, thingId: string): string {
  const part = state.part.find((one) => one.id === thingId);
  const set = state.fset.find((one) => one.id === thingId);
  return part?.name || set?.name || set?.typed || 'A thing';
}

/** One job as the Jobs screen shows it. */
function cardOf(state: JobState, now: number): JobCard {
  const plan = planJob(state, now);
  const order = logOrder(state.removal);
  const pieces = piecesByRemoval(state);
  const done = new Set(
    plan.steps.filter((s) => s.kind === 'S' && s.state === 'done').map((s) => s.removalId),
  );
  const last = order.filter((removal) => removal.phase !== 'planned').at(-1);
  const open = (severity: 'stop' | 'warn') =>
    plan.findings.filter((one) => one.severity === severity && one.accepted === null).length;
  return {
    job: state.job,
    depth: plan.depth,
    notches: order
      .filter((removal) => removal.phase !== 'planned')
      .map((removal) => ({
        pieces: pieces.get(removal.id) ?? 0,
        back: done.has(removal.id),
        did: removal.did,
      })),
    last: last
      ? {
          number: order.indexOf(last) + 1,
          title: last.title || last.typed,
          at: last.endedAt ?? last.startedAt,
        }
      : null,
    lastBack: lastBackOf(state, order),
    photo: lastPhoto(state),
    changedAt: changedAt(state),
    open: { stop: open('stop'), warn: open('warn') },
    loose: looseOf(state, done),
    away: state.away
      .filter((one) => one.backAt === null)
      .map((one) => ({
        what: nameOf(state, one.thingId),
        since: one.since,
        due: one.due,
        toWhom: one.toWhom,
      })),
    openToAir: openToAir(state, plan),
    inside: insideOf(state),
    // Once a job is closed nobody counts its bags any more.
    notCounted: state.job.phase === 'open' ? notCounted(state) : [],
    halt: haltOf(state),
  };
}

/** The removal that something was last put back of; null while nothing is. */
function lastBackOf(state: JobState, order: readonly Row<'removal'>[]): JobCard['lastBack'] {
  const deeds = state.deed.filter((deed) => deed.what !== 'came off again');
  const last = deeds.reduce<Row<'deed'> | null>((a, b) => (a && a.at >= b.at ? a : b), null);
  if (!last) return null;
  const set = (id: string | undefined) => state.fset.find((one) => one.id === id)?.removalId;
  const hole = state.position.find((one) => one.id === last.thingId);
  const rows = [...state.part, ...state.connection, ...state.isolation, ...state.measure, ...state.temporary];
  const removalId =
    set(hole?.setId) ??
    set(last.thingId) ??
    rows.find((one) => one.id === last.thingId)?.removalId ??
    last.thingId;
  const at = order.findIndex((removal) => removal.id === removalId);
  const removal = order[at];
  return removal ? { number: at + 1, title: removal.title || removal.typed, at: last.at } : null;
}

function lastPhoto(state: JobState): JobCard['photo'] {
  const originals = new Map(state.original.map((original) => [original.id, original]));
  let last: JobCard['photo'] = null;
  let lastAt = Number.NEGATIVE_INFINITY;
  for (const photo of state.photo) {
    const original = originals.get(photo.originalId);
    const at = original?.takenUtc ?? photo.addedAt;
    if (!original || original.gone || at < lastAt) continue;
    last = { photo, original };
    lastAt = at;
  }
  return last;
}

function changedAt(state: JobState): number {
  const times: number[] = [state.job.createdAt];
  const add = (rows: readonly { at: number }[]) => {
    for (const row of rows) times.push(row.at);
  };
  add(state.deed);
  add(state.counting);
  for (const photo of state.photo) times.push(photo.addedAt);
  for (const removal of state.removal) times.push(removal.endedAt ?? removal.startedAt ?? 0);
  return times.reduce((a, b) => Math.max(a, b), 0);
}

/** All jobs: those that are open before those that are closed, in each the one worked on last first. */
export function jobCards(context: Context): JobCard[] {
  const now = context.workshop.now();
  return context.workshop
    .jobs()
    .map((job: Row<'job'>) => context.workshop.job(job.id))
    .filter((state) => state !== null)
    .map((state) => cardOf(state, now))
    .sort(
      (a, b) => Number(a.job.phase !== 'open') - Number(b.job.phase !== 'open') || b.changedAt - a.changedAt,
    );
}
