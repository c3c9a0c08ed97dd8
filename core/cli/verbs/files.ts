import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { v7 } from 'uuid';
import { jobFileSchema } from '../../model/job-file.ts';
import { backup, restore } from '../../store/backup.ts';
import { checkDatabase, originalPath } from '../../store/check.ts';
import { places } from '../../store/workshop.ts';
import { bringJob } from '../../usecases/job-bring.ts';
import { jobExport } from '../../usecases/job-file.ts';
import type { Context } from '../../usecases/frame.ts';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  locked,
  ofReply,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';

/** Largest job file that is read, in bytes: a job of 10 000 holes is near 10 MB. */
const MAX_FILE = 200_000_000;

/** The folder of a job file's photos: beside it, with the same name. */
function photosBeside(file: string): string {
  return join(dirname(file), `${basename(file).replace(/\.json$/i, '')}.photos`);
}

async function runExport(options: Options): Promise<Answer> {
  if (options.flags['schema'] === true) {
    const schema = jobFileSchema();
    return fine(schema, [JSON.stringify(schema, null, 2)]);
  }
  const to = options.flags['to'];
  return reading(options, async (context) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const exported = jobExport(context, job.value, {
      withoutContact: options.flags['without-contact'] === true,
    });
    if (!exported.ok) return refusal(exported.fault);
    const { text, originals } = exported.value;
    if (typeof to !== 'string') return fine(JSON.parse(text), [text.trimEnd()]);
    const file = resolve(to);
    mkdirSync(dirname(file), { recursive: true });
    const lacking = await copyPhotos(context, originals, photosBeside(file));
    writeFileSync(`${file}.part`, text);
    renameSync(`${file}.part`, file);
    const value = { file, photos: originals.length - lacking.length, lacking };
    const line = `${file}: one job, ${value.photos} photos beside it.`;
    return lacking.length === 0 ? fine(value, [line]) : found(value, [line, ...lacking]);
  });
}

async function copyPhotos(context: Context, originals: readonly string[], dir: string): Promise<string[]> {
  const lacking: string[] = [];
  if (originals.length > 0) mkdirSync(dir, { recursive: true });
  for (const id of originals) {
    const from = originalPath(places(context.workshop.dir).originals, id);
    if (!existsSync(from)) lacking.push(`Photo ${id}: the original is not on disk.`);
    else copyFileSync(from, join(dir, id));
  }
  return lacking;
}

async function runImport(options: Options): Promise<Answer> {
  const [path] = options.words;
  if (path === undefined) return wrongUsage('Expected a job file: job-import FILE.');
  const file = resolve(path);
  if (!existsSync(file) || !statSync(file).isFile())
    return refusal({ code: 'not-found', sentence: `Expected a job file at ${file}, found none.` });
  if (statSync(file).size > MAX_FILE)
    return refusal({
      code: 'input',
      sentence: `Expected a job file of at most ${MAX_FILE / 1e6} MB, got ${Math.ceil(statSync(file).size / 1e6)} MB.`,
    });
  const text = readFileSync(file, 'utf8');
  return writing(options, async (context) => {
    const dir = photosBeside(file);
    const reply = await bringJob(context, {
      command: v7(),
      text,
      photoFile: (id) => join(dir, id),
      withoutPhotos: options.flags['without-photos'] === true,
    });
    if (!reply.ok) return refusal(reply.fault);
    const { id, title, relabelled, said } = reply.value;
    return fine({ id, title, relabelled, said }, [said]);
  });
}

async function runSample(options: Options): Promise<Answer> {
  return writing(options, async (context, client) => ofReply(await client.jobs.sample({ command: v7() })));
}

/** Verbs for what leaves and comes back: job files, copies of the workshop, the check of it. */
export const FILE_VERBS: readonly Verb[] = [
  {
    name: 'sample',
    usage: 'sample',
    says: 'puts the sample job into the workshop, with its photos: half apart, half back, finished',
    options: [],
    run: runSample,
  },
  {
    name: 'job-export',
    usage: 'job-export [--job ID] [--to FILE] [--without-contact] | --schema',
    says: 'one job as a JSON file with its photos beside it; --schema prints the published JSON Schema',
    options: ['job', 'to'],
    switches: ['without-contact', 'schema'],
    run: runExport,
  },
  {
    name: 'job-import',
    usage: 'job-import FILE [--without-photos]',
    says: 'puts a job file into the workshop, all or nothing',
    options: [],
    switches: ['without-photos'],
    run: runImport,
  },
  {
    name: 'check',
    usage: 'check',
    says: 'finds and names damage: database, chains of the journal, rows against the journal, photos',
    options: [],
    run: (options) =>
      reading(options, async (context) => {
        const faults = await checkDatabase(context.workshop.db, places(context.workshop.dir).originals);
        const value = { faults };
        return faults.length === 0
          ? fine(value, [
              'No damage found. Each entry follows from the one before, and the rows are as the journal left them.',
            ])
          : found(value, faults);
      }),
  },
  {
    name: 'backup',
    usage: 'backup DIR',
    says: 'copies the workshop into a folder, also while it is in use',
    options: [],
    run: (options) => {
      const [dir] = options.words;
      if (dir === undefined) return wrongUsage('Expected a folder: backup DIR.');
      return reading(options, async (context) => {
        const done = await backup(context.workshop, resolve(dir));
        if (!done.ok) return refusal(done.fault);
        return fine(done.value, [
          `${done.value.dir}: a whole copy, ${done.value.originals} photos (${done.value.copied} new).`,
        ]);
      });
    },
  },
  {
    name: 'restore',
    usage: 'restore DIR',
    says: 'puts a backup in the place of the workshop, after checking all of it; what was there is kept beside',
    options: [],
    run: (options) => {
      const [dir] = options.words;
      if (dir === undefined) return wrongUsage('Expected a backup folder: restore DIR.');
      mkdirSync(options.workshop, { recursive: true, mode: 0o700 });
      return locked(options.workshop, async () => {
        const done = await restore(options.workshop, resolve(dir), Date.now());
        if (!done.ok) return refusal(done.fault);
        const kept = done.value.kept === null ? '' : ` What was there is kept at ${done.value.kept}.`;
        return fine(done.value, [`Restored.${kept}`]);
      });
    },
  },
];
