import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { SAMPLE_JOBS } from '../../core/model/sample-jobs.ts';
import type { JobState } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { checkDatabase } from '../../core/store/check.ts';
import { places } from '../../core/store/workshop.ts';
import { countLines, lookAlikes, openSearches } from '../../core/tally/index.ts';
import { sampleState } from '../../core/usecases/sample.ts';
import { Bench, Clock } from '../../samples/job/bench.ts';
import { begin, crew, takeApart } from '../../samples/job/take-apart.ts';
import { clientOf, command, good, refused } from '../support/client.ts';
import { newWorkshop, openTest, tempFolder } from '../support/workshop.ts';

/** The sample is invented; what is checked is that it shows everything that a real job brings, and that it holds together. */

const PHOTOS = join(import.meta.dirname, '..', '..', 'samples', 'photos');
const end = (state: JobState) => Math.max(...state.deed.map((deed) => deed.at), state.job.createdAt);
const apart = sampleState('half-apart');
const back = sampleState('half-back');
const finished = sampleState('finished');

describe('the sample job', () => {
  it('has the ids by which the Jobs screen knows that it is in the workshop', () => {
    expect([apart, back, finished].map((copy) => copy.job.id).sort()).toEqual([...SAMPLE_JOBS].sort());
  });

  it('holds one of everything that makes a job hard', () => {
    const { removal, position, part, fset, temporary, fluid, isolation, photo } = finished;
    expect(removal.length).toBeGreaterThanOrEqual(16);
    expect(position.length).toBeGreaterThanOrEqual(70);
    expect(lookAlikes(finished).length).toBeGreaterThanOrEqual(3);
    expect(new Set(finished.holds.map((one) => one.positionId)).size).toBe(2);
    expect(position.filter((hole) => hole.condition === 'stripped')).toHaveLength(1);
    expect(position.filter((hole) => hole.found === 'empty')).toHaveLength(1);
    expect(position.filter((hole) => hole.hidden).length).toBeGreaterThanOrEqual(1);
    expect(finished.stackItem.filter((item) => item.what === 'nut M12')).toHaveLength(1);
    expect(part.filter((one) => one.renew === 'must').length).toBeGreaterThanOrEqual(6);
    expect(part.filter((one) => one.fate === 'carry over')).toHaveLength(1);
    expect(finished.away).toHaveLength(2);
    expect(removal.map((one) => one.did)).toEqual(expect.arrayContaining(['aside', 'slackened', 'safe']));
    expect(fset.some((set) => set.how === 'slackened')).toBe(true);
    expect(removal.map((one) => one.side)).toEqual(expect.arrayContaining(['left', 'right']));
    expect(finished.together).toHaveLength(1);
    expect(fluid).toHaveLength(2);
    expect(isolation.length).toBeGreaterThanOrEqual(3);
    expect(new Set(temporary.map((one) => one.role))).toEqual(new Set(['blocks', 'supports', 'locks']));
    expect(part.filter((one) => one.ownPlace).length).toBeGreaterThanOrEqual(8);
    expect(finished.measure).toHaveLength(1);
    expect(finished.consumable.map((one) => one.kind)).toContain('sealant');
    expect(photo.length).toBeGreaterThanOrEqual(14);
    expect(photo.filter((one) => one.role === 'as refitted').length).toBeGreaterThanOrEqual(2);
  });

  it('goes back in an order that is not the reverse of the log', () => {
    const steps = planJob(finished, end(finished)).steps;
    const numbers = steps.flatMap((step) => step.number ?? []);
    const reverse = finished.removal.map((_, i) => finished.removal.length - i);
    expect(numbers).not.toEqual(reverse);
    // The two long bolts hold the hose bracket as well: they wait until it is back.
    const at = (title: string) => steps.findIndex((step) => step.title.startsWith(title));
    expect(at('gear cover bolts, hole 6')).toBeGreaterThan(at('Hose bracket'));
    expect(steps.at(-1)?.title).toMatch(/mains locked out/);
  });

  it('half apart, is open where somebody can carry on: away, inside, to get', () => {
    const plan = planJob(apart, end(apart));
    expect(plan.depth).toMatchObject({ off: 19, back: 0, left: 19 });
    expect(apart.halt[0]?.note).toMatch(/Next: end plate/);
    expect(plan.findings.filter((one) => one.severity === 'stop')).toEqual([]);
  });

  it('half back, looks for a bolt that was counted short', () => {
    const [search] = openSearches(back);
    expect(search?.lookAt.length).toBeGreaterThan(0);
    const plan = planJob(back, end(back));
    expect(plan.findings.filter((one) => one.severity === 'stop').map((one) => one.code)).toEqual([
      'count.differs',
    ]);
  });

  it('finished, has every piece accounted for and one point passed by name', () => {
    const plan = planJob(finished, end(finished));
    expect(plan.steps.filter((step) => step.state !== 'done')).toEqual([]);
    expect(finished.job.phase).toBe('closed');
    const stops = plan.findings.filter((one) => one.severity === 'stop');
    expect(stops.map((one) => [one.code, one.accepted?.why.slice(0, 9)])).toEqual([
      ['fluid.amount', 'The level'],
    ]);
    expect(countLines(finished).filter((line) => (line.short ?? 0) > 0)).toEqual([]);
  });

  it('has marks only where the scene says that a hole or a part is', () => {
    type Place = { x: number; y: number };
    const known = JSON.parse(readFileSync(join(PHOTOS, 'places.json'), 'utf8')) as Record<string, Place[]>;
    for (const state of [apart, back, finished])
      for (const mark of state.marker) {
        const photo = state.photo.find((one) => one.id === mark.photoId);
        const spots = known[photo?.fileName ?? ''] ?? [];
        expect(spots.some((spot) => spot.x === mark.x && spot.y === mark.y)).toBe(true);
      }
  });

  it('can still be told by today’s operations', async () => {
    const clock = new Clock();
    clock.set('2025-10-07T09:00:00+02:00');
    const workshop = openTest(tempFolder(), { now: clock.now });
    const bench = new Bench(workshop, clock);
    const who = await crew(bench);
    await begin(bench, who, 'Blower head');
    await takeApart(bench, who);
    const told = bench.state();
    for (const table of ['removal', 'position', 'part', 'connection', 'temporary', 'mark'] as const)
      expect([table, told[table].length]).toEqual([table, finished[table].length]);
  });
});

describe('bringing the sample in', () => {
  it('brings three jobs with their photos, once', async () => {
    const workshop = newWorkshop();
    const { ids } = good(await clientOf(workshop).jobs.sample(command()));
    expect(ids).toHaveLength(3);
    const { originals } = places(workshop.dir);
    for (const id of ids)
      for (const { id: sha } of workshop.job(id)?.original ?? [])
        expect(existsSync(join(originals, sha.slice(0, 2), sha)) || existsSync(join(originals, sha))).toBe(
          true,
        );
    expect(await checkDatabase(workshop.db, originals)).toEqual([]);
    expect(refused(await clientOf(workshop).jobs.sample(command()))).toContain('already');
    // Three copies, and one Edda.
    const { person } = good(await clientOf(workshop).workshop.people({}));
    expect(person.map((one) => one.name).sort()).toEqual([
      'Edda Marlow',
      'Oststeig farm, Jonna Harle',
      'Tomas Rieke',
    ]);
  });

  it('brings back only what is missing', async () => {
    const workshop = newWorkshop();
    const client = clientOf(workshop);
    const { ids } = good(await client.jobs.sample(command()));
    const last = ids.at(-1) ?? '';
    // Below the operations: a job's own Undo stops at its coming in.
    const gone = workshop.undo({ id: command().command, chain: last, actor: 'unnamed', at: workshop.now() });
    expect(gone.ok).toBe(true);
    expect(refused(await client.history.undo({ ...command(), jobId: ids[0] ?? '' }))).toContain(
      'nothing to undo',
    );
    expect(good(await client.jobs.sample(command())).ids).toEqual([last]);
  });

  it('is one command, and the main job runs on it at once', async () => {
    const dir = tempFolder();
    expect((await runCommand(['sample', '--workshop', dir])).code).toBe(0);
    const answer = await runCommand(['reinstall', '--workshop', dir, '--job', 'half back']);
    expect(answer.code).toBe(1);
    expect(answer.lines.join('\n')).toMatch(
      /22 off, 8 back, 14 left[\s\S]*Tin 27 was counted at 12, 13 by the books/,
    );
  });
});
