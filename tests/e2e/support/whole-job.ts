import type { Page } from '@playwright/test';
import type { Hands } from './hands.ts';
import type { Program } from './program.ts';
import { countShort, firstStepBack, takeApart } from './whole.ts';
import { allBack, close } from './whole-back.ts';
import { expectClosed } from './whole-said.ts';

/** How many marks are set; the last one is taken back. */
const MARKS = 3;

/** The whole story of the sample, from the empty workshop to the closed job and what the command line says of it. */
export async function wholeJob(page: Page, hands: Hands, program: Program): Promise<void> {
  page.setDefaultTimeout(20_000);
  await takeApart(page, hands, program.folder, MARKS);
  await countShort(page, hands);
  await firstStepBack(page, hands);
  const walked = await allBack(page, hands);
  await close(page, hands);
  await program.kill();
  expectClosed(program, ['Rotor, left', ...walked], MARKS - 1);
}
