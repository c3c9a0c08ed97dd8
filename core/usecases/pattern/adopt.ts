import type { FastenerItem } from '../../entry/meaning.ts';
import type { Row } from '../../model/tables.ts';
import { poolKeyOf } from '../../tally/index.ts';
import type { Decision } from '../frame.ts';
import { holesOf } from '../pieces.ts';
import { likeness } from './differences.ts';
import { dropSet, isUnseen, isUnseenPart } from './origin.ts';

/** A set that was expected, as far as what was typed does not say it better. */
export interface Expected {
  readonly set: Row<'fset'>;
  readonly spec: Row<'spec'>;
  readonly holes: readonly Row<'position'>[];
  readonly stack: readonly Row<'stackItem'>[];
}

/**
 * The set expected of this removal that what was typed is most like, taken out of the plan: what was typed takes its
 * place, and its id, so that the two are compared. Null where none is expected or another thread was typed.
 */
export function takeExpected(decision: Decision, removalId: string, typed: Row<'spec'>): Expected | null {
  const { writer, state } = decision;
  const [best] = writer
    .list('fset', (set) => set.removalId === removalId && isUnseen(decision, set), state.fset)
    .map((set) => ({ set, spec: writer.get('spec', set.specId) as Row<'spec'> }))
    .map(({ set, spec }) => ({ set, spec, like: likeness(spec, typed) }))
    .filter(({ like }) => like >= 0)
    .sort((a, b) => b.like - a.like || (a.set.ord < b.set.ord ? -1 : 1));
  if (!best) return null;
  const holes = holesOf(decision, best.set.id);
  const stack = writer.list('stackItem', (item) => item.setId === best.set.id, state.stackItem);
  dropSet(decision, best.set);
  return { set: best.set, spec: best.spec, holes, stack };
}

/** What was typed, and for what was not, what was expected. */
export function specWith(expected: Expected | null, typed: Row<'spec'>): Row<'spec'> {
  if (!expected) return typed;
  const { spec } = expected;
  const size = typed.driveSizeUm === null && typed.driveTyped === '' ? spec : typed;
  const thread = typed.thread === null || (!typed.threadKnown && typed.pitchUm === null) ? spec : typed;
  const own: Row<'spec'> = {
    ...typed,
    kind: typed.kind === 'unknown' ? spec.kind : typed.kind,
    thread: thread.thread,
    threadKnown: thread.threadKnown,
    pitchUm: thread.pitchUm,
    lengthUm: typed.lengthUm ?? spec.lengthUm,
    head: typed.head ?? spec.head,
    drive: size.drive ?? typed.drive ?? spec.drive,
    driveSizeUm: size.driveSizeUm,
    driveTyped: size.driveTyped,
    grade: typed.grade ?? spec.grade,
    more: typed.more || spec.more,
  };
  return { ...own, poolKey: poolKeyOf(own) };
}

/** What the plan says of a set that the entry line did not: torque, order, what must be new. */
export function setWith(expected: Expected | null, item: FastenerItem): Partial<Row<'fset'>> {
  if (!expected) return {};
  const { set } = expected;
  const torque = item.torque
    ? {}
    : {
        torqueMnm: set.torqueMnm,
        torqueTyped: set.torqueTyped,
        torqueFrom: set.torqueFrom,
        torquePage: set.torquePage,
        angleDeg: set.angleDeg,
        stages: set.stages,
      };
  const { renew, renewRule, renewWhy } = set;
  return {
    ...torque,
    ...(item.treatments.length > 0 ? {} : { lubrication: set.lubrication }),
    ...(renew === 'no' ? {} : { renew, renewRule, renewWhy }),
    ord: set.ord,
    name: item.name ?? set.name,
    ownPlace: set.ownPlace,
    critical: set.critical,
    laterWhen: set.laterWhen,
    orderKind: set.orderKind,
    recheck: set.recheck,
  };
}

/** Lengths by hole and what is hidden, as expected, where the entry line did not say lengths. */
export function holesWith(
  expected: Expected | null,
  typed: Row<'spec'>,
  lengthsTyped: boolean,
  holes: readonly Row<'position'>[],
): Row<'position'>[] {
  return holes.map((hole, i) => {
    const planned = expected?.holes[i];
    if (!planned) return hole;
    const specId = lengthsTyped || typed.lengthUm !== null ? hole.specId : planned.specId;
    return { ...hole, hidden: planned.hidden, specId };
  });
}

/** The part of this name that was expected of this removal and not seen yet; what was typed takes its place. */
export function expectedPart(decision: Decision, removalId: string, name: string): Row<'part'> | null {
  const low = name.trim().toLowerCase();
  const fits = (part: Row<'part'>): boolean =>
    part.removalId === removalId && part.name.toLowerCase() === low && isUnseenPart(decision, part);
  return decision.writer.list('part', fits, decision.state.part)[0] ?? null;
}
