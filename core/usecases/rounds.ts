import { makerStages, readRound, type RoundDeed } from '../fastening/index.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { lastDeedOf, ticked } from './ticks.ts';

interface RoundInput extends JobInput {
  readonly holeIds: readonly string[];
  readonly round: string;
  readonly accept?: readonly { readonly finding: string; readonly why: string }[] | undefined;
}

/** What a round does to one hole: how far it is pulled, N·m, where that is known. */
interface Pull {
  readonly what: 'started' | 'tightened' | 'pulled' | 'once around';
  readonly torqueNm: number | null;
}

/** A round of shares by the torque of the set; a stage by the maker's own, the last of which makes it tight. */
function pullOf(deed: RoundDeed, set: Row<'fset'>): Pull {
  const fullNm = set.torqueMnm === null ? null : set.torqueMnm / 1000;
  switch (deed.kind) {
    case 'snug':
      return { what: 'started', torqueNm: null };
    case 'tight':
      return { what: 'tightened', torqueNm: null };
    case 'once around':
      return { what: 'once around', torqueNm: null };
    case 'pulled':
      return { what: 'pulled', torqueNm: fullNm === null ? null : fullNm * deed.share };
    case 'stage': {
      const stages = makerStages(set.stages.join(' + '), set.torqueTyped);
      const stage = stages[deed.stage - 1];
      if (stage === undefined || deed.stage === stages.length) return { what: 'tightened', torqueNm: null };
      return { what: 'pulled', torqueNm: stage.kind === 'torque' ? stage.torque.torqueNm : null };
    }
  }
}

/** Keeps that a hole is through a round: a further deed of the same state, with the round's name and figure. */
function keep(decision: Decision, hole: Row<'position'>, round: string, pull: Pull): Result<boolean> {
  const last = lastDeedOf(decision, hole.id);
  const isTight = last?.what === 'tightened' || last?.what === 'paint-checked';
  const around = pull.what === 'once around';
  if (around && !isTight)
    return refuse('refused', `Hole ${hole.n} is not tight yet: once around comes after full torque.`);
  if (!around && !isTight && last?.what !== 'started')
    return refuse('refused', `Hole ${hole.n} is not started by hand yet.`);
  // Tight already: a share of the torque is behind it.
  if (!last || (!around && isTight) || last.valueTyped === round) return ok(false);
  decision.writer.put('deed', {
    ...last,
    id: decision.newId(),
    what: around ? 'tightened' : 'started',
    value: pull.torqueNm,
    valueTyped: round,
    known: 'ticked',
    toolId: null,
    personId: decision.personId,
    at: decision.at,
    why: '',
  });
  return ok(true);
}

/**
 * Holes that went through one round of tightening, so that another window and the next day go on at the very hole.
 * The round is named as the rounds of the joint are: "snug", "30 %", "stage 2", "100 %", "once around".
 */
export function tickRound(context: Context, input: RoundInput): Reply<{ said: string }> {
  return inJob(context, 'tick.round', input, (decision) => {
    const deed = readRound(input.round);
    if (!deed)
      return refuse(
        'input',
        `Expected a round such as snug, 30 %, stage 2, 100 % or once around, got “${input.round}”.`,
      );
    const holes: Record<'started' | 'tightened', string[]> = { started: [], tightened: [] };
    let count = 0;
    for (const id of input.holeIds) {
      const hole = rowIn(decision, 'position', id, 'hole');
      if (!hole.ok) return hole;
      const set = rowIn(decision, 'fset', hole.value.setId, 'set');
      if (!set.ok) return set;
      const pull = pullOf(deed, set.value);
      if (pull.what === 'started' || pull.what === 'tightened') {
        holes[pull.what].push(id);
        continue;
      }
      const kept = keep(decision, hole.value, input.round.trim(), pull);
      if (!kept.ok) return kept;
      if (kept.value) count += 1;
    }
    return plainTicks(decision, input, holes, count);
  });
}

/** Snug and full torque are the plain ticks of a hole, with their pieces and gates. */
function plainTicks(
  decision: Decision,
  input: RoundInput,
  holes: Record<'started' | 'tightened', string[]>,
  kept: number,
): Result<{ said: string }> {
  const said: string[] = kept > 0 ? [`${kept} through ${input.round.trim()}.`] : [];
  for (const what of ['started', 'tightened'] as const) {
    if (holes[what].length === 0) continue;
    const done = ticked(decision, { ...input, thingIds: holes[what], what });
    if (!done.ok) return done;
    said.push(done.value.said);
  }
  return said.length > 0
    ? ok({ said: said.join(' ') })
    : refuse('refused', 'There is nothing left to tick here: it is so already.');
}
