import type { Row } from '../model/tables.ts';
import { workTimes } from '../model/work-times.ts';
import type { Decision } from './frame.ts';

/** Ends a removal that is under way, with its pauses as the journal tells them. */
export function endRemoval(decision: Decision, removal: Row<'removal'>): void {
  const ended = { ...removal, phase: 'off' as const, endedAt: Math.max(decision.at, removal.startedAt ?? 0) };
  const halts = decision.state.halt.map((halt) => halt.at);
  const times = workTimes(ended, decision.changes(removal.startedAt ?? 0), halts, decision.at);
  decision.writer.put('removal', { ...ended, pauses: [...(times?.pauses ?? [])].slice(0, 1000) });
}
