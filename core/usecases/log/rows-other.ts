import type { FluidItem, MadeSafeItem, TemporaryItem } from '../../entry/meaning.ts';
import { writeCondition } from '../../entry/write-words.ts';
import { blank } from '../../model/blank.ts';
import { type Line, put } from './rows.ts';

/** A fluid of the job: the same name again is the same system, and this removal opens it. */
export function addFluid(line: Line, item: FluidItem): void {
  const { decision, removal } = line;
  // "drained": what it was has to be asked, but that it was drained is known.
  const name = item.name === '' ? 'fluid' : item.name;
  const known = decision.state.fluid.find((fluid) => fluid.name.toLowerCase() === name.toLowerCase());
  const current = known ? (decision.writer.get('fluid', known.id) ?? known) : null;
  const drained = item.did === 'filled' || item.did === 'bled' ? null : item.amountMl;
  const sum = drained === null ? (current?.drainedMl ?? null) : (current?.drainedMl ?? 0) + drained;
  const base = current ?? blank('fluid', decision.newId(), decision.jobId, { name, typed: line.typed });
  const fluid = {
    ...base,
    drainedMl: sum,
    type: item.type ?? base.type,
    lost: item.did === 'lost' ? ('some' as const) : item.did === 'drained' ? ('all' as const) : base.lost,
  };
  put(line, 'fluid', fluid);
  line.kept.push(...item.conditions.map(writeCondition));
  if (drained === null && item.amountTyped !== null) line.kept.push(item.amountTyped);
  if (item.did !== 'filled' && item.did !== 'bled')
    decision.writer.put(
      'opens',
      blank('opens', decision.newId(), decision.jobId, { fluidId: fluid.id, thingId: removal.id }),
    );
}

export function addMadeSafe(line: Line, item: MadeSafeItem): void {
  const { decision, removal } = line;
  put(
    line,
    'isolation',
    blank('isolation', decision.newId(), decision.jobId, {
      removalId: removal.id,
      energy: item.energy,
      how: item.how,
      byPersonId: decision.personId,
      scope: 'all',
    }),
  );
}

export function addTemporary(line: Line, item: TemporaryItem): void {
  const { decision, removal } = line;
  put(
    line,
    'temporary',
    blank('temporary', decision.newId(), decision.jobId, {
      removalId: removal.id,
      name: [item.name, item.where ?? ''].join(' ').trim(),
      typed: line.typed,
      qty: Math.max(1, item.qty ?? 1),
      role: item.role,
    }),
  );
}
