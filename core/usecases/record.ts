import { blank } from '../model/blank.ts';
import { againPlans } from '../model/off-again.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row, TableName } from '../model/tables.ts';
import type { PlainTable } from '../contract/record.ts';
import { poolKeyOf } from '../tally/index.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { defaultsFor, fieldProblem, graphProblem } from './record-checks.ts';
import { removeMarkers } from './markers.ts';
import { beginPlanned } from './pattern/begin.ts';
import { book, bookOut, bookPartOut, stackOut, stowFor } from './pieces.ts';

interface MakeInput extends JobInput {
  readonly table: PlainTable;
  readonly id?: string | undefined;
  readonly values: Record<string, unknown>;
}

type AnyRow = Row<PlainTable>;

/** Makes one row of the record, with its own checks; pieces that come with it are booked. */
export function recordMake(context: Context, input: MakeInput): Reply<{ id: string; said: string }> {
  return inJob(context, `${input.table}.make`, input, (decision) => {
    const { table } = input;
    const id = input.id ?? decision.newId();
    if (decision.writer.get(table, id)) return refuse('refused', 'Expected a new id, but it is taken.');
    for (const field of ['id', 'jobId'])
      if (field in input.values) return refuse('input', `Expected values without ${field}.`);
    const values = { ...defaultsFor(decision, table, input.values), ...input.values };
    if (table === 'fset' && values.specId === undefined) values.specId = unknownSpec(decision);
    const row = blank(table, id, decision.jobId, values as Partial<AnyRow>);
    const graph = graphProblem(decision, table, row);
    if (!graph.ok) return graph;
    decision.writer.put(table, withDerived(table, row));
    const booked = bookNew(decision, table, row);
    return booked.ok ? ok({ id, said: 'Kept.' }) : booked;
  });
}

function unknownSpec(decision: Decision): string {
  const spec = blank('spec', decision.newId(), decision.jobId, {});
  decision.writer.put('spec', spec);
  return spec.id;
}

function withDerived(table: TableName, row: AnyRow): AnyRow {
  if (table !== 'spec') return row;
  const spec = row as Row<'spec'>;
  return { ...spec, poolKey: poolKeyOf(spec) };
}

function bookNew(decision: Decision, table: TableName, row: AnyRow): Result<null> {
  if (table === 'part') {
    const part = row as Row<'part'>;
    if (part.how === 'off' && part.qty > 0 && begun(decision, part.removalId)) bookPartOut(decision, part);
  }
  if (table === 'position') {
    const position = row as Row<'position'>;
    const set = decision.writer.get('fset', position.setId);
    if (set?.how === 'out' && begun(decision, set.removalId)) bookOut(decision, set, [position]);
  }
  if (table === 'stackItem') {
    const item = row as Row<'stackItem'>;
    const set = decision.writer.get('fset', item.setId);
    if (set?.how === 'out' && begun(decision, set.removalId)) return stackOut(decision, set, item);
  }
  return ok(null);
}

function begun(decision: Decision, removalId: string | null): boolean {
  if (removalId === null) return false;
  const removal = decision.writer.get('removal', removalId);
  return removal !== null && removal.phase !== 'planned' && removal.phase !== 'void';
}

/** Changes fields of one row. What has a verb of its own is refused with that verb's name. */
export function recordChange(
  context: Context,
  input: JobInput & { table: PlainTable; id: string; values: Record<string, unknown> },
): Reply<{ said: string }> {
  return inJob(context, `${input.table}.change`, input, (decision) => {
    const { table } = input;
    const before = decision.writer.get(table, input.id);
    if (!before || before.jobId !== decision.jobId)
      return refuse('not-found', `Expected a ${table} of this job, got ${input.id}.`);
    const fields = fieldProblem(table, input.values);
    if (!fields.ok) return fields;
    const after = withDerived(table, { ...before, ...input.values } as AnyRow);
    const graph = graphProblem(decision, table, after);
    if (!graph.ok) return graph;
    decision.writer.put(table, after);
    return followUp(decision, table, before, after);
  });
}

/** Where a part lies from now on; what is booked there moves with it. */
export function partStow(
  context: Context,
  input: JobInput & { partId: string; kind: Row<'stow'>['kind']; label: string },
): Reply<{ said: string }> {
  return inJob(context, 'part.stow', input, (decision) => {
    const found = rowIn(decision, 'part', input.partId, 'part');
    if (!found.ok) return found;
    const stow = stowFor(decision, input.kind, input.label);
    const after = { ...found.value, stowId: stow.id };
    decision.writer.put('part', after);
    return followUp(decision, 'part', found.value, after);
  });
}

/** What must move with a changed field, so that the books stay right. */
function followUp(
  decision: Decision,
  table: TableName,
  before: AnyRow,
  after: AnyRow,
): Result<{ said: string }> {
  if (table === 'part') {
    const [was, is] = [before as Row<'part'>, after as Row<'part'>];
    if (was.qty !== is.qty || was.how !== is.how) return piecesChanged(decision, is);
    if (was.stowId !== is.stowId)
      for (const move of lotsOfPart(decision, is.id, was.stowId))
        book(decision, {
          ...move,
          src: 'stow',
          dst: 'stow',
          cause: 'moved',
          partId: is.id,
          srcStowId: was.stowId,
          dstStowId: is.stowId,
        });
  }
  if (table === 'position') {
    const [was, is] = [before as Row<'position'>, after as Row<'position'>];
    if (was.found !== is.found) return foundChanged(decision, is);
  }
  if (table === 'removal') {
    const [was, is] = [before as Row<'removal'>, after as Row<'removal'>];
    if (was.phase !== is.phase && is.phase !== 'void' && againPlans(decision.state).has(is.id))
      return refuse(
        'refused',
        'Expected a removal of its own; this one only plans for another to come off again.',
      );
    if (was.phase === 'planned' && (is.phase === 'under way' || is.phase === 'off'))
      beginPlanned(decision, is);
    else if (was.phase !== is.phase && is.phase === 'planned')
      return refuse(
        'refused',
        'Expected a removal that has begun to be given up or made void, not planned again.',
      );
  }
  return ok({ said: 'Kept.' });
}

/** More or fewer of a part than first noted, or it never came off: what was booked for it is booked anew. */
function piecesChanged(decision: Decision, part: Row<'part'>): Result<{ said: string }> {
  if (decision.state.deed.some((deed) => deed.thingId === part.id))
    return refuse('refused', `${part.name || 'This part'} was worked on already; how many came off stays.`);
  for (const move of decision.state.move)
    if (move.partId === part.id && move.cause === 'came off') decision.writer.remove('move', move.id);
  if (part.how === 'off' && part.qty > 0 && begun(decision, part.removalId)) bookPartOut(decision, part);
  return ok({ said: 'Kept.' });
}

function lotsOfPart(
  decision: Decision,
  partId: string,
  stowId: string | null,
): { qty: number; fresh: boolean }[] {
  const lots = new Map<boolean, number>();
  for (const move of decision.state.move) {
    if (move.partId !== partId) continue;
    const now = lots.get(move.fresh) ?? 0;
    const into = move.dst === 'stow' && move.dstStowId === stowId ? move.qty : 0;
    const out = move.src === 'stow' && move.srcStowId === stowId ? move.qty : 0;
    lots.set(move.fresh, now + into - out);
  }
  return [...lots].filter(([, qty]) => qty > 0).map(([fresh, qty]) => ({ fresh, qty }));
}

/** A hole turns out to have been empty, or fitted after all: what came out of it is booked anew. */
function foundChanged(decision: Decision, position: Row<'position'>): Result<{ said: string }> {
  if (decision.state.deed.some((deed) => deed.thingId === position.id))
    return refuse(
      'refused',
      `Hole ${position.n} was worked on already on the way back; how it was found stays.`,
    );
  for (const move of decision.state.move)
    if (move.positionId === position.id) decision.writer.remove('move', move.id);
  const set = decision.writer.get('fset', position.setId);
  if (set?.how === 'out') bookOut(decision, set, [position]);
  return ok({ said: 'Kept.' });
}

/** Takes a row away, with what is only a piece of it. What was worked on, or is named elsewhere, stays. */
export function recordRemove(
  context: Context,
  input: JobInput & { table: PlainTable; id: string },
): Reply<{ said: string }> {
  return inJob(context, `${input.table}.remove`, input, (decision) => {
    const { table } = input;
    const row = decision.writer.get(table, input.id);
    if (!row || row.jobId !== decision.jobId)
      return refuse('not-found', `Expected a ${table} of this job, got ${input.id}.`);
    if (decision.state.deed.some((deed) => deed.thingId === input.id))
      return refuse('refused', 'This was worked on already on the way back; it stays in the record.');
    removeOwn(decision, table, input.id);
    decision.writer.remove(table, input.id);
    return ok({ said: 'Gone. Undo brings it back.' });
  });
}

function removeOwn(decision: Decision, table: TableName, id: string): void {
  const { state, writer } = decision;
  const removeMoves = (fits: (move: Row<'move'>) => boolean) => {
    for (const move of state.move)
      if (fits(move) && move.cause === 'came off') writer.remove('move', move.id);
  };
  const removePosition = (position: Row<'position'>) => {
    removeMoves((move) => move.positionId === position.id);
    for (const holds of state.holds) if (holds.positionId === position.id) writer.remove('holds', holds.id);
    writer.remove('position', position.id);
  };
  if (table === 'part') removeMoves((move) => move.partId === id);
  if (table === 'position') for (const one of state.position) if (one.id === id) removePosition(one);
  if (table === 'fset') {
    for (const one of state.position) if (one.setId === id) removePosition(one);
    for (const item of state.stackItem) if (item.setId === id) writer.remove('stackItem', item.id);
  }
  if (table === 'stackItem')
    for (const item of state.stackItem)
      if (item.id === id && item.specId !== null)
        removeMoves((move) => move.homeSetId === item.setId && move.specId === item.specId);
  if (table === 'photo')
    removeMarkers(
      decision,
      state.marker.filter((one) => one.photoId === id),
    );
  if (table === 'marker')
    removeMarkers(
      decision,
      state.marker.filter((one) => one.id === id),
    );
  if (table === 'fluid')
    for (const one of state.opens) if (one.fluidId === id) writer.remove('opens', one.id);
  if (table === 'isolation')
    for (const one of state.protects) if (one.isolationId === id) writer.remove('protects', one.id);
}
