import { v7 } from 'uuid';
import { doneOf, sayDone } from '../../model/done.ts';
import type { JobState } from '../../model/tables.ts';
import { removalIdOf, removalWords } from '../../model/thing-words.ts';
import { DeedWhat } from '../../model/work.ts';
import { logOrder } from '../../usecases/log/order.ts';
import { momentOf } from '../day.ts';
import { stoppedLines } from '../stopped.ts';
import { type Answer, fine, type Options, refusal, wrongUsage } from '../frame.ts';
import { targetOf } from '../target.ts';
import { BAD_TIME, inJob, text, timeOf } from './in-job.ts';

type Reply = { ok: true; value: { said: string } } | { ok: false; fault: Parameters<typeof refusal>[0] };

/** In one line: how many, of which removal, what was done to which thing, set and hole, and how to take it back. */
function tickedAnswer(
  reply: Reply,
  state: JobState,
  before: ReadonlySet<string>,
  whole: readonly string[],
  now: number,
): Answer {
  if (!reply.ok) {
    const answer = refusal(reply.fault);
    const lines = stoppedLines(state, now, reply.fault.points ?? []);
    return lines ? { ...answer, lines } : answer;
  }
  const order = logOrder(state.removal).map((one) => one.id);
  const isNew = (deed: { readonly id: string }) => !before.has(deed.id);
  const things = new Map<string | null, Set<string>>();
  for (const { thingId } of state.deed.filter(isNew)) {
    const home = removalIdOf(state, thingId);
    things.set(home, (things.get(home) ?? new Set()).add(thingId));
  }
  const told = [...things].map(([home, ids]) => {
    const done = doneOf(state, ids, isNew).map(sayDone).join('; ');
    return home === null
      ? `${done}.`
      : `Removal ${order.indexOf(home) + 1} ${removalWords(state, home)}: ${done}.`;
  });
  const back = new Set(
    state.deed.filter((deed) => isNew(deed) && deed.what === 'done').map((deed) => deed.thingId),
  );
  const open = whole
    .filter((id) => !back.has(id))
    .map((id) => `Removal ${order.indexOf(id) + 1} ${removalWords(state, id)} is not said to be back yet.`);
  return fine(reply.value, [[reply.value.said, ...told, ...open, '“undo” takes it back.'].join(' ')]);
}

/** Which of these had not come off yet at that time (UTC ms); null = all had. */
function notYetOff(state: JobState, thingIds: readonly string[], at: number): string | null {
  const order = logOrder(state.removal);
  for (const id of thingIds) {
    const home = removalIdOf(state, id);
    const i = order.findIndex((one) => one.id === home);
    const off = order[i]?.startedAt ?? null;
    if (off === null || off <= at) continue;
    const { zone } = state.job;
    return `Removal ${i + 1} ${removalWords(state, home)} had not come off yet at ${momentOf(at, zone)}: that was at ${momentOf(off, zone)}. Expected --at with a later time.`;
  }
  return null;
}

/** What was done on the way back, as the verb `tick` is given it. */
export async function runTick(options: Options): Promise<Answer> {
  const what = DeedWhat.safeParse(text(options, 'what') ?? 'done');
  if (!what.success)
    return wrongUsage(
      `Expected --what as one of: ${DeedWhat.options.filter((one) => one !== 'came off again').join(', ')}. What came off again is said with: again TARGET.`,
    );
  const round = text(options, 'round');
  if (options.words.length === 0)
    return wrongUsage('Expected what to tick: tick --job ID 4, or 4/1/3, or a name.');
  const time = timeOf(options);
  if (!time) return wrongUsage(BAD_TIME);
  const accept = acceptsOf(options);
  if (!accept) return wrongUsage('Expected --accept as FINDING=REASON.');
  return inJob(options, async ({ id, state, client, context }) => {
    const thingIds: string[] = [];
    for (const word of options.words) {
      const target = targetOf(state(), word);
      if (!target.ok) return refusal(target.fault);
      thingIds.push(target.value);
    }
    const early = time.at === undefined ? null : notYetOff(state(), thingIds, time.at);
    if (early !== null) return refusal({ code: 'input', sentence: early });
    const before = new Set(state().deed.map((deed) => deed.id));
    const removals = new Set(state().removal.map((one) => one.id));
    const whole =
      what.data === 'done' && round === undefined ? thingIds.filter((one) => removals.has(one)) : [];
    const told = (reply: Reply): Answer =>
      tickedAnswer(reply, state(), before, whole, context.workshop.now());
    if (round !== undefined) {
      const accepted = accept.length > 0 ? { accept } : {};
      const holeIds = holesAmong(state(), thingIds);
      return told(
        await client.tick.round({ command: v7(), jobId: id, holeIds, round, ...time, ...accepted }),
      );
    }
    const value = text(options, 'value');
    return told(
      await client.tick.do({
        command: v7(),
        jobId: id,
        thingIds,
        what: what.data,
        ...time,
        ...(value === undefined
          ? {}
          : { valueTyped: value, known: options.flags['ticked'] ? 'ticked' : 'read' }),
        ...(options.flags['new'] === true
          ? { fresh: true }
          : options.flags['old'] === true
            ? { fresh: false }
            : {}),
        ...(accept.length > 0 ? { accept } : {}),
        why: text(options, 'why') ?? '',
      }),
    );
  });
}

/** Holes as they are, and those of a set or of a whole removal. */
function holesAmong(state: JobState, thingIds: readonly string[]): string[] {
  const own = new Set(thingIds);
  const sets = new Set(
    state.fset.filter((set) => own.has(set.id) || own.has(set.removalId)).map((set) => set.id),
  );
  const holes = state.position.filter((hole) => sets.has(hole.setId)).map((hole) => hole.id);
  return holes.length > 0 ? holes : [...thingIds];
}

function acceptsOf(options: Options): { finding: string; why: string }[] | null {
  const typed = text(options, 'accept');
  if (typed === undefined) return [];
  const accepts: { finding: string; why: string }[] = [];
  for (const one of typed.split('\n')) {
    const at = one.indexOf('=');
    if (at < 1 || one.slice(at + 1).trim() === '') return null;
    accepts.push({ finding: one.slice(0, at), why: one.slice(at + 1).trim() });
  }
  return accepts;
}
