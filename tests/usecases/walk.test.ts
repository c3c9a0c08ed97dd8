import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { PicturePool } from '../../core/photos/pool.ts';
import { sheetPdf } from '../../core/usecases/sheet.ts';
import { readPdf } from '../record/read-pdf.ts';
import { clientOf, command, good, logJob, stateOf } from '../support/client.ts';
import { newWorkshop, openTest } from '../support/workshop.ts';

const LINES = [
  'guard, 2 M6x16 hex 10',
  'fan, 2 M8x20 hex 13',
  'bracket, 2 M6x16 hex 10',
  'pump, 2 M8x20 hex 13',
];

/** Four removals that do not wait for each other, of two sizes in turn. */
async function fourLoose() {
  const workshop = newWorkshop();
  const client = clientOf(workshop);
  const jobId = await logJob(workshop, 'Winch', LINES);
  for (const { id } of stateOf(workshop, jobId).removal)
    good(
      await client.record.change({
        ...command(),
        jobId,
        table: 'removal',
        id,
        values: { defaultNeed: 'loosened' },
      }),
    );
  const titles = async () => good(await client.jobs.view({ jobId })).plan.steps.map((step) => step.title);
  return { workshop, client, jobId, titles };
}

describe('the order in which a job is put back', () => {
  it('is kept for the job and not in its record, over closing the workshop, and read by scripts too', async () => {
    const { workshop, client, jobId, titles } = await fourLoose();
    expect(await titles()).toEqual(['Pump', 'Bracket', 'Fan', 'Guard']);
    const seq = workshop.lastSeq();
    expect(good(await client.plan.walk({ jobId, by: 'tools' })).said).toBe(
      'Put back goes by tools: 1 change instead of 3, there is no order with fewer.',
    );
    expect(workshop.lastSeq()).toBe(seq);
    const byTools = await titles();
    expect(byTools.map((title) => ['Guard', 'Bracket'].includes(title))).toEqual(
      ['Guard', 'Bracket'].includes(byTools[0] ?? '')
        ? [true, true, false, false]
        : [false, false, true, true],
    );
    const other = await logJob(workshop, 'Another', LINES);
    expect(good(await client.jobs.view({ jobId: other })).walk).toBe('list');
    const { dir } = workshop;
    workshop.close();
    const again = openTest(dir);
    expect(good(await clientOf(again).jobs.view({ jobId })).plan.steps.map((step) => step.title)).toEqual(
      byTools,
    );
    again.close();
    const steps = async (...words: string[]) => {
      const answer = await runCommand([...words, '--job', jobId, '--workshop', dir]);
      return (answer.value as { steps: { title: string }[] }).steps.map((step) => step.title);
    };
    expect(await steps('reinstall')).toEqual(byTools);
    expect(await steps('reinstall', '--order', 'list')).toEqual(['Pump', 'Bracket', 'Fan', 'Guard']);
    expect((await runCommand(['reinstall', '--order', 'size', '--workshop', dir])).code).toBe(2);
    const chosen = await runCommand([
      'operation',
      'plan.walk',
      JSON.stringify({ jobId, by: 'list' }),
      '--workshop',
      dir,
    ]);
    expect(chosen.code).toBe(0);
    expect(await steps('reinstall')).toEqual(['Pump', 'Bracket', 'Fan', 'Guard']);
    expect((await runCommand(['tools', '--walk', 'tools', '--job', jobId, '--workshop', dir])).code).toBe(0);
    expect(await steps('reinstall')).toEqual(byTools);
    expect((await runCommand(['tools', '--walk', 'list', '--job', jobId, '--workshop', dir])).code).toBe(0);
    expect(await steps('reinstall')).toEqual(['Pump', 'Bracket', 'Fan', 'Guard']);
    expect(await steps('reinstall', '--order', 'tools')).toEqual(byTools);
  });

  it('is the order of the printed sheet, step after step', async () => {
    const { workshop, client, jobId, titles } = await fourLoose();
    good(await client.plan.walk({ jobId, by: 'tools' }));
    const pool = new PicturePool();
    const made = await sheetPdf({ workshop, actor: null }, pool, { jobId, steps: null, light: false });
    await pool.close();
    if (!made.ok) throw new Error(made.fault.sentence);
    const order = await titles();
    expect(order).not.toEqual(['Pump', 'Bracket', 'Fan', 'Guard']);
    const said = (await readPdf(made.value)).flatMap((page) => page.sizes);
    const heads = said.filter((one) => one.size > 20).map((one) => one.text.replace(/^\d+ /, ''));
    expect(heads.filter((head) => order.includes(head))).toEqual(order);
  });
});
