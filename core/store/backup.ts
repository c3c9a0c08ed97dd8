import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { z } from 'zod';
import { ok, type Result, refuse } from '../model/result.ts';
import { checkDatabase, hashFile, originalPath } from './check.ts';
import { rowsOf } from './read.ts';
import { places, type Workshop } from './workshop.ts';

const Manifest = z.strictObject({
  everybolt: z.literal('backup'),
  version: z.literal(1),
  madeAt: z.int(),
  database: z.string().regex(/^[0-9a-f]{64}$/),
  originals: z.array(z.string().regex(/^[0-9a-f]{64}$/)),
});

export interface BackedUp {
  readonly dir: string;
  readonly originals: number;
  readonly copied: number;
}

/** Copies one original by temporary name and rename, so that a half-written file never has a final name. */
function copyOriginal(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true, mode: 0o700 });
  const temporary = `${to}.part`;
  copyFileSync(from, temporary);
  renameSync(temporary, to);
}

/**
 * Copies the workshop into a folder while it may be in use: SQLite's online backup, photos by hash, a manifest last,
 * so that a folder with a manifest is a whole backup. Photos that are there already are not copied again.
 */
export async function backup(workshop: Workshop, dir: string): Promise<Result<BackedUp>> {
  if (existsSync(join(dir, 'workshop.db')) && !existsSync(join(dir, 'backup.json')))
    return refuse('refused', `Expected an empty folder or an earlier backup, but ${dir} holds a workshop.`);
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  rmSync(join(dir, 'backup.json'), { force: true });
  const target = join(dir, 'workshop.db');
  await workshop.db.backup(`${target}.part`);
  renameSync(`${target}.part`, target);
  const copy = new Database(target, { readonly: true });
  const originals = rowsOf(copy, 'original').filter((original) => !original.gone);
  copy.close();
  let copied = 0;
  for (const { id } of originals) {
    const to = originalPath(places(dir).originals, id);
    if (existsSync(to) && (await hashFile(to)) === id) continue;
    const from = originalPath(places(workshop.dir).originals, id);
    if (!existsSync(from))
      return refuse('damaged', `Photo ${id}: the original is not on disk, so the backup is not whole.`);
    copyOriginal(from, to);
    copied += 1;
  }
  const manifest: z.infer<typeof Manifest> = {
    everybolt: 'backup',
    version: 1,
    madeAt: workshop.now(),
    database: await hashFile(target),
    originals: originals.map((original) => original.id),
  };
  writeFileSync(join(dir, 'backup.json'), `${JSON.stringify(manifest, null, 1)}\n`);
  return ok({ dir, originals: originals.length, copied });
}

function readManifest(dir: string): Result<z.infer<typeof Manifest>> {
  const path = join(dir, 'backup.json');
  if (!existsSync(path))
    return refuse('not-found', `Expected a backup in ${dir} (with a backup.json), found none.`);
  try {
    return ok(Manifest.parse(JSON.parse(readFileSync(path, 'utf8'))));
  } catch {
    return refuse('damaged', `Expected ${path} to be a backup's list, but it cannot be read as one.`);
  }
}

/** Reads the whole backup and says what is wrong with it; nothing is touched. */
async function checkBackup(dir: string): Promise<Result<{ originals: string[] }>> {
  const manifest = readManifest(dir);
  if (!manifest.ok) return manifest;
  const path = join(dir, 'workshop.db');
  if (!existsSync(path) || (await hashFile(path)) !== manifest.value.database)
    return refuse(
      'damaged',
      'The database in the backup is not the one that was written. Nothing was changed.',
    );
  const db = new Database(path, { readonly: true });
  try {
    const faults = await checkDatabase(db, places(dir).originals);
    if (faults.length > 0)
      return refuse('damaged', `The backup is damaged, nothing was changed: ${faults.slice(0, 5).join(' ')}`);
  } finally {
    db.close();
  }
  return ok({ originals: manifest.value.originals });
}

/**
 * Puts a backup in the place of a workshop, after checking all of it. The workshop that was there is moved into its
 * copies folder, not deleted. The caller holds the workshop's lock.
 */
export async function restore(
  dir: string,
  backupDir: string,
  at: number,
): Promise<Result<{ kept: string | null }>> {
  const checked = await checkBackup(backupDir);
  if (!checked.ok) return checked;
  const to = places(dir);
  mkdirSync(to.copies, { recursive: true, mode: 0o700 });
  for (const id of checked.value.originals) {
    const target = originalPath(to.originals, id);
    if (!existsSync(target) || (await hashFile(target)) !== id)
      copyOriginal(originalPath(places(backupDir).originals, id), target);
  }
  const incoming = `${to.db}.incoming`;
  copyFileSync(join(backupDir, 'workshop.db'), incoming);
  let kept: string | null = null;
  if (existsSync(to.db)) {
    kept = join(to.copies, `workshop-before-restore-${at}.db`);
    const current = new Database(to.db);
    current.pragma('wal_checkpoint(TRUNCATE)');
    current.close();
    renameSync(to.db, kept);
  }
  for (const tail of ['-wal', '-shm']) rmSync(to.db + tail, { force: true });
  renameSync(incoming, to.db);
  return ok({ kept });
}
