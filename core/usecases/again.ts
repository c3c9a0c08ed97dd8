import { plannedAgain } from '../model/off-again.ts';
import { drainsOf, fluidsOpenedBy } from '../model/opened.ts';
import { ok, refuse, type Result } from '../model/result.ts';
import { thingWords } from '../model/thing-words.ts';
import { JOB_TABLES, type Row, type TableName, TABLES } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply } from './frame.ts';
import { coveredBy } from './gates.ts';
import { emptyHole, unfitPart } from './fill.ts';
import { handNeedsOn, moveThings } from './removals.ts';
import { kindProblem, lastDeedOf, roundOf } from './ticks.ts';

/** It came off again: a second removal during the climb. The first tightening stays in the record. */
export function tickAgain(
  context: Context,
  input: JobInput & { thingId: string; why: string },
): Reply<{ said: string }> {
  return inJob(context, 'tick.again', input, (decision) => cameOffAgain(decision, input.thingId, input.why));
}

/** The same within a command that is already under way. What planned it has come true and goes. */
export function cameOffAgain(decision: Decision, thingId: string, why: string): Result<{ said: string }> {
  const fits = kindProblem(decision, thingId, 'came off again');
  if (!fits.ok) return fits;
  const drains = drainsOf(decision.state, thingId);
  for (const id of [thingId, ...drains]) {
    const covered = coveredBy(decision, id);
    if (covered) return refuse('refused', covered);
  }
  if (offAgain(decision, thingId, why) === 0)
    return refuse('refused', 'Expected something that is back already; this is not.');
  for (const id of drains) offAgain(decision, id, why);
  const opened = new Set(fluidsOpenedBy(decision.state, thingId));
  const fluids = decision.state.fluid.filter(({ id }) => opened.has(id) && offAgain(decision, id, why) > 0);
  const off = new Set([thingId, ...drains, ...fluids.map((fluid) => fluid.id)]);
  for (const plan of plannedAgain(decision.state))
    if (off.has(plan.thingId)) planCameTrue(decision, plan.removal, plan.thingId);
  const open = fluids.map(
    ({ name }) => `${name || 'The fluid'} is to be filled and checked for leaks again.`,
  );
  return ok({
    said: [
      `Off again: ${thingWords(decision.state, thingId)}. Seals and bolts tightened by angle must be new once more.`,
      ...open,
    ].join(' '),
  });
}

/** Opens the next round of a thing and of all that belongs to it; how many there were. */
export function offAgain(decision: Decision, thingId: string, why: string): number {
  const { state, writer } = decision;
  let count = 0;
  const again = (id: string) => {
    const last = lastDeedOf(decision, id);
    if (!last || last.what === 'came off again') return false;
    const deed: Row<'deed'> = {
      ...last,
      id: decision.newId(),
      round: roundOf(decision, id) + 1,
      what: 'came off again',
      value: null,
      valueTyped: '',
      known: 'ticked',
      toolId: null,
      personId: decision.personId,
      at: decision.at,
      why,
    };
    writer.put('deed', deed);
    count += 1;
    return true;
  };
  for (const hole of holesUnder(decision, thingId)) if (again(hole.id)) emptyHole(decision, hole);
  for (const part of state.part)
    if ((part.id === thingId || part.removalId === thingId) && again(part.id)) unfitPart(decision, part);
  for (const connection of state.connection)
    if (connection.id === thingId || connection.removalId === thingId) again(connection.id);
  if (writer.get('removal', thingId)) again(thingId);
  const others = ['fluid', 'isolation', 'temporary', 'measure', 'ownStep'] as const;
  for (const table of others) if (writer.get(table, thingId)) again(thingId);
  return count;
}

function holesUnder(decision: Decision, id: string): Row<'position'>[] {
  const sets = new Set(
    decision.state.fset.filter((set) => set.id === id || set.removalId === id).map((set) => set.id),
  );
  return decision.state.position.filter((hole) => hole.id === id || sets.has(hole.setId));
}

/** What was written to the plan meanwhile (photos, notes of what was put in) goes to what it was a plan for. */
function planCameTrue(decision: Decision, plan: Row<'removal'>, thingId: string): void {
  const { writer, state } = decision;
  for (const action of state.action)
    if (action.removalId === plan.id && action.thingId === thingId) writer.remove('action', action.id);
  const ownerId = ownerOf(decision, thingId);
  if (ownerId !== null) {
    const own = (row: { readonly id: string; readonly thingId: string | null }) => row.thingId !== thingId;
    moveThings(
      { ...decision, state: { ...state, action: state.action.filter(own) } },
      plan.id,
      ownerId,
      null,
    );
  }
  handNeedsOn(decision, plan.id, null);
  if (isNamed(decision, plan.id))
    writer.put('removal', { ...plan, phase: 'void', phaseWhy: 'planned, and came off again' });
  else writer.remove('removal', plan.id);
}

/** Whether a row still points at a removal, as this command leaves it: then it stays in the record. */
function isNamed({ writer, state }: Decision, id: string): boolean {
  return JOB_TABLES.some((table) => {
    const fields = Object.entries(TABLES[table].refs as Record<string, TableName>).flatMap(([field, ref]) =>
      field !== 'id' && (ref === 'removal' || ref === 'thing') ? [field] : [],
    );
    const points = (row: object | null): boolean =>
      row !== null && fields.some((field) => (row as Record<string, unknown>)[field] === id);
    return (state[table] as readonly { readonly id: string }[]).some(
      (row) => points(row) && points(writer.get(table, row.id)),
    );
  });
}

/** The removal that a thing came off with; null for a fluid. */
export function ownerOf({ writer }: Pick<Decision, 'writer'>, thingId: string): string | null {
  if (writer.get('removal', thingId)) return thingId;
  const setId = writer.get('position', thingId)?.setId;
  if (setId !== undefined) return writer.get('fset', setId)?.removalId ?? null;
  return writer.get('isolation', thingId)?.removalId ?? null;
}
