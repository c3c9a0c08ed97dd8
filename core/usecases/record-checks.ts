import { generateKeyBetween } from 'fractional-indexing';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row, TableName } from '../model/tables.ts';
import { wouldCloseCycle } from '../reinstall/index.ts';
import type { Decision } from './frame.ts';
import { logOrder } from './log/order.ts';

const words = (text: string): string => text.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** Fields that have a verb of their own, because pieces or other rows move with them. */
const OWN_VERB: Partial<Record<TableName, Record<string, string>>> = {
  fset: { how: 'set.takeOut', stowId: 'set.stow' },
  position: { stowId: 'set.stow', setId: 'removal.split' },
  removal: { ord: 'removal.reorder' },
};

/** Refuses fields that may not be written this way; says which verb does. */
export function fieldProblem(table: TableName, values: Record<string, unknown>): Result<null> {
  for (const field of ['id', 'jobId'])
    if (field in values)
      return refuse('input', `Expected fields to change, and ${field} is not one of them.`);
  for (const [field, verb] of Object.entries(OWN_VERB[table] ?? {}))
    if (field in values)
      return refuse(
        'input',
        `Expected ${words(field)} to be changed with ${verb}, since pieces move with it.`,
      );
  if (table === 'removal' && values['phase'] === 'void')
    return refuse('input', 'Expected a removal to be made void with removal.void, which asks for a reason.');
  return ok(null);
}

/** A need points to an earlier entry; the user's own order closes no ring. */
export function graphProblem(decision: Decision, table: TableName, row: unknown): Result<null> {
  if (table === 'need') {
    const need = row as Row<'need'>;
    const order = logOrder(decision.state.removal).map((removal) => removal.id);
    const at = order.indexOf(need.removalId);
    const before = order.indexOf(need.needsId);
    if (at < 0 || before < 0) return refuse('not-found', 'Expected a need between two removals of this job.');
    if (before >= at)
      return refuse(
        'refused',
        `Expected a removal before number ${at + 1} that it needs, got number ${before + 1}. Only what came off earlier can have been needed.`,
      );
  }
  if (table === 'backOrder') {
    const order = row as Row<'backOrder'>;
    const ring = wouldCloseCycle(decision.state, order.beforeId, order.afterId);
    if (ring) return refuse('refused', ring.sentence);
  }
  return ok(null);
}

const SIBLINGS: Partial<Record<TableName, string | null>> = {
  removal: null,
  ownStep: null,
  ready: null,
  action: 'removalId',
  fset: 'removalId',
  stackItem: 'setId',
};

/** What a new row gets when it was not said: an order key after its siblings, the time, the next number. */
export function defaultsFor(decision: Decision, table: TableName, values: Record<string, unknown>): object {
  const defaults: Record<string, unknown> = {};
  const owner = SIBLINGS[table];
  if (owner !== undefined) {
    const rows = decision.state[table as 'action'] as readonly Record<string, unknown>[];
    const siblings = owner === null ? rows : rows.filter((row) => row[owner] === values[owner]);
    const last =
      siblings
        .map((row) => row['ord'] as string)
        .sort()
        .at(-1) ?? null;
    defaults['ord'] = generateKeyBetween(last, null);
  }
  if (table === 'asFound') defaults['at'] = decision.at;
  if (table === 'away') defaults['since'] = decision.at;
  if (table === 'photo') defaults['addedAt'] = decision.at;
  if (table === 'isolation') defaults['byPersonId'] = decision.personId;
  if (table === 'removal') {
    defaults['startedAt'] = decision.at;
    defaults['personId'] = decision.personId;
    defaults['zone'] = decision.state.job.zone;
  }
  if (table === 'marker' || table === 'position') {
    const key = table === 'marker' ? 'photoId' : 'setId';
    const rows = decision.state[table] as readonly Record<string, unknown>[];
    const numbers = rows.filter((row) => row[key] === values[key]).map((row) => row['n'] as number);
    defaults['n'] = Math.max(0, ...numbers) + 1;
  }
  return defaults;
}
