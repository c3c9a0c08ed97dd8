import { copyFileSync, existsSync, mkdirSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import { refuse } from '../model/result.ts';
import { hashFile, originalPath } from '../store/check.ts';
import { places } from '../store/workshop.ts';
import type { Context, Reply } from './frame.ts';
import { type Imported, jobImport } from './job-file.ts';

export interface BringInput {
  readonly command: string;
  /** The job file's text. */
  readonly text: string;
  /** Where the file of an original should lie, by its SHA-256. No name from the job file ever becomes a path here. */
  readonly photoFile: (sha256: string) => string;
  /** Takes the job even where photos are lacking. */
  readonly withoutPhotos?: boolean;
}

/**
 * Puts a job file into the workshop with its photos, all or nothing. Refused with a sentence: a file that is no job
 * file or does not hold together, a photo that is not there or is not what its name says, a job that is there already.
 */
export async function bringJob(context: Context, input: BringInput): Promise<Reply<Imported>> {
  const listed = originalsIn(input.text);
  const faults = input.withoutPhotos === true ? [] : await photoFaults(listed, input.photoFile);
  if (faults.length > 0)
    return refuse(
      'input',
      `${faults.slice(0, 5).join(' ')} Nothing was changed. To take the job without its photos add --without-photos.`,
    );
  for (const { id, gone } of listed) {
    const from = input.photoFile(id);
    const to = originalPath(places(context.workshop.dir).originals, id);
    if (gone || existsSync(to) || !existsSync(from)) continue;
    mkdirSync(dirname(to), { recursive: true, mode: 0o700 });
    copyFileSync(from, `${to}.part`);
    renameSync(`${to}.part`, to);
  }
  return jobImport(context, { command: input.command, text: input.text });
}

async function photoFaults(
  originals: Imported['originals'],
  photoFile: BringInput['photoFile'],
): Promise<string[]> {
  const faults: string[] = [];
  for (const { id, gone } of originals) {
    if (gone) continue;
    const from = photoFile(id);
    if (!existsSync(from)) faults.push(`Photo ${id} is not beside the job file.`);
    else if ((await hashFile(from)) !== id) faults.push(`Photo ${id} is not the file that its name says.`);
  }
  return faults;
}

/** The photos that a job file lists, as far as it can be read; the import itself says what is wrong with it. */
function originalsIn(text: string): Imported['originals'] {
  try {
    const parsed = JSON.parse(text) as { workshop?: { original?: unknown } };
    const list = parsed.workshop?.original;
    if (!Array.isArray(list)) return [];
    return list.filter(
      (one: unknown): one is Imported['originals'][number] =>
        typeof one === 'object' &&
        one !== null &&
        /^[0-9a-f]{64}$/.test(String((one as { id?: unknown }).id)),
    );
  } catch {
    return [];
  }
}
