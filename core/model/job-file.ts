import { z } from 'zod';
import { JOB_TABLES, type JobState, type Row, TABLES, type TableName } from './tables.ts';

const JOB_FILE_VERSION = 1;
/** Deepest nesting of a job file: rows hold at most a list of objects. */
const MAX_DEPTH = 8;
/** Rows of one table at the most: fifty times the largest job that was thought of. */
const MAX_ROWS = 500_000;

const rows = <T extends TableName>(table: T) => z.array(TABLES[table].schema).max(MAX_ROWS);

const jobRows = Object.fromEntries(JOB_TABLES.map((table) => [table, rows(table)]));

/** One job as a file: every row it holds, and the workshop's rows that it names. Photos lie beside it by their hash. */
export const JobFile = z.strictObject({
  everybolt: z.literal('job'),
  version: z.literal(JOB_FILE_VERSION),
  job: TABLES.job.schema,
  workshop: z.strictObject({
    person: rows('person'),
    tool: rows('tool'),
    stow: rows('stow'),
    original: rows('original'),
  }),
  rows: z.strictObject(jobRows),
});

export interface JobFile {
  readonly everybolt: 'job';
  readonly version: 1;
  readonly job: Row<'job'>;
  readonly workshop: {
    readonly person: readonly Row<'person'>[];
    readonly tool: readonly Row<'tool'>[];
    readonly stow: readonly Row<'stow'>[];
    readonly original: readonly Row<'original'>[];
  };
  readonly rows: Readonly<Record<string, readonly unknown[]>>;
}

/** The published JSON Schema of the job file, made from the same schemas that check it. */
export function jobFileSchema(): object {
  return {
    title: 'Everybolt job file',
    description:
      'One machine taken apart and put back. Lengths in micrometres, torque in millinewton metres, volumes in millilitres, times in UTC milliseconds. Photos lie beside the file, named by SHA-256.',
    ...z.toJSONSchema(JobFile, { target: 'draft-2020-12' }),
  };
}

const inOrder = <T extends TableName>(table: T, row: Row<T>): Row<T> =>
  Object.fromEntries(
    Object.keys(TABLES[table].schema.shape).map((field) => [field, (row as Record<string, unknown>)[field]]),
  ) as Row<T>;

const sorted = <T extends TableName>(table: T, list: readonly Row<T>[]): Row<T>[] =>
  [...list]
    .sort((a, b) => ((a as { id: string }).id < (b as { id: string }).id ? -1 : 1))
    .map((row) => inOrder(table, row));

/** A file's rows as a job's: `readJobFile` has checked every one of them by the schema of its table. */
export function stateOfFile({ job, workshop, rows }: JobFile): JobState {
  // Rows are kept by table name, which the type of a file does not tell apart.
  return { ...rows, ...workshop, job } as unknown as JobState;
}

/** Ids of the workshop's rows that a job names. */
function named(state: JobState): Set<string> {
  const ids = new Set<string>();
  for (const table of ['job', ...JOB_TABLES] as const)
    for (const row of table === 'job' ? [state.job] : state[table])
      for (const [field, ref] of Object.entries(TABLES[table].refs as Record<string, TableName>)) {
        const id = (row as Record<string, unknown>)[field];
        if (TABLES[ref].scope === 'workshop' && typeof id === 'string') ids.add(id);
      }
  return ids;
}

/** The job as a file: rows by id, fields in the order of the schema, so that the same job is the same text. */
export function toJobFile(state: JobState, options: { readonly withoutContact: boolean }): JobFile {
  const ids = named(state);
  const kept = <T extends 'person' | 'tool' | 'stow' | 'original'>(table: T): Row<T>[] =>
    sorted(
      table,
      (state[table] as readonly Row<T>[]).filter((row) => ids.has((row as { id: string }).id)),
    );
  const person = kept('person').map((one) => (options.withoutContact ? { ...one, contact: '' } : one));
  return {
    everybolt: 'job',
    version: JOB_FILE_VERSION,
    job: inOrder('job', state.job),
    workshop: { person, tool: kept('tool'), stow: kept('stow'), original: kept('original') },
    rows: Object.fromEntries(
      JOB_TABLES.map((table) => [table, sorted(table, state[table] as readonly Row<typeof table>[])]),
    ),
  };
}

/** Deepest nesting of brackets outside of texts; read before parsing, so that a hostile file is never built in memory. */
export function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    if (inText) {
      if (c === 92) i += 1;
      else if (c === 34) inText = false;
    } else if (c === 34) inText = true;
    else if (c === 123 || c === 91) {
      depth += 1;
      if (depth > deepest) deepest = depth;
    } else if (c === 125 || c === 93) depth -= 1;
  }
  return deepest;
}

/** Reads a job file's text; null and a sentence when it is not one. Nothing is guessed or repaired. */
export function readJobFile(text: string): { file: JobFile } | { sentence: string } {
  if (depthOf(text) > MAX_DEPTH)
    return { sentence: `Expected a job file nested at most ${MAX_DEPTH} deep; this one is deeper.` };
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return { sentence: 'Expected a job file in JSON, but the text cannot be read as JSON.' };
  }
  const head = parsed as { everybolt?: unknown; version?: unknown } | null;
  if (typeof head !== 'object' || head === null || head.everybolt !== 'job')
    return { sentence: 'Expected a job file (it begins with "everybolt": "job"), got something else.' };
  if (typeof head.version === 'number' && head.version > JOB_FILE_VERSION)
    return {
      sentence: `This job file is version ${head.version}; this program reads up to version ${JOB_FILE_VERSION}. Use the newer program.`,
    };
  const result = JobFile.safeParse(parsed);
  // The schema is built from the tables at run time, so that its type says less than it checks.
  if (result.success) return { file: result.data as unknown as JobFile };
  const issue = result.error.issues[0];
  return {
    sentence: `In the job file, at ${issue?.path.join('.') || 'the top'}: ${issue?.message ?? 'not as expected'}.`,
  };
}
