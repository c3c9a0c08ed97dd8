import { buriedBy, type Finding, type Plan, type Step } from '../../core/reinstall/index.ts';
import type { JobState, Row } from '../../core/model/tables.ts';
import { type Chance, pick, shuffled, type Story, type TickMore, whole } from './story.ts';

/** One thing that somebody does at the machine on the way back. */
export interface Doing {
  readonly thingIds: readonly string[];
  readonly what: Row<'deed'>['what'];
  readonly more: TickMore;
  readonly stepId: string;
}

const HELD: readonly Row<'temporary'>['role'][] = ['supports', 'cages', 'locks', 'aid'];

function temporariesOf(state: JobState, removalId: string, roles: readonly string[]): Row<'temporary'>[] {
  return state.temporary.filter(
    (one) => roles.includes(one.role) && (one.outWithId ?? one.removalId) === removalId,
  );
}

function torqueOf(set: Row<'fset'>): TickMore {
  return set.torqueMnm === null ? {} : { valueTyped: `${set.torqueMnm / 1000} Nm`, known: 'read' };
}

/** Deeds on the holes of one set: all at once, or hole by hole in any order. */
function holeDoings(rnd: Chance, holes: readonly string[], what: 'started' | 'tightened', more: TickMore) {
  if (rnd() < 0.6) return [{ thingIds: holes, what, more }];
  return shuffled(rnd, holes).map((id) => ({ thingIds: [id], what, more }));
}

type Bare = Omit<Doing, 'stepId'>;

/** What a careful person does in the step of a removal, in an order that the trade allows. */
function refit(rnd: Chance, state: JobState, removalId: string, shared: ReadonlySet<string>): Bare[] {
  const bare = (id: string, what: Bare['what'], more: TickMore = {}): Bare => ({
    thingIds: [id],
    what,
    more,
  });
  const parts = state.part.filter(
    (part) => part.removalId === removalId && part.how !== 'fitted new' && part.fate !== 'carry over',
  );
  const sets = state.fset.filter((set) => set.removalId === removalId);
  const holesOf = (set: Row<'fset'>) =>
    state.position.filter((hole) => hole.setId === set.id && !shared.has(hole.id)).map((hole) => hole.id);
  const things = new Set([removalId, ...parts.map((one) => one.id), ...sets.map((one) => one.id)]);
  const out: Bare[] = [];
  for (const one of shuffled(rnd, temporariesOf(state, removalId, ['blocks'])))
    out.push(bare(one.id, 'taken out', { valueTyped: String(one.qty) }));
  for (const one of state.consumable) if (things.has(one.thingId)) out.push(bare(one.id, 'put on'));
  for (const part of shuffled(rnd, parts))
    out.push(bare(part.id, 'fitted', part.renew === 'must' ? { fresh: true } : {}));
  for (const set of shuffled(rnd, sets)) {
    const holes = holesOf(set);
    if (holes.length > 0 && (set.laterWhen !== null || rnd() < 0.7))
      out.push(...holeDoings(rnd, holes, 'started', set.renew === 'must' ? { fresh: true } : {}));
  }
  for (const set of shuffled(rnd, sets)) {
    const holes = holesOf(set);
    if (holes.length > 0 && set.laterWhen === null)
      out.push(
        ...holeDoings(rnd, holes, 'tightened', {
          ...torqueOf(set),
          ...(set.renew === 'must' ? { fresh: true } : {}),
        }),
      );
  }
  for (const one of shuffled(rnd, state.connection))
    if (one.removalId === removalId && !one.leaveAlone) out.push(bare(one.id, 'joined'));
  for (const one of shuffled(rnd, temporariesOf(state, removalId, HELD)))
    out.push(bare(one.id, 'taken out', { valueTyped: String(one.qty) }));
  for (const one of state.measure)
    if (one.removalId === removalId && (one.required || rnd() < 0.5))
      out.push(bare(one.id, 'measured', { valueTyped: `${one.asFound ?? 1} ${one.unit}` }));
  if (out.length === 0 || rnd() < 0.3) out.push(bare(removalId, 'done'));
  return out;
}

function fluidDoings(state: JobState, step: Step): Bare[] {
  const fluid = state.fluid.find((one) => one.id === step.thingId);
  if (!fluid) return [];
  const bare = (what: Bare['what'], more: TickMore = {}): Bare => ({ thingIds: [fluid.id], what, more });
  if (step.kind === 'C1')
    return [
      bare('filled', fluid.drainedMl === null ? {} : { valueTyped: `${fluid.drainedMl} ml` }),
      bare('cold leak checked'),
    ];
  return [...(fluid.bleed ? [bare('bled')] : []), bare('hot leak checked')];
}

/** Everything that belongs to one step, in order. */
export function doingsOf(rnd: Chance, state: JobState, step: Step, shared: ReadonlySet<string>): Doing[] {
  const whatIs = (): Bare[] => {
    const one = (what: Bare['what'], more: TickMore = {}): Bare[] => [
      { thingIds: [step.thingId], what, more },
    ];
    switch (step.kind) {
      case 'S':
        return refit(rnd, state, step.removalId ?? '', shared);
      case 'C1':
      case 'C2':
        return fluidDoings(state, step);
      case 'I':
        return one('given back');
      case 'T': {
        const set = state.fset.find((row) => row.id === step.thingId);
        return one('tightened', set ? torqueOf(set) : {});
      }
      case 'F': {
        const hole = state.position.find((row) => row.id === step.thingId);
        const set = state.fset.find((row) => row.id === hole?.setId);
        return one('tightened', set ? torqueOf(set) : {});
      }
      case 'B':
        return one('fitted');
      case 'U':
      case 'K':
        return one('done');
    }
  };
  return whatIs().map((bare) => ({ ...bare, stepId: step.id }));
}

/** Sees the plan after every deed, and what the deed was. */
export type Look = (plan: Plan, last: string) => void;

const sharedIn = (plan: Plan): ReadonlySet<string> =>
  new Set(plan.steps.filter((step) => step.kind === 'F').map((step) => step.thingId));

/**
 * Puts a job back as somebody careful would: always a step that is ready, the work of several of them mixed, time
 * passing where something cures. Throws when nothing can go on, or a clean deed is refused.
 */
export async function putBack(story: Story, rnd: Chance, look: Look): Promise<void> {
  const begun = new Map<string, Doing[]>();
  let last = 'the log';
  for (let turn = 0; turn < 2000; turn += 1) {
    const plan = story.plan();
    look(plan, last);
    const open = plan.steps.filter((step) => step.state !== 'done' && step.kind !== 'K');
    if (open.length === 0) return;
    const ready = open.filter((step) => step.state === 'ready');
    if (ready.length === 0 && open.some((step) => step.lacks.some((lack) => lack.code === 'cure'))) {
      story.yard.wait(30);
      last = 'waiting half an hour';
      continue;
    }
    if (ready.length === 0)
      throw new Error(
        `Nothing is ready: ${open.map((one) => `${one.title} ${one.state} ${one.why}`).join('; ')}`,
      );
    const step = pick(rnd, ready.slice(0, 1 + whole(rnd, ready.length)));
    const list = begun.get(step.id) ?? doingsOf(rnd, story.state, step, sharedIn(plan));
    begun.set(step.id, list);
    const doing = list.shift();
    if (!doing)
      throw new Error(
        `${step.title}: all is done, yet missing: ${step.missing.map((one) => one.sentence).join(' ')}`,
      );
    last = `${step.title}: ${doing.what}`;
    const reply = await story.tick(doing.thingIds, doing.what, doing.more);
    if (!reply.ok && !(doing.what === 'done' && reply.fault.sentence.includes('already')))
      throw new Error(`${last} was refused: ${reply.fault.sentence}`);
  }
  throw new Error('Expected the job to come to its end.');
}

/** What somebody careless does in place of a deed: other deeds, none, or the deed itself (null). */
export type Slip = (doing: Doing) => readonly Doing[] | null;

/** Deeds that bury what is open below. */
const SEALING: ReadonlySet<string> = new Set(['done', 'filled', 'bled', 'given back']);

export interface Walk {
  readonly slip: Slip;
  /** After each deed; true ends the walk. */
  readonly look: (plan: Plan, doing: Doing) => boolean;
  /** What is said of a deed before it is kept; true ends the walk. */
  readonly warned: (findings: readonly Finding[]) => boolean;
  /** Waits until sealant has cured. */
  readonly patient: boolean;
  /** The removal that is ticked in one touch. */
  readonly oneTouch: string | null;
}

/**
 * Walks down the list as somebody who does not look at the screen: each step in turn whatever its state. Ends at the
 * first refusal, which is where the program has spoken.
 */
export async function walkDown(story: Story, rnd: Chance, walk: Walk): Promise<string | null> {
  const first = story.plan();
  for (const { id } of first.steps) {
    const step = story.plan().steps.find((one) => one.id === id);
    if (!step || step.kind === 'K') continue;
    if (walk.patient && step.lacks.some((lack) => lack.code === 'cure')) story.yard.wait(120);
    const touch: Doing[] = [{ thingIds: [step.thingId], what: 'done', more: {}, stepId: id }];
    const all =
      walk.oneTouch !== null && step.removalId === walk.oneTouch
        ? touch
        : doingsOf(rnd, story.state, step, sharedIn(first));
    for (const deed of all.flatMap((doing) => walk.slip(doing) ?? [doing])) {
      if (SEALING.has(deed.what)) {
        const plan = story.plan();
        const now = plan.steps.find((one) => one.id === id);
        if (now && walk.warned(buriedBy(story.state, story.yard.workshop.now(), plan, now))) return null;
      }
      const reply = await story.tick(deed.thingIds, deed.what, deed.more);
      if (!reply.ok && !reply.fault.sentence.includes('already')) return reply.fault.sentence;
      if (reply.ok && walk.look(story.plan(), deed)) return null;
    }
  }
  return null;
}
