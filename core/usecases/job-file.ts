import { JOB_TABLES, type Row, TABLE_NAMES, TABLES, type TableName, THING_TABLES } from '../model/tables.ts';
import { type JobFile, readJobFile, stateOfFile, toJobFile } from '../model/job-file.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import { moveProblems } from '../tally/index.ts';
import type { Writer } from '../store/writer.ts';
import { type Context, inWorkshop, type Reply } from './frame.ts';
import { besideOthers } from './stow-labels.ts';
import { jobState } from './views.ts';

/** The text of a job file: the same job gives the same text. */
export function jobExport(
  context: Context,
  jobId: string,
  options: { readonly withoutContact: boolean },
): Result<{ text: string; originals: string[] }> {
  const state = jobState(context, jobId);
  if (!state.ok) return state;
  const file = toJobFile(state.value, options);
  return ok({
    text: `${JSON.stringify(file, null, 1)}\n`,
    originals: file.workshop.original.filter((original) => !original.gone).map((original) => original.id),
  });
}

export interface Imported {
  readonly id: string;
  readonly title: string;
  readonly originals: readonly Row<'original'>[];
  readonly relabelled: string[];
  readonly said: string;
}

/** What a job file must hold beside valid rows: own rows only, each thing with its row, books that close. */
function fileProblem(file: JobFile): string | null {
  const things = new Map<string, string>();
  for (const thing of (file.rows['thing'] ?? []) as Row<'thing'>[]) things.set(thing.id, thing.kind);
  for (const table of JOB_TABLES) {
    const seen = new Set<string>();
    for (const row of (file.rows[table] ?? []) as { id: string; jobId: string }[]) {
      if (row.jobId !== file.job.id) return `In ${table}, row ${row.id} belongs to another job.`;
      if (seen.has(row.id)) return `In ${table}, row ${row.id} is there twice.`;
      seen.add(row.id);
    }
  }
  for (const [table, kind] of Object.entries(THING_TABLES))
    for (const row of (file.rows[table] ?? []) as { id: string }[])
      if (things.get(row.id) !== kind)
        return `In ${table}, row ${row.id} is not listed among the things as ${kind}.`;
      else things.delete(row.id);
  if (things.size > 0) return `${things.size} things are listed that have no row of their own.`;
  const problems = moveProblems(stateOfFile(file));
  return problems[0] ? `The books of pieces do not close: ${problems[0].sentence}` : null;
}

/** Labels that are in use here already get the job's name added, since a label is in use once. */
function freeLabel(
  writer: Writer,
  taken: ReadonlySet<string>,
  stow: Row<'stow'>,
  title: string,
): Row<'stow'> {
  if (stow.emptied || !taken.has(`${stow.kind} ${stow.label}`)) return stow;
  for (let n = 1; ; n += 1) {
    const label = besideOthers(stow.label, title, n);
    if (!taken.has(`${stow.kind} ${label}`)) return { ...stow, label };
  }
}

/** Puts a job file's rows into the workshop: one command, so one undo; nothing is written when anything is wrong. */
export function jobImport(context: Context, input: { command: string; text: string }): Reply<Imported> {
  const read = readJobFile(input.text);
  if ('sentence' in read) return { ok: false, fault: { code: 'input', sentence: read.sentence } };
  const { file } = read;
  const problem = fileProblem(file);
  if (problem)
    return {
      ok: false,
      fault: { code: 'input', sentence: `Expected a job file that holds together. ${problem}` },
    };
  const { workshop } = context;
  return inWorkshop(context, 'jobs.import', { command: input.command, chain: file.job.id }, (writer) => {
    if (writer.get('job', file.job.id))
      return refuse(
        'refused',
        `The job “${file.job.title}” is in this workshop already. Nothing was changed.`,
      );
    const taken = new Set(
      (workshop.db.prepare('SELECT kind, label FROM stow WHERE emptied = 0').all() as Row<'stow'>[]).map(
        (stow) => `${stow.kind} ${stow.label}`,
      ),
    );
    const relabelled: string[] = [];
    for (const table of ['person', 'tool', 'original'] as const)
      for (const row of file.workshop[table] as readonly Row<typeof table>[])
        if (!writer.get(table, row.id)) writer.put(table, row);
    for (const stow of file.workshop.stow) {
      if (writer.get('stow', stow.id)) continue;
      const free = freeLabel(writer, taken, stow, file.job.title);
      if (free !== stow) relabelled.push(`${stow.kind} ${stow.label} is ${free.kind} ${free.label} here`);
      taken.add(`${free.kind} ${free.label}`);
      writer.put('stow', free);
    }
    const absent = (id: string | null) =>
      id !== null && workshop.jobs().some((job) => job.id === id) ? id : null;
    writer.put('job', {
      ...file.job,
      earlierJobId: absent(file.job.earlierJobId),
      patternJobId: absent(file.job.patternJobId),
    });
    putRows(writer, file);
    return ok({
      id: file.job.id,
      title: file.job.title,
      originals: file.workshop.original,
      relabelled,
      said: `Job “${file.job.title}” is in this workshop.${relabelled.length > 0 ? ` ${relabelled.join('; ')}.` : ''}`,
    });
  });
}

function putRows(writer: Writer, file: JobFile): void {
  for (const table of TABLE_NAMES)
    if (TABLES[table].scope === 'job')
      for (const row of (file.rows[table] ?? []) as Row<TableName>[]) writer.put(table, row);
}
