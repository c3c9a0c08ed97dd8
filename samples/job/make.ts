import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openWorkshop } from '../../core/store/workshop.ts';
import { jobExport } from '../../core/usecases/job-file.ts';
import { Bench, Clock } from './bench.ts';
import { COPIES } from './copies.ts';
import { crew } from './take-apart.ts';

/** Writes the three copies of the sample job anew, from the story: `node samples/job/make.ts`. Photos lie in ../photos. */
const folder = join(import.meta.dirname, '..', 'jobs');
mkdirSync(folder, { recursive: true });
for (const copy of COPIES) {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-sample-'));
  const clock = new Clock();
  clock.set('2025-10-07T09:00:00+02:00');
  const opened = openWorkshop(dir, { write: true, unsafeFast: true, now: clock.now });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  const bench = new Bench(opened.value, clock, copy.labelsFrom);
  await copy.tell(bench, await crew(bench));
  const file = jobExport({ workshop: opened.value, actor: null }, bench.jobId, { withoutContact: false });
  if (!file.ok) throw new Error(file.fault.sentence);
  writeFileSync(join(folder, copy.file), file.value.text);
  process.stdout.write(`${copy.file}: ${Math.round(file.value.text.length / 1000)} kB\n`);
  opened.value.close();
  rmSync(dir, { recursive: true, force: true });
}
