import type { Touched, TouchedHit, TouchedRound } from '../contract/answers.ts';
import { namesOfDeeds } from '../model/done.ts';
import { nearNames } from '../model/near-names.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import {
  type DayAhead,
  dayAheadOf,
  type Reach,
  reachOf,
  type ToolPlan,
  toolPlan,
  workedOn,
} from '../reinstall/index.ts';
import type { Context } from './frame.ts';
import { logOrder } from './log/order.ts';
import { jobState } from './views.ts';

/** What must come off to reach some things of a job, from what is on it now. */
export function planReach(
  context: Context,
  input: { readonly jobId: string; readonly targetIds: readonly string[] },
): Result<Reach> {
  const state = jobState(context, input.jobId);
  if (!state.ok) return state;
  const known = new Set(state.value.thing.map((thing) => thing.id));
  const stranger = input.targetIds.find((id) => !known.has(id));
  if (stranger !== undefined) return refuse('not-found', `Expected things of this job, got ${stranger}.`);
  return ok(reachOf(state.value, input.targetIds, context.workshop.now()));
}

/** What can go ahead by a time (UTC ms). */
export function planDay(
  context: Context,
  input: { readonly jobId: string; readonly on: number },
): Result<DayAhead> {
  const state = jobState(context, input.jobId);
  return state.ok ? ok(dayAheadOf(state.value, context.workshop.now(), input.on)) : state;
}

/** Tools for what is still to be put back, and the order with the fewest changes. */
export function planTools(context: Context, jobId: string): Result<ToolPlan> {
  const state = jobState(context, jobId);
  return state.ok ? ok(toolPlan(state.value, context.workshop.now())) : state;
}

const plain = (text: string): string => text.trim().toLowerCase();

/** The jobs of one machine: the same name and no other owner, or linked as the earlier job, through any number of them. */
function jobsOfMachine(jobs: readonly Row<'job'>[], start: Row<'job'>): Row<'job'>[] {
  const same = (a: Row<'job'>, b: Row<'job'>) =>
    plain(a.machine) !== '' &&
    plain(a.machine) === plain(b.machine) &&
    (a.ownerId === null || b.ownerId === null || a.ownerId === b.ownerId);
  const found = new Set([start]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const job of jobs)
      if (
        !found.has(job) &&
        [...found].some((one) => one.earlierJobId === job.id || job.earlierJobId === one.id || same(one, job))
      ) {
        found.add(job);
        grown = true;
      }
  }
  return [...found].sort((a, b) => a.createdAt - b.createdAt);
}

/** "Was this joint touched at all?": everything of that name in all jobs of a machine. */
export function jobsTouched(
  context: Context,
  input: {
    readonly text: string;
    readonly machine?: string | undefined;
    readonly jobId?: string | undefined;
  },
): Result<Touched> {
  const jobs = context.workshop.jobs();
  const wanted = plain(input.machine ?? '');
  const seeds =
    input.jobId === undefined
      ? jobs.filter((job) => wanted !== '' && [plain(job.machine), plain(job.title)].includes(wanted))
      : jobs.filter((job) => job.id === input.jobId);
  if (seeds.length === 0) {
    const names = [...new Set(jobs.map((job) => job.machine || job.title))].map((name) => `“${name}”`);
    return refuse(
      'not-found',
      `Expected a machine or a job of this workshop, got “${input.machine ?? input.jobId ?? ''}”. There are: ${names.join(', ') || 'none yet'}.`,
    );
  }
  const all = new Set(seeds.flatMap((seed) => jobsOfMachine(jobs, seed)));
  const names: string[] = [];
  const rows = [...all]
    .sort((a, b) => a.createdAt - b.createdAt)
    .map((job) => {
      const state = context.workshop.job(job.id);
      const hits = state ? hitsIn(state, plain(input.text), context.workshop.now()) : [];
      names.push(...(state ? namesIn(state) : []));
      return { jobId: job.id, title: job.title, createdAt: job.createdAt, zone: job.zone, hits };
    });
  const wantedName = plain(input.text);
  const known =
    rows.some((row) => row.hits.length > 0) || names.some((name) => plain(name).includes(wantedName));
  const text = input.text.trim();
  return ok({ known, jobs: rows, sentence: known ? sentenceOf(rows, text) : unknownOf(rows, text, names) });
}

/** Everything of a job that has a name, whether it was touched or not. */
export function namesIn(state: JobState): string[] {
  return [
    ...[state.part, state.connection, state.fset, state.fluid, state.temporary].flatMap((rows) =>
      rows.map(({ name }) => name),
    ),
    ...state.isolation.map(({ how }) => how),
    ...state.removal.map(({ title }) => title),
  ].filter((name) => name !== '');
}

/** A name that nothing has says nothing of any joint: the nearest ones are offered. */
function unknownOf(jobs: Touched['jobs'], text: string, names: readonly string[]): string {
  const where = jobs.length === 1 ? 'the one job' : `any of the ${jobs.length} jobs`;
  const near = nearNames(text, names).map((name) => `“${name}”`);
  const offer = near.length === 0 ? '' : ` Nearest: ${near.join(', ')}.`;
  return `Nothing is called “${text}” in ${where} on this machine, so nothing is known of it.${offer}`;
}

function sentenceOf(jobs: Touched['jobs'], text: string): string {
  const with1 = jobs.filter((job) => job.hits.length > 0);
  if (jobs.length === 1)
    return with1.length === 0
      ? `“${text}” was not touched in the one job on this machine, as far as it was logged.`
      : `“${text}” was touched in the one job on this machine.`;
  if (with1.length === 0)
    return `“${text}” was touched in none of ${jobs.length} jobs on this machine, as far as it was logged.`;
  return `“${text}” was touched in ${with1.length} of ${jobs.length} jobs on this machine.`;
}

/** Deeds of one removal cut where it came off again, the earliest first: first what it came off with, then what was done. */
function cutAtOff(deeds: readonly Row<'deed'>[]): { again: Row<'deed'>[]; back: Row<'deed'>[] }[] {
  const rounds: { again: Row<'deed'>[]; back: Row<'deed'>[] }[] = [{ again: [], back: [] }];
  for (const deed of deeds) {
    const last = rounds.at(-1);
    if (deed.what !== 'came off again') last?.back.push(deed);
    else if (last && last.back.length === 0) last.again.push(deed);
    else rounds.push({ again: [deed], back: [] });
  }
  return rounds;
}

/** Each time that a removal was off: when, by whom and why, who put it back, what was new and what was read. */
function roundsOf(
  state: JobState,
  removal: Row<'removal'>,
  deeds: readonly Row<'deed'>[],
  isBack: boolean,
): TouchedRound[] {
  const nameOf = (id: string | null | undefined) =>
    state.person.find((person) => person.id === id)?.name ?? null;
  const rounds = cutAtOff(deeds);
  return rounds.map(({ again, back: all }, i) => {
    const [off] = again;
    // What came off again later had gone in before, the whole of it or some.
    const back = i < rounds.length - 1 || isBack ? all : [];
    const last = back.at(-1);
    const read = back.filter((deed) => deed.what === 'tightened' && deed.valueTyped !== '');
    const whole = again.some((deed) => deed.thingId === removal.id);
    return {
      offAt: off ? off.at : (removal.endedAt ?? removal.startedAt),
      offBy: nameOf(off ? off.personId : removal.personId),
      why: off?.why ?? '',
      what: whole ? [] : namesOfDeeds(state, again),
      backAt: last?.at ?? null,
      backBy: nameOf(last?.personId),
      renewed: namesOfDeeds(
        state,
        back.filter((deed) => deed.fresh),
      ),
      read: [...new Set(read.map((deed) => deed.valueTyped))],
    };
  });
}

/** Names by removal: parts, sets, connections, fluids it opened, and what was typed. */
export function hitsIn(state: JobState, text: string, now: number): TouchedHit[] {
  const names = new Map<string, string[]>();
  const add = (removalId: string | null | undefined, ...words: string[]) => {
    const hit = words.find((word) => plain(word).includes(text));
    if (removalId && hit) names.set(removalId, [...(names.get(removalId) ?? []), hit.split('\n')[0] ?? '']);
  };
  for (const part of state.part) add(part.removalId, part.name, part.stamped, part.typed);
  for (const set of state.fset) add(set.removalId, set.name, set.typed);
  for (const one of state.connection) add(one.removalId, one.name, one.goesTo, one.typed);
  for (const one of state.isolation) add(one.removalId, one.how);
  for (const removal of state.removal) add(removal.id, removal.title, removal.typed);
  const order = logOrder(state.removal);
  const { back, deeds: all } = workedOn(state, now);
  return order.flatMap((removal, i) => {
    const hit = names.get(removal.id);
    const happened = removal.phase === 'off' || removal.phase === 'under way';
    if (!hit || !happened) return [];
    return [
      {
        removalId: removal.id,
        number: i + 1,
        title: removal.title || (removal.typed.split('\n')[0] ?? ''),
        names: [...new Set(hit)],
        did: removal.did,
        rounds: roundsOf(state, removal, all.get(removal.id) ?? [], back.has(removal.id)),
      },
    ];
  });
}
