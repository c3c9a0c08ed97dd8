import { existsSync, statSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { PicturePool } from '../../photos/pool.ts';
import { sheetPdf } from '../../usecases/sheet.ts';
import {
  type Answer,
  fine,
  jobIdOf,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
} from '../frame.ts';

import { ORDER_WRONG, orderOf } from './plan.ts';

const USAGE = 'sheet [--job ID] [--step N[,N…]] [--light] [--order list|tools] --out FILE.pdf';

/** "3", "3,4": numbers of the reinstall list; null: not such. */
function stepsOf(flag: string | boolean | undefined): number[] | null | undefined {
  if (typeof flag !== 'string') return undefined;
  const numbers = flag.split(',').map((word) => word.trim());
  return numbers.every((word) => /^[1-9]\d{0,5}$/.test(word)) ? numbers.map(Number) : null;
}

function outProblem(file: string): string | null {
  const folder = dirname(file);
  if (!existsSync(folder) || !statSync(folder).isDirectory())
    return `Expected --out in a folder that is there, got ${file}.`;
  return existsSync(file) && statSync(file).isDirectory()
    ? `Expected --out with a file, got the folder ${file}.`
    : null;
}

async function runSheet(options: Options): Promise<Answer> {
  const { out, step, light } = options.flags;
  if (typeof out !== 'string') return wrongUsage(`Expected --out with a file. Usage: ${USAGE}`);
  const steps = stepsOf(step);
  if (steps === null)
    return wrongUsage(`Expected --step with numbers of the reinstall list, got “${String(step)}”.`);
  const order = orderOf(options.flags['order']);
  if (order === null) return wrongUsage(ORDER_WRONG);
  const file = resolve(out);
  const problem = outProblem(file);
  if (problem !== null) return refusal({ code: 'input', sentence: problem });
  return reading(options, async (context) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const pool = new PicturePool();
    try {
      const made = await sheetPdf(context, pool, {
        jobId: job.value,
        steps: steps ?? null,
        light: light === true,
        order,
      });
      if (!made.ok) return refusal(made.fault);
      writeFileSync(file, made.value);
      return fine({ file, bytes: made.value.length }, [`The sheet is in ${file}.`]);
    } finally {
      await pool.close();
    }
  });
}

/** What is printed, by the command line. */
export const SHEET_VERB: Verb = {
  name: 'sheet',
  usage: USAGE,
  says: 'the put-back sheet to print, as a PDF: all that is left, or single steps by their number; --light: photos as lines, to save ink',
  options: ['job', 'step', 'order', 'out'],
  switches: ['light'],
  run: runSheet,
};
