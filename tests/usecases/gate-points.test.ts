import { describe, expect, it } from 'vitest';
import { jobView } from '../../core/usecases/views.ts';
import { clientOf, command, good, logJob, named, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

/** A tick that would cover something open is refused with its points, and each is answered by itself. */
async function coveredRag() {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Winch', ['belt guard', 'side cover, 2 M8x25', '+rag in the port']);
  const client = clientOf(workshop);
  const { removal, part, position } = stateOf(workshop, jobId);
  good(
    await client.tick.do({ ...command(), jobId, thingIds: position.map((one) => one.id), what: 'tightened' }),
  );
  good(
    await client.tick.do({
      ...command(),
      jobId,
      thingIds: [part.find((one) => one.name === 'side cover')?.id ?? ''],
      what: 'fitted',
    }),
  );
  const guard = named(removal, 'belt guard');
  const cover = () => client.tick.do({ ...command(), jobId, thingIds: [guard.id], what: 'done' as const });
  return { workshop, jobId, client, guard, cover };
}

describe('a tick refused by what it would cover', () => {
  it('names each point with its key, where it lies and which step would bury it', async () => {
    const { workshop, jobId, cover } = await coveredRag();
    const reply = await cover();
    if (reply.ok) throw new Error('Expected a refusal.');
    const view = jobView({ workshop, actor: null }, jobId);
    if (!view.ok) throw new Error(view.fault.sentence);
    const stepOf = (title: string) =>
      view.value.plan.steps.find((step) => step.title.toLowerCase() === title)?.id;
    expect(reply.fault.points).toMatchObject([
      {
        key: expect.stringContaining('temporary.in-place') as string,
        stepId: stepOf('side cover'),
        coveredBy: stepOf('belt guard'),
      },
    ]);
    expect(reply.fault.sentence).toContain(reply.fault.points?.[0]?.sentence);
  });

  it('goes through once each point is passed with a reason, and the reason is kept', async () => {
    const { workshop, jobId, client, cover } = await coveredRag();
    const first = await cover();
    if (first.ok) throw new Error('Expected a refusal.');
    for (const { key, coveredBy } of first.fault.points ?? [])
      good(
        await client.finding.accept({
          ...command(),
          jobId,
          finding: key,
          why: 'seen on the bench',
          coveredBy,
        }),
      );
    good(await cover());
    expect(stateOf(workshop, jobId).accepted.map((one) => one.why)).toEqual(['seen on the bench']);
    const view = jobView({ workshop, actor: null }, jobId);
    if (!view.ok) throw new Error(view.fault.sentence);
    const stops = view.value.plan.findings.filter((one) => one.severity === 'stop');
    expect(stops.map((one) => one.accepted?.why)).toEqual(['seen on the bench']);
  });

  it('knows such a point only together with the step that would bury it', async () => {
    const { jobId, client, cover } = await coveredRag();
    const first = await cover();
    if (first.ok) throw new Error('Expected a refusal.');
    const { key = '' } = first.fault.points?.[0] ?? {};
    const bare = await client.finding.accept({ ...command(), jobId, finding: key, why: 'seen' });
    expect(bare.ok).toBe(false);
  });
});
