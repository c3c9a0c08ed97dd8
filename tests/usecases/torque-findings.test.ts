import { describe, expect, it } from 'vitest';
import { command, good } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';

/** What is said of a job's torques: code, how grave, and the one sentence. */
async function saidOf(lines: readonly string[]) {
  const job = await gearbox(lines);
  const said = () =>
    job
      .plan()
      .findings.filter((one) => one.code.startsWith('torque.'))
      .map((one) => `${one.severity} ${one.code}: ${one.sentence}`);
  const tighten = async (value?: string) => {
    const thingIds = job.state().position.map((hole) => hole.id);
    const read = value === undefined ? {} : { valueTyped: value, known: 'read' as const };
    good(await job.client.tick.do({ ...command(), jobId: job.jobId, thingIds, what: 'tightened', ...read }));
  };
  const change = async (values: Record<string, unknown>) => {
    const [set] = job.state().fset;
    good(
      await job.client.record.change({
        ...command(),
        jobId: job.jobId,
        table: 'fset',
        id: set?.id ?? '',
        values,
      }),
    );
  };
  const fit = async () => {
    const thingIds = job.state().part.map((part) => part.id);
    good(await job.client.tick.do({ ...command(), jobId: job.jobId, thingIds, what: 'fitted' }));
  };
  return { said, tighten, fit, change };
}

describe('what a torque says, from the entry line to the list', () => {
  it('past proof of any class where the class is not known; another unit is tried; the maker’s page makes it a note', async () => {
    const plain = await saidOf(['cover, 4 M6x20, 25 Nm']);
    expect(plain.said()).toEqual([
      expect.stringMatching(
        /^stop torque\.past-proof: Cover: 25 N·m is past the proof load of an M6 of any listed class: even class 12\.9/,
      ),
    ]);
    await plain.change({ torqueFrom: 'maker', torquePage: 'page 12' });
    expect(plain.said()[0]).toMatch(/^note torque\.past-proof: .*page 12 is cited and wins/);
    const slip = await saidOf(['plate, 4 M6x20, 90 Nm']);
    expect(slip.said()[0]).toContain('90 lbf·in would be 10.2 N·m?');
    const greased = await saidOf(['lid, 2 M8x25, class 8.8, 25 Nm, greased']);
    expect(greased.said()[0]).toContain('and it would need class 10.9');
  });

  it('off: too low as much as too high, and in which unit it would have been right', async () => {
    const low = await saidOf(['cover, 1 M8x25, class 8.8, 25 Nm']);
    expect(low.said()).toEqual([]);
    await low.tighten('18 Nm');
    expect(low.said()[0]).toMatch(
      /^warn torque\.off: .*Reached 18 N·m, wanted 25 N·m: 28 % too low; was another unit meant: 18 lbf·ft would be 24\.4 N·m\?/,
    );
    const high = await saidOf(['cover, 1 M10x25, class 8.8, 40 Nm']);
    await high.tighten('48 Nm');
    expect(high.said()[0]).toContain('20 % too high');
  });

  it('misfit only where no thread of that head could bear it, because a head alone proves no thread', async () => {
    const none = await saidOf(['bracket, 2 hex 13, 300 Nm']);
    expect(none.said()[0]).toMatch(/^warn torque\.misfit: Bracket: 300 N·m fits no thread of a 13 mm head/);
    // Past proof of the usual M8, and nothing for the M10 that a 13 mm head may be as well.
    expect((await saidOf(['bracket, 2 hex 13, 80 Nm'])).said()).toEqual([]);
  });

  it('none where it matters: listed until it is tightened, then it stops; snug by feel is an answer', async () => {
    const brake = await saidOf(['brake caliper, 2 M10x40']);
    expect(brake.said()[0]).toMatch(/^note torque\.none: .*this joint matters \(brakes\)/);
    expect((await saidOf(['guard, 2 M10x40'])).said()).toEqual([]);
    expect((await saidOf(['brake pad, 2 pins'])).said()).toEqual([]);
    expect((await saidOf(['brake caliper, 2 M10x40, snug by feel'])).said()).toEqual([]);
    await brake.tighten();
    await brake.fit();
    expect(brake.said()[0]).toMatch(/^stop torque\.none/);
    await brake.change({ torqueFrom: 'by feel' });
    expect(brake.said()).toEqual([]);
    const guard = await saidOf(['guard, 2 M10x40']);
    await guard.change({ critical: true });
    expect(guard.said()[0]).toContain('this joint matters (by the user)');
  });
});
