import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import sharp from 'sharp';
import { v7 } from 'uuid';
import { blank } from '../../../core/model/blank.ts';
import { ok } from '../../../core/model/result.ts';
import { renditionPath } from '../../../core/photos/disk.ts';
import { originalPath } from '../../../core/store/check.ts';
import { openWorkshop, places } from '../../../core/store/workshop.ts';
import type { Row } from '../../../core/model/tables.ts';
import type { Program } from './program.ts';

/** One photo as an import leaves it, without a picture of its own: rows and renditions are all that screens ask for. */
export interface PhotoRow {
  readonly name: string;
  /** UTC milliseconds. */
  readonly taken: number;
  readonly sharpness?: number;
  /** Sixteen hex digits; photos of the same are alike. */
  readonly phash?: string;
}

/**
 * Puts photos into the only job of a workshop while the host is away. Thousands of them go in no time
 * without `pictures`; their places on the screen then stay empty.
 */
export async function addPhotoRows(
  program: Pick<Program, 'workshop'>,
  rows: readonly PhotoRow[],
  { pictures = true } = {},
): Promise<string[]> {
  const opened = openWorkshop(program.workshop, { write: true });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  const workshop = opened.value;
  const jobId = workshop.db.prepare('SELECT id FROM job').pluck().get() as string;
  const ids: string[] = [];
  const originals = rows.map((row, i) => originalOf(row, i));
  const done = workshop.commit(
    { id: v7(), what: 'photo.add', chain: jobId, actor: 'unnamed', at: workshop.now() },
    (writer) => {
      for (const [i, row] of rows.entries()) {
        const original = originals[i] as Row<'original'>;
        writer.put('original', original);
        const photo = blank('photo', v7(), jobId, {
          originalId: original.id,
          fileName: row.name,
          addedAt: row.taken,
        });
        writer.put('photo', photo);
        ids.push(photo.id);
      }
      return ok(null);
    },
  );
  if (!done.ok) throw new Error(done.fault.sentence);
  workshop.close();
  if (!pictures) return ids;
  const at = places(program.workshop);
  const picture = sharp({ create: { width: 320, height: 240, channels: 3, background: '#667788' } });
  const [small, large] = [await picture.clone().webp().toBuffer(), await picture.clone().jpeg().toBuffer()];
  const put = (path: string, bytes: Uint8Array) => {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, bytes);
  };
  for (const { id } of originals) {
    put(originalPath(at.originals, id), large);
    put(renditionPath(at.renditions, id, '320'), small);
    put(renditionPath(at.renditions, id, '2048'), large);
  }
  return ids;
}

function originalOf(row: PhotoRow, i: number): Row<'original'> {
  return {
    id: i.toString(16).padStart(64, '0'),
    bytes: 1,
    type: 'image/jpeg',
    width: 4000,
    height: 3000,
    turn: 1,
    takenLocal: new Date(row.taken).toISOString().slice(0, 19),
    takenZone: '+00:00',
    takenUtc: row.taken,
    camera: 'Phone',
    sharpness: row.sharpness ?? 100,
    phash: row.phash ?? null,
    hasLocation: false,
    gone: false,
    goneWhy: '',
  };
}
