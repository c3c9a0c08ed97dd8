import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

/**
 * `npm run mutants [-- tally | reinstall [--mutate FILE,FILE]]`: mutants of the folder, then the table of what became
 * of them, once for all and once without those that only change a text. Files that were not asked for stand as they
 * were last tried. Ends with 1 where a folder is below 80 %.
 */
const FOLDERS = ['tally', 'reinstall'] as const;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const STRYKER = fileURLToPath(
  new URL('bin/stryker.js', import.meta.resolve('@stryker-mutator/core/package.json')),
);

const Report = z.object({
  files: z.record(
    z.string(),
    z.object({ mutants: z.array(z.object({ mutatorName: z.string(), status: z.string() })) }),
  ),
});

interface Figures {
  readonly killed: number;
  readonly timeout: number;
  readonly survived: number;
  readonly 'no coverage': number;
  readonly 'score %': number;
}

function figures(statuses: readonly string[]): Figures {
  const count = (status: string) => statuses.filter((one) => one === status).length;
  const [killed, timeout, survived, bare] = ['Killed', 'Timeout', 'Survived', 'NoCoverage'].map(count) as [
    number,
    number,
    number,
    number,
  ];
  const score = (100 * (killed + timeout)) / Math.max(1, killed + timeout + survived + bare);
  return { killed, timeout, survived, 'no coverage': bare, 'score %': Math.round(score * 10) / 10 };
}

function run(folder: string, more: readonly string[]): { ended: number; rows: Record<string, Figures> } {
  const file = `${ROOT}/reports/mutants/${folder}.json`;
  rmSync(file, { force: true });
  const ended = spawnSync(process.execPath, [STRYKER, 'run', ...more], {
    cwd: ROOT,
    env: { ...process.env, MUTANTS_OF: folder },
    stdio: 'inherit',
  }).status;
  const { files } = Report.parse(JSON.parse(readFileSync(file, 'utf8')));
  const rows: Record<string, Figures> = {};
  for (const [name, { mutants }] of Object.entries(files)) rows[name] = figures(mutants.map((m) => m.status));
  const all = Object.values(files).flatMap(({ mutants }) => mutants);
  rows[`core/${folder}`] = figures(all.map((mutant) => mutant.status));
  const code = all.filter((mutant) => mutant.mutatorName !== 'StringLiteral');
  rows[`core/${folder} without texts`] = figures(code.map((mutant) => mutant.status));
  return { ended: ended ?? 1, rows };
}

const [first, ...more] = process.argv.slice(2);
const chosen = first === undefined ? FOLDERS : FOLDERS.filter((folder) => folder === first);
if (chosen.length === 0) throw new Error(`Expected tally or reinstall, got "${first}".`);
const done = chosen.map((folder) => run(folder, more));
for (const { rows } of done) console.table(rows);
process.exitCode = Math.max(...done.map(({ ended }) => ended));
