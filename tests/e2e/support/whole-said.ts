import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { JobView } from '../../../core/contract/views.ts';
import type { Row } from '../../../core/model/tables.ts';
import { holesOf, SHORT, TORQUE, WHO, WHY } from './whole.ts';
import { expect, type Program } from './program.ts';

const CLI = join(import.meta.dirname, '..', '..', '..', 'core', 'cli', 'main.ts');

interface Exported {
  readonly job: Row<'job'>;
  readonly workshop: { readonly person: readonly Row<'person'>[] };
  readonly rows: {
    readonly photo: readonly Row<'photo'>[];
    readonly marker: readonly Row<'marker'>[];
    readonly accepted: readonly Row<'accepted'>[];
  };
}

interface Tally extends Pick<JobView, 'toGet' | 'searches'> {
  readonly sets: JobView['counts'];
}

/** What the command line says of the closed job: the host must be gone, so nothing is said from its memory. */
export function expectClosed(program: Program, walked: readonly string[], marks: number): void {
  const say = (...words: string[]) =>
    execFileSync(process.execPath, [CLI, ...words, '--workshop', program.workshop], { encoding: 'utf8' });
  const read = <T>(...words: string[]) => JSON.parse(say(...words, '--json')) as T;

  expect(say('reinstall')).toMatch(/^22 off, 22 back, 0 left\.\n/);
  const plan = read<JobView['plan']>('reinstall');
  expect(plan.depth).toMatchObject({ off: 22, back: 22, left: 0 });
  expect(plan.steps.filter((step) => step.state !== 'done')).toEqual([]);
  // The screen led through all of it, in the order of the list.
  expect(walked.filter((title) => !title.startsWith('Check before'))).toEqual(
    plan.steps.map((step) => step.title),
  );
  const stops = plan.findings.filter((one) => one.severity === 'stop');
  expect(stops.map((one) => one.accepted?.why)).toEqual([WHY]);

  const cover = plan.steps.find((step) => step.title === 'Gear cover');
  expect(cover?.renew).toHaveLength(2);
  expect(cover?.actions.filter((one) => one.code === 'renew').map((one) => one.done)).toEqual([true, true]);
  expect(cover?.fasteners[0]?.holes[0]).toMatchObject({ mark: 'tightened', reachedNm: TORQUE });

  const tally = read<Tally>('tally');
  const short = tally.sets.find((set) => set.setId === cover?.fasteners[0]?.setId);
  expect(short).toMatchObject({ out: SHORT, got: 1, lost: 1, backIn: SHORT, short: 0 });
  // What was on order stands there as come in.
  expect(tally.toGet.filter((line) => line.needed !== 0 || line.state !== 'here')).toEqual([]);
  expect(tally.searches).toEqual([]);

  const { job, rows, workshop } = read<Exported>('job-export');
  expect(job.phase).toBe('closed');
  const who = workshop.person.find((person) => person.name === WHO);
  expect(rows.accepted.map((one) => one.personId)).toEqual([who?.id]);
  expect(rows.photo.map((photo) => photo.removalId)).toEqual(Array(3).fill(cover?.removalId));
  expect(rows.marker).toHaveLength(marks);
  for (const [i, hole] of holesOf(marks).entries()) {
    expect(Math.abs((rows.marker[i]?.x ?? 0) - hole.x)).toBeLessThan(0.01);
    expect(Math.abs((rows.marker[i]?.y ?? 0) - hole.y)).toBeLessThan(0.01);
  }
  expect(say('check')).toContain('No damage found');
}
