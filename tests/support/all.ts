import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { runAll } from './run/run-all.ts';
import { stages } from './run/stages.ts';

// A fresh folder each time: results of an earlier run can not be taken for those of this one.
const results = mkdtempSync(join(tmpdir(), 'everybolt-tests-'));
process.on('exit', () => rmSync(results, { recursive: true, force: true }));
const root = resolve(import.meta.dirname, '../..');
process.exitCode = await runAll(stages, { root, results }, (line) => console.log(line));
