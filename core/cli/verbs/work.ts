import { readFileSync } from 'node:fs';
import { v7 } from 'uuid';
import { type Answer, fine, found, ofReply, type Options, refusal, type Verb, wrongUsage } from '../frame.ts';
import { openSearches } from '../../tally/index.ts';
import { stowOf, targetOf } from '../target.ts';
import { inJob, BAD_TIME, text, timeOf } from './in-job.ts';
import { overThing } from './over-thing.ts';
import { runTick } from './tick.ts';

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
  if (lines.every((line) => line.trim() === ''))
    return wrongUsage('Expected entry lines: log --job ID “5 13” “lower cover”.');
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
            `Expected the id of an open search. Open: ${
              openSearches(state())
                .map((one) => `${one.countingId} (${one.missing} × ${one.name})`)
                .join(', ') || 'none'
            }.`,
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
    says: 'what was done on the way back; TARGET is 4 (removal), 4/1 (its first set), 4/1/3 (hole 3), 4/gasket (by name in removal 4), a name or an id',
    options: ['job', 'what', 'round', 'value', 'accept', 'why', 'at'],
    switches: ['ticked', 'new', 'old'],
    run: runTick,
  },
  {
    ...overThing(
      'broke',
      'broke HOLE [--why TEXT] [--out]',
      'a fastener broke off in its hole on the way back: scrapped, the hole blocked until it is repaired; --out: spoilt, but all of it came out',
      async (client, input, options) =>
        client.tick.broke({
          ...input,
          stuck: options.flags['out'] !== true,
          why: text(options, 'why') ?? '',
        }),
    ),
    switches: ['out'],
  },
  overThing(
    'again',
    'again TARGET [--why TEXT]',
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
    'keep-old',
    'keep-old TARGET --why TEXT',
    'turns down "must be renewed", with a reason that is kept',
    async (client, input, options) =>
      client.renew.override({ ...input, renew: 'overridden', why: text(options, 'why') ?? '' }),
    {},
    ['why'],
  ),
  {
    name: 'accept',
    usage: 'accept FINDING --why TEXT [--job ID] [--who NAME]',
    says: 'passes an open point by name and reason',
    options: ['job', 'why'],
    run: (options) => {
      const finding = options.words.join(' ').trim();
      const why = (text(options, 'why') ?? '').trim();
      if (finding === '' || why === '')
        return wrongUsage(
          'Expected an open point, as reinstall prints it in [ ], and --why with a reason: accept part.no-stow:… --why “it lies on the bench”.',
        );
      return inJob(options, async ({ id, client }) =>
        ofReply(await client.finding.accept({ command: v7(), jobId: id, finding, why })),
      );
    },
  },
];
