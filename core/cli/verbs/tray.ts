import { readFileSync } from 'node:fs';
import { v7 } from 'uuid';
import type { HoleGroup, TrayAnswer, TrayRow } from '../../contract/tray.ts';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  ofReply,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { stowOf } from '../target.ts';

const text = (options: Options, name: string): string | undefined => {
  const value = options.flags[name];
  return typeof value === 'string' ? value : undefined;
};

const unitOf = (options: Options): { unit?: 'mm' | 'in' } | null => {
  const typed = text(options, 'unit');
  if (typed === undefined) return {};
  return typed === 'mm' || typed === 'in' ? { unit: typed } : null;
};

/** "Pump cover, bag 1, 4 open". */
const homeWords = ({ name, bag, open }: HoleGroup['homes'][number]): string =>
  [name || 'no name', bag, `${open} open`].filter((word) => word !== '').join(', ');

function answerLines(answer: TrayAnswer): string[] {
  const name = new Map(answer.groups.map((group) => [group.key, group]));
  const homes = (key: string) => (name.get(key)?.homes ?? []).map(homeWords).join('; ');
  const says = new Map(answer.rows.map((row) => [row.row, row.says]));
  return [
    ...answer.assigned.map(
      (one) =>
        `Row ${one.row}: ${one.qty} × ${says.get(one.row) ?? ''} → ${name.get(one.key)?.what ?? ''} [${homes(one.key)}] (${one.says})${one.doubt === null ? '' : `. Doubtful: ${one.doubt}`}`,
    ),
    ...answer.groups
      .filter((group) => group.short > 0)
      .map((group) => `Short: ${group.short} × ${group.what} [${homes(group.key)}]`),
    ...answer.groups
      .filter((group) => group.assigned > 0 && group.mustBeNew)
      .map((group) => `Must be new: ${group.what} [${homes(group.key)}]`),
    ...answer.leftOver.map(
      (one) => `Left over: row ${one.row}, ${one.qty} × ${says.get(one.row) ?? ''}. ${one.says}`,
    ),
    ...answer.alike.map((one) => one.sentence),
  ];
}

async function runSpill(options: Options): Promise<Answer> {
  const file = text(options, 'tray');
  const unit = unitOf(options);
  if (file === undefined) return wrongUsage('Expected --tray with a CSV file of loose fasteners.');
  if (!unit) return wrongUsage('Expected --unit mm or in.');
  let csv: string;
  try {
    csv = readFileSync(file, 'utf8');
  } catch {
    return wrongUsage(`Expected a CSV file that can be read, got ${file}.`);
  }
  const into = /^(bag|tin|tray|shelf)\s+(.+)$/.exec(text(options, 'into') ?? '');
  if (text(options, 'into') !== undefined && !into)
    return wrongUsage('Expected --into such as “tray 2” or “bag 14”.');
  const accept = options.flags['accept'] === true;
  return (accept ? writing : reading)(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const state = context.workshop.job(job.value);
    const from: string[] = [];
    for (const typed of (text(options, 'from') ?? '').split(',').filter((one) => one.trim() !== '')) {
      const stow = state ? stowOf(state, typed) : null;
      if (!stow?.ok) return refusal(stow?.fault ?? { code: 'not-found', sentence: 'No such job.' });
      from.push(stow.value);
    }
    const read = await client.tray.read({ text: csv, ...unit });
    if (!read.ok) return refusal(read.fault);
    const { rows, said } = read.value;
    const reply = await client.tray.match({ jobId: job.value, rows, from, ...unit });
    if (!reply.ok) return refusal(reply.fault);
    const answer = reply.value;
    const lines = [...said.map((one) => one.sentence), ...answerLines(answer)];
    const open =
      said.length > 0 ||
      answer.assigned.some((one) => one.doubt !== null) ||
      answer.leftOver.length > 0 ||
      answer.groups.some((group) => group.short > 0);
    if (!accept)
      return (open ? found : fine)({ said, ...answer }, lines.length > 0 ? lines : ['Nothing fits.']);
    const booked = await client.tray.accept({
      command: v7(),
      jobId: job.value,
      rows,
      from,
      into: into ? { kind: into[1] as 'bag', label: into[2] ?? '' } : null,
      doubtful: options.flags['doubtful'] === true,
      ...unit,
    });
    if (!booked.ok) return refusal(booked.fault);
    const asked = booked.value.doubtful > 0 ? [' To book them all the same: add --doubtful.'] : [];
    return (open ? found : fine)({ said, ...answer, booked: booked.value }, [
      ...lines,
      [booked.value.said, ...asked].join(''),
    ]);
  });
}

const MEASURES = ['thread', 'diameter', 'pitch', 'length', 'tolerance', 'head', 'kind'] as const;

async function runUnknown(options: Options): Promise<Answer> {
  const unit = unitOf(options);
  if (!unit) return wrongUsage('Expected --unit mm or in.');
  const row = {
    row: 1,
    count: '1',
    note: '',
    ...(Object.fromEntries(MEASURES.map((name) => [name, text(options, name) ?? ''])) as Omit<
      TrayRow,
      'row' | 'count' | 'note'
    >),
  };
  return reading(options, async (_context, client) => {
    const reply = await client.bolt.whose({ row, ...unit });
    if (!reply.ok) return refusal(reply.fault);
    const lines = reply.value.hits.map((hit, i) => {
      const homes = hit.homes.map(homeWords).join('; ');
      const sought = hit.lookedFor > 0 ? `; ${hit.lookedFor} looked for` : '';
      return `${i + 1}. ${hit.jobTitle}: ${hit.what} [${homes}${sought}] (${hit.says})`;
    });
    const all = [reply.value.sentence, ...lines];
    return reply.value.fits ? fine(reply.value, all) : found(reply.value, all);
  });
}

async function runLost(options: Options): Promise<Answer> {
  const what = options.words.join(' ').trim();
  if (what === '')
    return reading(options, async (context, client) => {
      const job = jobIdOf(context, options.flags['job']);
      if (!job.ok) return refusal(job.fault);
      const reply = await client.jobs.view({ jobId: job.value });
      if (!reply.ok) return refusal(reply.fault);
      const { searches } = reply.value;
      const lines = searches.flatMap((search) => [
        `${search.countingId}  ${search.name}: ${search.missing} looked for. ${search.lastSeen.sentence}`,
        ...search.lookAt.map((line) => `    ${line}`),
      ]);
      return searches.length > 0 ? found(searches, lines) : fine([], ['Nothing is looked for.']);
    });
  const qty = Number(text(options, 'qty') ?? '1');
  if (!Number.isInteger(qty) || qty < 1) return wrongUsage('Expected --qty as a whole number.');
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    return ofReply(
      await client.item.lost({
        command: v7(),
        jobId: job.value,
        what,
        qty,
        thingId: null,
        note: text(options, 'why') ?? '',
      }),
    );
  });
}

/** Verbs for what lies on the floor, and what is not found. */
export const TRAY_VERBS: readonly Verb[] = [
  {
    name: 'spill',
    usage:
      'spill [--job ID] --tray FILE.csv [--unit mm|in] [--from BAG,BAG] [--accept [--doubtful] [--into "tray 2"]]',
    says: 'loose fasteners, measured → the holes they belong to; with --from only what lay in those bags; --accept books it, --doubtful also what went to holes whose size nobody wrote down',
    options: ['job', 'tray', 'unit', 'from', 'into'],
    switches: ['accept', 'doubtful'],
    run: runSpill,
  },
  {
    name: 'unknown-bolt',
    usage:
      'unknown-bolt [--thread M8] [--diameter 7.9 --pitch 1.25] [--length 25] [--tolerance 1] [--head 13] [--kind nut] [--unit mm|in]',
    says: 'a bolt from the floor against every open hole of every job, best first',
    options: [...MEASURES, 'unit'],
    run: runUnknown,
  },
  {
    name: 'lost',
    usage: 'lost [--job ID] [WHAT…] [--qty N] [--why TEXT]',
    says: 'opens a search for a rag, cap, tool, key or broken-off bit (“10 mm socket”); without WHAT, lists the searches',
    options: ['job', 'qty', 'why'],
    run: runLost,
  },
];
