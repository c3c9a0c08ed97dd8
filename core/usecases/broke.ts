import { ok, refuse, type Result } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { offAgain } from './again.ts';
import { hands, lotFor } from './fill.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { coveredBy } from './gates.ts';
import { book, stowOf } from './pieces.ts';
import { lastDeedOf } from './ticks.ts';

interface BrokeInput extends JobInput {
  readonly thingId: string;
  /** Part of it is still in the hole, which takes nothing until a repair is written down. */
  readonly stuck: boolean;
  readonly why: string;
}

/** Words of the condition: the counts know a spoilt piece by them. */
const BROKE = 'broken off on the way back';
const SPOILT = 'damaged on the way back';

/**
 * A fastener that broke or was spoilt on the way back. The piece is scrapped, so that another is short; what is stuck
 * blocks its hole. The hole opens again, and its first tightening stays in the record.
 */
export function tickBroke(context: Context, input: BrokeInput): Reply<{ said: string }> {
  return inJob(context, 'tick.broke', input, (decision) => {
    const hole = rowIn(decision, 'position', input.thingId, 'hole');
    if (!hole.ok) return hole;
    const shut = shutOf(decision, hole.value, input.stuck);
    if (shut !== null) return refuse('refused', shut);
    const gone = lose(decision, hole.value, input.why);
    if (!gone.ok) return gone;
    const what = input.stuck ? BROKE : SPOILT;
    const { condition } = hole.value;
    decision.writer.put('position', {
      ...hole.value,
      condition: condition === '' ? what : condition.includes(what) ? condition : `${condition}; ${what}`,
      ...(input.stuck ? { fate: 'blocked' as const, fateWhy: input.why.trim() || BROKE } : {}),
    });
    const rest = input.stuck ? ' Its hole takes nothing until a repair is written down.' : '';
    return ok({ said: `Hole ${hole.value.n}: ${what}, and scrapped. Another one is needed.${rest}` });
  });
}

/** Why nothing can break in this hole; null = it can. A repair holds for good: a hole is not blocked a second time. */
function shutOf({ state }: Decision, hole: Row<'position'>, stuck: boolean): string | null {
  if (hole.fate !== 'blocked') return null;
  const repaired = state.deed.some((deed) => deed.thingId === hole.id && deed.what === 'repaired');
  if (!repaired) return `Expected a hole that can take a piece, got hole ${hole.n}: it is blocked.`;
  return stuck
    ? `Hole ${hole.n} was blocked and repaired before; it is not blocked a second time. Say that the piece is spoilt, and leave the hole out with a reason until it is clear.`
    : null;
}

/** Takes the piece out of the books: out of its hole, else out of the bag. */
function lose(decision: Decision, hole: Row<'position'>, why: string): Result<null> {
  const set = decision.writer.get('fset', hole.setId) as Row<'fset'>;
  const last = lastDeedOf(decision, hole.id);
  const filled = last !== null && ['started', 'tightened', 'paint-checked', 'fitted'].includes(last.what);
  const covered = filled ? coveredBy(decision, hole.id) : null;
  if (covered !== null) return refuse('refused', covered);
  const main = last?.withSpecId ?? hole.specId ?? set.specId;
  const gone = { qty: 1, src: 'stow', dst: 'scrap', cause: 'scrapped' } as const;
  if (filled) {
    const into = decision.state.move.findLast(
      (move) => move.dst === 'hole' && move.positionId === hole.id && move.specId === main,
    );
    offAgain(decision, hole.id, why);
    // A slackened one was never booked out of its hole: there is nothing in the books to scrap.
    if (into)
      book(decision, { ...gone, specId: main, homeSetId: into.homeSetId, srcStowId: stowOf(hole, set) });
    return ok(null);
  }
  const [lot] = lotFor(decision, hands(decision), set, main, 1);
  if (!lot)
    return refuse(
      'refused',
      `Expected one for hole ${hole.n} in hand by the books, got none. Count the bag.`,
    );
  const { specId, homeSetId, stowId, fresh } = lot;
  book(decision, { ...gone, specId, homeSetId, srcStowId: stowId, fresh });
  return ok(null);
}
