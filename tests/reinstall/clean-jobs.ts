import { build, type JobBuilder, type RemovalBuilder } from '../support/build.ts';
import type { Tape } from './random-jobs.ts';

/** A job without a mistake, of any size and shape: everything that a careful person writes down, and nothing wrong. */
export interface CleanJob {
  readonly job: JobBuilder;
  readonly removals: readonly RemovalBuilder[];
}

/** `seen` is called after every removal, so that a job half taken apart is looked at too. */
export function cleanJob(tape: Tape, seen: (job: JobBuilder) => void = () => undefined, most = 6): CleanJob {
  const job = build();
  const removals: RemovalBuilder[] = [];
  const power = tape.once(2);
  if (power) job.removal('Earth off', { did: 'safe' }).isolation('electricity', { how: 'earth lead off' });
  if (tape.once(3)) job.removal('On stands', { did: 'safe' }).isolation('load', { how: 'on stands' });
  const parts: string[] = [];
  const count = 1 + tape.pick(most);
  for (let i = 0; i < count; i++) {
    const bench = parts.length > 0 && tape.once(4) ? tape.of(parts) : null;
    const removal = job.removal(`Removal ${i + 1}`, {
      place: tape.of(['', 'front', 'rear']),
      defaultNeed: tape.of(['assumed', 'assumed', 'confirmed', 'loosened'] as const),
      did: tape.of(['off', 'off', 'off', 'aside', 'slackened'] as const),
      benchPartId: bench,
    });
    if (tape.once(3) && removals.length > 0) removal.needs(tape.of(removals));
    addContent(tape, job, removal, parts, power);
    removals.push(removal);
    seen(job);
  }
  addFluid(tape, job, power);
  if (tape.once(3)) job.ownStep('Look round with a light');
  if (tape.once(4) && power) job.ownStep('Let it run', { liveEnergy: 'electricity' });
  seen(job);
  return { job, removals };
}

function addContent(
  tape: Tape,
  job: JobBuilder,
  removal: RemovalBuilder,
  parts: string[],
  power: boolean,
): void {
  const bag = job.bag();
  const slack = job.rows.removal.find((row) => row.id === removal.id)?.did === 'slackened';
  const part = removal.part(`Part ${parts.length + 1}`, {
    stowId: bag,
    how: slack ? 'aside' : 'off',
    ownPlace: tape.once(4),
    hidden: tape.once(4),
    stamped: tape.of(['', 'A']),
    fate: tape.of(['refit', 'clean and refit', 'leave out'] as const),
    fateWhy: 'no longer used',
  });
  if (!slack) parts.push(part);
  if (tape.once(3)) removal.part('Gasket', { kind: 'gasket', renew: 'must', stowId: bag });
  if (!tape.once(4)) addSet(tape, job, removal, slack, bag, parts);
  if (tape.once(3))
    removal.connection('Plug', { kind: power ? 'plug' : 'linkage', joint: power ? 'plug' : 'linkage' });
  if (tape.once(5)) removal.connection('Oil pipe', { kind: 'union', joint: 'flare', hidden: tape.once(2) });
  addTemporary(tape, removal);
  if (tape.once(5)) removal.measure('End float', { limitLow: 0.1, limitHigh: 0.3 });
  if (tape.once(5)) removal.mark('Arrow up', { partId: part });
  if (tape.once(6))
    job.consumable(removal.id, { cureMinutes: 60, cureBefore: tape.of(['fill', 'run'] as const) });
}

function addSet(
  tape: Tape,
  job: JobBuilder,
  removal: RemovalBuilder,
  slack: boolean,
  bag: string,
  parts: readonly string[],
): void {
  const set = removal.set(1 + tape.pick(4), {
    how: slack ? 'slackened' : 'out',
    stowId: slack ? null : bag,
    torqueMnm: tape.of([null, 18_000]),
    torqueTyped: '18 N·m',
    torqueFrom: 'maker',
    laterWhen: tape.of([null, null, null, 'on the ground', 'warm']),
    renew: !slack && tape.once(4) ? 'must' : 'no',
    recheck: tape.once(6),
  });
  if (parts.length > 0 && tape.once(4)) job.holds(set.holes[0] ?? '', tape.of(parts));
  if (tape.once(6)) {
    // Missing as found: nothing came out of it.
    job.set('position', set.holes[0] ?? '', { found: 'empty', fate: 'leave out' });
    job.rows.move = job.rows.move.filter((move) => move.positionId !== set.holes[0]);
  } else if (!slack && tape.once(3)) job.counting(set.holes.length, set.holes.length, { stowId: bag });
}

function addTemporary(tape: Tape, removal: RemovalBuilder): void {
  const role = tape.of([null, null, 'blocks', 'supports', 'cages', 'locks', 'aid'] as const);
  if (role === 'aid') removal.job.temporary('Guide pin', { role, stepThingId: removal.id });
  else if (role) removal.temporary(`What ${role}`, role, { qty: 1 + tape.pick(2) });
}

function addFluid(tape: Tape, job: JobBuilder, power: boolean): void {
  const joints = job.rows.connection.filter((row) => row.joint === 'flare');
  if (joints.length === 0 && !tape.once(3)) return;
  const drained = 500 + 100 * tape.pick(20);
  job.fluid(
    'Oil',
    joints.map((row) => row.id),
    {
      drainedMl: drained,
      capacityMl: tape.of([null, drained]),
      lost: tape.of(['all', 'some', 'unknown'] as const),
      liveEnergy: power && tape.once(2) ? 'electricity' : null,
      bleed: tape.once(2),
    },
  );
}
