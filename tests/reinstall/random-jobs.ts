import fc from 'fast-check';
import { build, type JobBuilder, type RemovalBuilder } from '../support/build.ts';

/** Choices read one after the other; when they run out, the first choice is taken. Shrinks towards plain small jobs. */
export class Tape {
  private at = 0;
  private readonly numbers: readonly number[];

  constructor(numbers: readonly number[]) {
    this.numbers = numbers;
  }

  /** 0 … n−1. */
  pick(n: number): number {
    const number = this.numbers[this.at++] ?? 0;
    return number % n;
  }

  /** True once in n. */
  once(n: number): boolean {
    return this.pick(n) === n - 1;
  }

  of<T>(list: readonly T[]): T {
    return list[this.pick(list.length)] as T;
  }
}

export const tapes = (length = 300): fc.Arbitrary<Tape> =>
  fc
    .array(fc.nat({ max: 5039 }), { minLength: 0, maxLength: length, size: 'max' })
    .map((numbers) => new Tape(numbers));

export interface RandomJob {
  readonly job: JobBuilder;
  readonly removals: readonly RemovalBuilder[];
  readonly parts: readonly string[];
  readonly holes: readonly string[];
  readonly connections: readonly string[];
  readonly ownSteps: readonly string[];
}

type Made = {
  -readonly [K in keyof RandomJob]: RandomJob[K] extends readonly (infer T)[] ? T[] : RandomJob[K];
};

/** A job of any shape: benches, loosened and stored needs, shared positions, late isolations, several fluids, own steps. */
export function randomJob(tape: Tape, most = 9): RandomJob {
  const job = build();
  const made: Made = { job, removals: [], parts: [], holes: [], connections: [], ownSteps: [] };
  const count = 1 + tape.pick(most);
  for (let i = 0; i < count; i++) addRemoval(tape, made, i);
  for (const hole of made.holes)
    if (made.parts.length > 0 && tape.once(3)) job.holds(hole, tape.of(made.parts));
  addFluids(tape, made);
  for (let k = tape.pick(3); k > 0; k--) {
    made.ownSteps.push(
      job.ownStep(`Own ${k}`, {
        kind: tape.once(4) ? 'recheck' : 'work',
        liveEnergy: tape.once(3) ? 'electricity' : null,
      }),
    );
  }
  return made;
}

function addRemoval(tape: Tape, made: Made, i: number): void {
  const { job, removals } = made;
  const did = tape.of(['off', 'off', 'off', 'slackened', 'opened', 'aside', 'safe'] as const);
  const removal = job.removal(`R${i + 1}`, {
    did,
    place: tape.of(['', 'front', 'rear']),
    defaultNeed: tape.of(['assumed', 'assumed', 'confirmed', 'loosened'] as const),
    phase: tape.of(['off', 'off', 'off', 'off', 'off', 'void', 'under way', 'planned', 'given up'] as const),
    benchPartId: made.parts.length > 0 && tape.once(4) ? tape.of(made.parts) : null,
  });
  for (let k = tape.pick(3); k > 0 && removals.length > 0; k--)
    removal.need(tape.of(removals), !tape.once(2));
  removals.push(removal);
  fill(tape, made, removal, did === 'safe');
}

function fill(tape: Tape, made: Made, removal: RemovalBuilder, safe: boolean): void {
  const { parts, holes, connections } = made;
  if (safe || tape.once(6)) addIsolation(tape, made, removal);
  if (tape.once(2)) {
    const carry = parts.length > 0 && tape.once(5);
    parts.push(
      removal.part(`Part ${parts.length + 1}`, {
        hidden: tape.once(3),
        ...(carry ? { fate: 'carry over', carryToId: tape.of(parts) } : {}),
        ...(tape.once(9) ? { fate: 'leave out' } : {}),
      }),
    );
  }
  if (tape.once(2)) {
    const later = tape.of([null, null, null, 'on the ground', 'warm', 'after Own 1 alignment']);
    const set = removal.set(1 + tape.pick(3), { laterWhen: later, recheck: tape.once(6) });
    holes.push(...set.holes);
    if (tape.once(4)) made.job.set('position', set.holes[0] ?? '', { hidden: true });
  }
  if (tape.once(3))
    connections.push(removal.connection(`Joint ${connections.length + 1}`, { hidden: tape.once(3) }));
}

function addIsolation(tape: Tape, made: RandomJob, removal: RemovalBuilder): void {
  const energy = tape.of(['electricity', 'load', 'pressure', 'spring', 'fuel'] as const);
  const listed = tape.once(4) && made.removals.length > 0;
  const isolation = removal.isolation(energy, {
    how: tape.of(['', 'valve shut', 'let off']),
    scope: listed ? 'listed' : 'all',
  });
  if (listed) removal.protects(isolation, tape.of(made.removals), tape.of(made.removals));
}

function addFluids(tape: Tape, made: RandomJob): void {
  const { job, removals, parts, holes, connections } = made;
  const things = [...removals.map((removal) => removal.id), ...parts, ...holes, ...connections];
  for (let k = tape.pick(4); k > 0; k--) {
    const opens = Array.from({ length: tape.pick(4) }, () => tape.of(things));
    const fluid = job.fluid(`Fluid ${k}`, [...new Set(opens)], {
      liveEnergy: tape.of([null, null, 'electricity', 'pressure'] as const),
      bleed: tape.once(2),
      drainedMl: tape.once(3) ? 1000 : null,
    });
    const open = job.rows.isolation.filter((row) => row.scope === 'all');
    const valve = tape.once(2) && open.length > 0 ? tape.of(open) : null;
    if (valve) job.set('isolation', valve.id, { scope: 'fluid', fluidId: fluid });
  }
}

/** Any thing of the job that an order of the user's can name. */
export function anyThing(tape: Tape, made: RandomJob): string {
  const { job, removals, parts, holes, ownSteps } = made;
  return tape.of([
    ...removals.map((removal) => removal.id),
    ...ownSteps,
    ...parts,
    ...holes,
    ...job.rows.fluid.map((row) => row.id),
    ...job.rows.isolation.map((row) => row.id),
    ...job.rows.fset.map((row) => row.id),
  ]);
}
