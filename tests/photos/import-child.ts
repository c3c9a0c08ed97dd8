import { basename } from 'node:path';
import { PicturePool } from '../../core/photos/pool.ts';
import { openWorkshop } from '../../core/store/workshop.ts';
import { addPhotos } from '../../core/usecases/photo-import.ts';

/** Imports files into a job of a workshop and says a line for each that is done, for whoever kills it meanwhile. */
const [dir = '', jobId = '', ...files] = process.argv.slice(2);
const opened = openWorkshop(dir, { write: true });
if (!opened.ok) throw new Error(opened.fault.sentence);
const pool = new PicturePool();
process.stdout.write(`pool ${process.pid}\n`);
const done = await addPhotos(
  { workshop: opened.value, actor: null },
  pool,
  jobId,
  files.map((path) => ({ path, fileName: basename(path) })),
  {
    onProgress: (progress) => process.stdout.write(`${progress.done} ${pool.pids().join(' ')}\n`),
  },
);
await pool.close();
opened.value.close();
process.exitCode = done.ok ? 0 : 1;
