import type { Row } from '../model/tables.ts';
import { action } from './action.ts';
import type { PlanNode } from './graph.ts';
import { of } from './job-log.ts';
import { isInPlace } from './progress.ts';
import type { Situation } from './situation.ts';
import { last, standing } from './standing.ts';
import type { StepAction } from './types.ts';

/** What is put in to help on the way back, counted and out again when done. */
export function aids(at: Situation, one: PlanNode): StepAction[] {
  return of(at.graph.log.putInWith, one.thingId)
    .filter((row) => row.role === 'aid')
    .map((row) => {
      const put = last(standing(at.graph.log, row.id), 'put in', 'taken out') !== undefined;
      return action('put in', `Put in: ${row.qty > 1 ? `${row.qty} × ` : ''}${row.name}.`, [row.id], put);
    });
}

const WHY: Record<Row<'temporary'>['role'], string> = {
  blocks: 'before the opening is closed',
  supports: 'now that what it holds is fast',
  cages: 'now that everything round it is tight',
  locks: 'before the first turn',
  aid: 'now that its work is done',
};

/** What was put in for the time of the work comes out, and when. */
export function takeOut(at: Situation, row: Row<'temporary'>): StepAction {
  const count = row.qty > 1 ? `${row.qty} × ` : '';
  return action(
    'take out',
    `Take out: ${count}${row.name}, ${WHY[row.role]}.`,
    [row.id],
    !isInPlace(at.graph, row),
  );
}
