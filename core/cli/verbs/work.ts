import { readFileSync } from 'node:fs';
import { v7 } from 'uuid';
import type { JobState } from '../../model/tables.ts';
import { DeedWhat } from '../../model/work.ts';
import {
  type Answer,
  type Client,
  fine,
  found,
  jobIdOf,
  ofReply,
  type Options,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { stowOf, targetOf } from '../target.ts';
import type { Context } from '../../usecases/frame.ts';

type InJob = (job: {
  id: string;
  state: () => JobState;
  client: Client;
  context: Context;
}) => Promise<Answer> | Answer;

/** Opens for writing and finds the job named. */
function inJob(options: Options, run: InJob): Promise<Answer> {
  return writing(options, (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const id = job.value;
    return run({ id, client, context, state: () => context.workshop.job(id) as JobState });
  });
}

const text = (options: Options, name: string): string | undefined => {
  const value = options.flags[name];
  return typeof value === 'string' ? value : undefined;
};

/** Milliseconds for --at: a time as ISO 8601, or nothing for now. */
function timeOf(options: Options): { at?: number } | null {
  const typed = text(options, 'at');
  if (typed === undefined) return {};
  const ms = Date.parse(typed);
  return Number.isNaN(ms) ? null : { at: ms };
}

const BAD_TIME = 'Expected --at as a time such as 2026-11-25T14:02Z.';

function linesOf(options: Options): string[] | null {
  const file = text(options, 'file');
  if (file === undefined) return [...options.words];
  try {
    return readFileSync(file, 'utf8')
      .split(/\r?\n/)
      .filter((line) => line.trim() !== '' && !line.startsWith('#'));
  } catch {
    return null;
  }
}

async function runLog(options: Options): Promise<Answer> {
  const lines = linesOf(options);
  if (lines === null)
    return wrongUsage(`Expected a file of entry lines, got ${text(options, 'file') ?? ''}.`);
  if (lines.length === 0) return wrongUsage('Expected entry lines: log --job ID “5 13” “lower cover”.');
  const time = timeOf(options);
  if (!time) return wrongUsage(BAD_TIME);
  return inJob(options, async ({ id, state, client }) => {
    const values: unknown[] = [];
    const said: string[] = [];
    let into: string | null = null;
    const named = text(options, 'removal');
    if (named !== undefined) {
      const target = targetOf(state(), named);
      if (!target.ok) return refusal(target.fault);
      into = target.value;
    }
    for (const raw of lines) {
      // A line that begins with "+" goes on with the removal before it.
      const more = raw.startsWith('+');
      const reply = await client.log.add({
        command: v7(),
        jobId: id,
        text: more ? raw.slice(1).trim() : raw,
        removalId: into !== null && (more || named !== undefined) ? into : null,
        ...time,
      });
      if (!reply.ok) return refusal({ ...reply.fault, sentence: `“${raw}”: ${reply.fault.sentence}` });
      into = reply.value.removalId;
      values.push(reply.value);
      said.push(reply.value.said);
    }
    const doubtful = values.some((value) => (value as { notUnderstood: string[] }).notUnderstood.length > 0);
    return doubtful ? found(values, said) : fine(values, said);
  });
}

async function runTick(options: Options): Promise<Answer> {
  const what = DeedWhat.safeParse(text(options, 'what') ?? 'done');
  if (!what.success) return wrongUsage(`Expected --what as one of: ${DeedWhat.options.join(', ')}.`);
  const round = text(options, 'round');
  if (options.words.length === 0)
    return wrongUsage('Expected what to tick: tick --job ID 4, or 4/1/3, or a name.');
  const time = timeOf(options);
  if (!time) return wrongUsage(BAD_TIME);
  const accept = acceptsOf(options);
  if (!accept) return wrongUsage('Expected --accept as FINDING=REASON.');
  return inJob(options, async ({ id, state, client }) => {
    const thingIds: string[] = [];
    for (const word of options.words) {
      const target = targetOf(state(), word);
      if (!target.ok) return refusal(target.fault);
      thingIds.push(target.value);
    }
    if (round !== undefined) {
      const accepted = accept.length > 0 ? { accept } : {};
      const holeIds = holesAmong(state(), thingIds);
      return ofReply(
        await client.tick.round({ command: v7(), jobId: id, holeIds, round, ...time, ...accepted }),
      );
    }
    const value = text(options, 'value');
    return ofReply(
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

/** A verb over one thing of the job. */
function overThing(
  name: string,
  usage: string,
  says: string,
  call: (
    client: Client,
    input: { command: string; jobId: string; thingId: string },
    options: Options,
  ) => Promise<Parameters<typeof ofReply>[0]>,
  more: readonly string[] = [],
): Verb {
  return {
    name,
    usage,
    says,
    options: ['job', 'why', ...more],
    run: (options) =>
      inJob(options, async ({ id, state, client }) => {
        const target = targetOf(state(), options.words.join(' '));
        if (!target.ok) return refusal(target.fault);
        return ofReply(await call(client, { command: v7(), jobId: id, thingId: target.value }, options));
      }),
  };
}

async function runCount(options: Options): Promise<Answer> {
  const [bag, typed] = [options.words.slice(0, -1).join(' '), options.words.at(-1)];
  const counted = Number(typed);
  if (bag === '' || typed === undefined || !Number.isInteger(counted) || counted < 0)
    return wrongUsage('Expected a bag and a whole number: count --job ID bag 4 7.');
  return inJob(options, async ({ id, state, client }) => {
    const stow = stowOf(state(), bag);
    if (!stow.ok) return refusal(stow.fault);
    const reply = await client.piece.count({ command: v7(), jobId: id, stowId: stow.value, counted });
    if (!reply.ok) return refusal(reply.fault);
    const { value } = reply;
    return value.counted === value.expected ? fine(value, [value.said]) : found(value, [value.said]);
  });
}

function searchVerb(name: 'found' | 'gone', says: string): Verb {
  return {
    name,
    usage: `${name} SEARCH-ID --why TEXT [--job ID]`,
    says,
    options: ['job', 'why'],
    run: (options) =>
      inJob(options, async ({ id, state, client }) => {
        const open = state().counting.filter((row) => row.ended === null);
        const typed = options.words[0];
        const row =
          open.find((one) => one.id === typed) ?? (typed === undefined && open.length === 1 ? open[0] : null);
        if (!row)
          return wrongUsage(
            `Expected the id of an open search. Open: ${open.map((one) => one.id).join(', ') || 'none'}.`,
          );
        const why = text(options, 'why') ?? '';
        const base = { command: v7(), jobId: id, countingId: row.id };
        if (name === 'found') return ofReply(await client.piece.found({ ...base, where: why }));
        if (why === '') return wrongUsage('Expected --why with a reason: it is kept with your name.');
        return ofReply(await client.piece.gone({ ...base, why }));
      }),
  };
}

/** Verbs of taking apart and putting back. */
export const WORK_VERBS: readonly Verb[] = [
  {
    name: 'log',
    usage: 'log [--job ID] LINE… | --file FILE [--removal N] [--at TIME]',
    says: 'entry lines as typed on the screen; a line that begins with + goes on with the removal before it',
    options: ['job', 'file', 'removal', 'at'],
    run: runLog,
  },
  {
    name: 'tick',
    usage:
      'tick [--job ID] TARGET… [--what DEED] [--round "30 %"] [--value TEXT] [--ticked] [--new|--old] [--accept FINDING=REASON] [--at TIME]',
    says: 'what was done on the way back; TARGET is 4 (removal), 4/1 (its first set), 4/1/3 (hole 3), a name or an id',
    options: ['job', 'what', 'round', 'value', 'accept', 'why', 'at'],
    switches: ['ticked', 'new', 'old'],
    run: runTick,
  },
  overThing(
    'again',
    'again TARGET --why TEXT',
    'it came off again: opens the next round',
    async (client, input, options) => client.tick.again({ ...input, why: text(options, 'why') ?? '' }),
  ),
  {
    name: 'count',
    usage: 'count [--job ID] BAG NUMBER',
    says: 'a bag counted by hand; a difference opens a search',
    options: ['job'],
    run: runCount,
  },
  searchVerb('found', 'ends a search: found again'),
  searchVerb('gone', 'ends a search: searched, not found, written off by name'),
  overThing(
    'receive',
    'receive TARGET --qty N',
    'new pieces in hand for a set or a part',
    async (client, { thingId, ...rest }, options) =>
      client.piece.receive({
        ...rest,
        thingId,
        qty: Number(text(options, 'qty') ?? '1'),
        stowId: null,
      }),
    ['qty'],
  ),
  overThing(
    'send',
    'send TARGET --to NAME [--due DATE]',
    'sent out: to be repaired, coated, measured',
    async (client, input, options) =>
      client.away.send({
        ...input,
        toWhom: text(options, 'to') ?? '',
        due: text(options, 'due') === undefined ? null : Date.parse(text(options, 'due') ?? ''),
        note: text(options, 'why') ?? '',
      }),
    ['to', 'due'],
  ),
  overThing(
    'keep-old',
    'keep-old TARGET --why TEXT',
    'turns down "must be renewed", with a reason that is kept',
    async (client, input, options) =>
      client.renew.override({ ...input, renew: 'overridden', why: text(options, 'why') ?? '' }),
  ),
  {
    name: 'accept',
    usage: 'accept FINDING --why TEXT [--job ID] [--who NAME]',
    says: 'passes an open point by name and reason',
    options: ['job', 'why'],
    run: (options) =>
      inJob(options, async ({ id, client }) =>
        ofReply(
          await client.finding.accept({
            command: v7(),
            jobId: id,
            finding: options.words.join(' '),
            why: text(options, 'why') ?? '',
          }),
        ),
      ),
  },
];
