import { describe, expect, it } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { checkDatabase } from '../../core/store/check.ts';
import { bookDifference, countLines, moveProblems } from '../../core/tally/index.ts';
import { jobExport } from '../../core/usecases/job-file.ts';
import { clientOf, command, good, logJob, stateOf } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import { newWorkshop } from '../support/workshop.ts';

describe('ready-made jobs', () => {
  it('there are twenty of them, and most are no vehicles', () => {
    expect(READY_JOBS).toHaveLength(20);
  });

  it.each(READY_JOBS)(
    '$name: logs without a word lost, the books close, nothing stops',
    async ({ name, lines }) => {
      const workshop = newWorkshop();
      const jobId = await logJob(workshop, name, lines);
      const state = stateOf(workshop, jobId);
      const typed = state.removal.map((removal) => removal.typed).join('\n');
      for (const line of lines) expect(typed).toContain(line.replace(/^\+\s*/, ''));
      expect(moveProblems(state)).toEqual([]);
      for (const line of countLines(state)) expect(bookDifference(line)).toBe(0);
      const plan = planJob(state, workshop.now());
      expect(plan.findings.filter((finding) => finding.severity === 'stop')).toEqual([]);
      expect(plan.undecided).toEqual([]);
      expect(await checkDatabase(workshop.db, 'none')).toEqual([]);
    },
  );

  it.each(READY_JOBS)(
    '$name: can be put back step by step in list order to a closed job',
    async ({ name, lines }) => {
      const workshop = newWorkshop();
      const jobId = await logJob(workshop, name, lines);
      const client = clientOf(workshop);
      const plan = () => planJob(stateOf(workshop, jobId), workshop.now());
      for (const part of stateOf(workshop, jobId).part.filter((one) => one.renew === 'must'))
        good(
          await client.piece.receive({ ...command(), jobId, thingId: part.id, qty: part.qty, stowId: null }),
        );
      for (const set of stateOf(workshop, jobId).fset.filter((one) => one.renew === 'must')) {
        const qty = stateOf(workshop, jobId).position.filter((hole) => hole.setId === set.id).length;
        if (qty > 0)
          good(await client.piece.receive({ ...command(), jobId, thingId: set.id, qty, stowId: null }));
      }
      await replaceDamaged(workshop, jobId);
      for (let guard = 0; guard < 60; guard += 1) {
        const step = plan().steps.find((one) => one.state !== 'done');
        if (!step) break;
        expect(step, step.why).toMatchObject({ state: 'ready' });
        for (const missing of step.missing)
          if (
            [
              'filled',
              'cold leak checked',
              'bled',
              'hot leak checked',
              'given back',
              'taken out',
              'measured',
            ].includes(missing.what)
          ) {
            const valueTyped =
              missing.what === 'filled'
                ? amount(workshop, jobId, missing.thingId)
                : missing.what === 'measured'
                  ? '0,15 mm'
                  : '';
            good(
              await client.tick.do({
                ...command(),
                jobId,
                thingIds: [missing.thingId],
                what: missing.what as 'filled',
                valueTyped,
              }),
            );
          }
        if (step.kind === 'S' && plan().steps.find((one) => one.id === step.id)?.state !== 'done')
          good(await client.tick.do({ ...command(), jobId, thingIds: [step.thingId], what: 'done' }));
      }
      const end = plan();
      expect(end.steps.filter((step) => step.state !== 'done').map((step) => step.title)).toEqual([]);
      expect(end.findings.filter((one) => one.severity === 'stop').map((one) => one.sentence)).toEqual([]);
      good(await client.jobs.close({ ...command(), jobId, phase: 'closed', recheckDue: null }));
      expect(end.depth.left).toBe(0);
    },
  );

  it.each(READY_JOBS)(
    '$name: as a file, read by another workshop and written again, it is the same file',
    async ({ name, lines }) => {
      const workshop = newWorkshop();
      const jobId = await logJob(workshop, name, lines);
      const context = { workshop, actor: null };
      const first = jobExport(context, jobId, { withoutContact: false });
      if (!first.ok) throw new Error(first.fault.sentence);
      const other = newWorkshop();
      const { jobImport } = await import('../../core/usecases/job-file.ts');
      const reply = jobImport({ workshop: other, actor: null }, { ...command(), text: first.value.text });
      good(reply);
      const second = jobExport({ workshop: other, actor: null }, jobId, { withoutContact: false });
      expect(second.ok && second.value.text).toBe(first.value.text);
      expect(await checkDatabase(other.db, 'none')).toEqual([]);
    },
  );
});

function amount(workshop: ReturnType<typeof newWorkshop>, jobId: string, fluidId: string): string {
  return `${stateOf(workshop, jobId).fluid.find((fluid) => fluid.id === fluidId)?.drainedMl ?? 1000} ml`;
}

/** A new one for each that was damaged or missing as found, and the damaged one scrapped: as a careful fitter does. */
async function replaceDamaged(workshop: ReturnType<typeof newWorkshop>, jobId: string): Promise<void> {
  const client = clientOf(workshop);
  for (const line of countLines(stateOf(workshop, jobId))) {
    if (line.setId === null || (line.short ?? 0) === 0 || line.mustBeNew) continue;
    if (line.damaged > 0)
      good(
        await client.piece.scrap({
          ...command(),
          jobId,
          thingId: line.setId,
          qty: line.damaged,
          to: 'scrap',
          fresh: false,
          why: 'damaged',
        }),
      );
    good(
      await client.piece.receive({
        ...command(),
        jobId,
        thingId: line.setId,
        qty: line.short ?? 0,
        stowId: null,
      }),
    );
  }
}
