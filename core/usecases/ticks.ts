import { ok, type Result, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import type { DeedWhat } from '../model/work.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply } from './frame.ts';
import { gateCheck } from './gates.ts';
import { sharedHoles } from '../reinstall/index.ts';
import { fillHole, fitPart, type Hands, hands } from './fill.ts';
import { holesOf } from './pieces.ts';
import { deedValue } from './values.ts';

export interface TickInput extends JobInput {
  readonly thingIds: readonly string[];
  readonly what: DeedWhat;
  readonly valueTyped?: string | undefined;
  readonly known?: 'read' | 'ticked' | undefined;
  readonly toolId?: string | null | undefined;
  readonly fresh?: boolean | undefined;
  readonly withThingId?: string | null | undefined;
  readonly withSpecId?: string | null | undefined;
  readonly why?: string | undefined;
  readonly accept?: readonly { readonly finding: string; readonly why: string }[] | undefined;
}

/** One command's ticking: what is written with each deed, and what was left undone. */
interface Ticking {
  readonly decision: Decision;
  readonly input: TickInput;
  readonly value: number | null;
  readonly hands: Hands;
  /** Holes that hold more than one part: ticked by themselves, once the last of these is on. */
  readonly shared: ReadonlySet<string>;
  count: number;
  readonly left: string[];
}

const HOLE_DEEDS: ReadonlySet<DeedWhat> = new Set(['started', 'tightened', 'paint-checked']);

/** The round a thing is in: one more each time it came off again. */
export function roundOf(decision: Decision, thingId: string): number {
  let round = 1;
  for (const deed of decision.state.deed) if (deed.thingId === thingId) round = Math.max(round, deed.round);
  return round;
}

/** The last deed of a thing in its present round. */
export function lastDeedOf(decision: Decision, thingId: string): Row<'deed'> | null {
  const round = roundOf(decision, thingId);
  let last: Row<'deed'> | null = null;
  for (const deed of decision.writer.list('deed', (one) => one.thingId === thingId, decision.state.deed))
    if (deed.round === round && (!last || deed.at > last.at || (deed.at === last.at && deed.id > last.id)))
      last = deed;
  return last;
}

function write(ticking: Ticking, thingId: string, what: DeedWhat, extra: Partial<Row<'deed'>> = {}): void {
  const { decision, input } = ticking;
  decision.writer.put('deed', {
    id: decision.newId(),
    jobId: decision.jobId,
    thingId,
    round: roundOf(decision, thingId),
    what,
    value: what === input.what ? ticking.value : null,
    valueTyped: what === input.what ? (input.valueTyped ?? '') : '',
    known: input.known ?? 'ticked',
    toolId: input.toolId ?? null,
    withThingId: input.withThingId ?? null,
    withSpecId: input.withSpecId ?? null,
    fresh: input.fresh ?? false,
    personId: decision.personId,
    at: decision.at,
    why: input.why ?? '',
    ...extra,
  });
  ticking.count += 1;
}

/** A hole: a piece goes in with the first deed of the round. Without one in hand the hole stays as it is, and is said. */
function tickHole(ticking: Ticking, hole: Row<'position'>, what: DeedWhat, alone: boolean): Result<null> {
  const { decision } = ticking;
  const last = lastDeedOf(decision, hole.id);
  const filled = last !== null && ['started', 'tightened', 'paint-checked', 'fitted'].includes(last.what);
  const repaired = decision.state.deed.some((deed) => deed.thingId === hole.id && deed.what === 'repaired');
  const empty =
    hole.found === 'empty' &&
    hole.fate === 'fill' &&
    hole.fateWhy === '' &&
    !filled &&
    !decision.state.want.some((want) => want.thingId === hole.id && want.state !== 'dropped');
  const closed =
    empty || hole.fate === 'leave out' || last?.what === 'left out' || (hole.fate === 'blocked' && !repaired);
  if (!alone && (closed || last?.what === what || (what === 'started' && filled))) return ok(null);
  if (hole.fate === 'blocked' && !repaired)
    return refuse(
      'refused',
      `Hole ${hole.n} is blocked: ${hole.fateWhy || 'no reason given'}. Write the repair down first.`,
    );
  if (!filled) {
    const { fresh, withSpecId } = ticking.input;
    const filling = fillHole(decision, ticking.hands, hole, { fresh, withSpecId, asked: alone });
    if (!filling.ok) {
      if (alone) return filling;
      ticking.left.push(filling.fault.sentence);
      return ok(null);
    }
    write(ticking, hole.id, what, filling.value);
  } else write(ticking, hole.id, what, { fresh: last.fresh, withSpecId: last.withSpecId });
  return ok(null);
}

/** Every hole of a set that goes in with its step; where all of them wait for other parts, those are meant. */
function tickSet(ticking: Ticking, setId: string, what: DeedWhat): Result<null> {
  const holes = holesOf(ticking.decision, setId);
  const own = holes.filter((hole) => !ticking.shared.has(hole.id));
  for (const hole of own.length > 0 ? own : holes) {
    const done = tickHole(ticking, hole, what, false);
    if (!done.ok) return done;
  }
  return ok(null);
}

function tickPart(ticking: Ticking, part: Row<'part'>, alone: boolean): Result<null> {
  const { decision } = ticking;
  const last = lastDeedOf(decision, part.id);
  if (!alone && (part.fate === 'leave out' || last?.what === 'fitted' || last?.what === 'left out'))
    return ok(null);
  const fitted = fitPart(decision, ticking.hands, part, ticking.input.fresh);
  if (!fitted.ok) {
    if (alone) return fitted;
    ticking.left.push(fitted.fault.sentence);
    return ok(null);
  }
  write(ticking, part.id, 'fitted', fitted.value);
  return ok(null);
}

/** Whether every hole of a set waits for other parts: then it has no part in the removal's own step. */
function allShared(ticking: Ticking, setId: string): boolean {
  const holes = holesOf(ticking.decision, setId);
  return holes.length > 0 && holes.every((hole) => ticking.shared.has(hole.id));
}

/** The whole removal at once: what of it is still open is ticked too, so that books and steps agree. */
function tickRemoval(ticking: Ticking, removalId: string, what: DeedWhat): Result<null> {
  const { decision } = ticking;
  const all = what === 'done';
  if (all || what === 'fitted')
    for (const part of decision.state.part)
      if (part.removalId === removalId && part.kind !== 'kit') {
        const done = tickPart(ticking, part, false);
        if (!done.ok) return done;
      }
  if (all || HOLE_DEEDS.has(what))
    for (const set of decision.state.fset)
      if (set.removalId === removalId && !allShared(ticking, set.id)) {
        const done = tickSet(ticking, set.id, all ? 'tightened' : what);
        if (!done.ok) return done;
      }
  if (all || what === 'joined')
    for (const connection of decision.state.connection)
      if (
        connection.removalId === removalId &&
        !connection.leaveAlone &&
        lastDeedOf(decision, connection.id)?.what !== 'joined'
      )
        write(ticking, connection.id, 'joined');
  if (all) putOn(ticking, removalId);
  if (all && ticking.left.length === 0) write(ticking, removalId, 'done');
  return ok(null);
}

/** Who says that all of a step is done has put its sealants and greases on, at the latest now: cures run from here. */
function putOn(ticking: Ticking, removalId: string): void {
  const { state, writer, at } = ticking.decision;
  const own = new Set([
    removalId,
    ...[...state.part, ...state.fset, ...state.connection]
      .filter((row) => row.removalId === removalId)
      .map((row) => row.id),
  ]);
  for (const consumable of state.consumable)
    if (own.has(consumable.thingId) && consumable.putAt === null) {
      writer.put('consumable', { ...consumable, putAt: at });
      write(ticking, consumable.thingId, 'put on');
    }
}

/** "Done" of a thing that has a word of its own for it: books, searches and lists go by that word. */
const DONE_AS: Partial<Record<string, DeedWhat>> = {
  temporary: 'taken out',
  isolation: 'given back',
  connection: 'joined',
  position: 'tightened',
};

function deedOn(decision: Decision, id: string, what: DeedWhat): DeedWhat {
  if (what !== 'done') return what;
  if (decision.writer.get('consumable', id)) return 'put on';
  return DONE_AS[decision.writer.get('thing', id)?.kind ?? ''] ?? what;
}

function tickThing(ticking: Ticking, id: string): Result<null> {
  const { decision, input } = ticking;
  const what = deedOn(decision, id, input.what);
  const { writer } = decision;
  const removal = writer.get('removal', id);
  if (removal && (what === 'done' || what === 'fitted' || what === 'joined' || HOLE_DEEDS.has(what)))
    return tickRemoval(ticking, id, what);
  if (writer.get('fset', id) && (HOLE_DEEDS.has(what) || what === 'done'))
    return tickSet(ticking, id, what === 'done' ? 'tightened' : what);
  const hole = writer.get('position', id);
  if (hole && HOLE_DEEDS.has(what)) return tickHole(ticking, hole, what, input.thingIds.length === 1);
  const part = writer.get('part', id);
  if (part && (what === 'fitted' || what === 'done'))
    return tickPart(ticking, part, input.thingIds.length === 1);
  const fluid = writer.get('fluid', id);
  if (fluid && ticking.value !== null && what === 'filled')
    writer.put('fluid', { ...fluid, filledMl: (fluid.filledMl ?? 0) + ticking.value });
  const consumable = writer.get('consumable', id);
  if (consumable) {
    writer.put('consumable', { ...consumable, putAt: decision.at });
    write(ticking, consumable.thingId, 'put on');
    return ok(null);
  }
  write(ticking, id, what);
  return ok(null);
}

const FITTING: Partial<Record<DeedWhat, readonly string[]>> = {
  filled: ['fluid'],
  drained: ['fluid'],
  'cold leak checked': ['fluid'],
  'hot leak checked': ['fluid'],
  bled: ['fluid'],
  'given back': ['isolation'],
  measured: ['measure'],
  'put in': ['temporary'],
  'taken out': ['temporary'],
  repaired: ['position', 'part', 'connection'],
  joined: ['connection', 'removal'],
  fitted: ['part', 'removal', 'temporary'],
  started: ['position', 'set', 'removal', 'connection'],
  tightened: ['position', 'set', 'removal', 'connection'],
  'paint-checked': ['position', 'set', 'removal'],
};

export function kindProblem(decision: Decision, id: string, what: DeedWhat): Result<null> {
  const consumable = decision.writer.get('consumable', id);
  if (consumable?.jobId === decision.jobId)
    return what === 'put on' || what === 'done'
      ? ok(null)
      : refuse('input', `Expected “put on” for a sealant or grease, got “${what}”.`);
  const thing = decision.writer.get('thing', id);
  if (!thing || thing.jobId !== decision.jobId)
    return refuse('not-found', `Expected a thing of this job, got ${id}.`);
  const kinds = FITTING[what];
  if (kinds && !kinds.includes(thing.kind))
    return refuse('input', `Expected “${what}” for a ${kinds.join(' or ')}, got it for a ${thing.kind}.`);
  return ok(null);
}

/** Ticks things on the way back. A gate with open points underneath is refused until each has a name and a reason. */
export function tickDo(context: Context, input: TickInput): Reply<{ said: string }> {
  return inJob(context, 'tick.do', input, (decision) => {
    if (input.what === 'came off again')
      return refuse(
        'input',
        'Expected tick.again for something that came off again: it opens the next round.',
      );
    return ticked(decision, input);
  });
}

/** Ticks within a command that is already under way. */
export function ticked(decision: Decision, input: TickInput): Result<{ said: string }> {
  const value = deedValue(input.what, input.valueTyped ?? '');
  if (!value.ok) return value;
  for (const id of input.thingIds) {
    const fits = kindProblem(decision, id, input.what);
    if (!fits.ok) return fits;
  }
  const gate = gateCheck(decision, input.thingIds, input.what, input.accept ?? []);
  if (!gate.ok) return gate;
  const ticking: Ticking = {
    decision,
    input,
    value: value.value,
    hands: hands(decision),
    shared: sharedHoles(decision.state),
    count: 0,
    left: [],
  };
  for (const id of input.thingIds) {
    const done = tickThing(ticking, id);
    if (!done.ok) return done;
  }
  if (ticking.count === 0)
    return refuse('refused', ticking.left[0] ?? 'There is nothing left to tick here: it is so already.');
  const rest = ticking.left.length === 0 ? '' : ` Left open: ${ticking.left.join(' ')}`;
  return ok({ said: `${ticking.count} ticked.${rest}` });
}
