import fc from 'fast-check';
import type { Row } from '../../core/model/tables.ts';
import { build, type JobBuilder, type RemovalBuilder } from '../support/build.ts';

/** Small jobs with everything that bends the list: numbers that are taken modulo what is there, so that they shrink. */
export interface Recipe {
  readonly removals: readonly {
    readonly kind: 'off' | 'off' | 'safe' | 'drain' | 'both';
    readonly energy: 'electricity' | 'load' | 'motion' | 'spring' | 'ignition';
    readonly place: '' | 'front' | 'under';
    readonly chain: 'assumed' | 'confirmed' | 'loosened';
    readonly bench: number;
    readonly needs: readonly number[];
    readonly lack: 'none' | 'blocked' | 'away' | 'renew' | 'renewed';
    readonly later: '' | 'on the ground' | 'warm';
  }[];
  readonly shared: readonly { readonly home: number; readonly others: readonly number[] }[];
  readonly fluids: readonly {
    readonly opens: readonly number[];
    readonly bleed: boolean;
    readonly live: 'none' | 'first';
  }[];
  readonly carried: readonly { readonly part: number; readonly to: number }[];
  readonly own: readonly { readonly before: number; readonly after: number; readonly step: boolean }[];
  readonly listed: readonly { readonly isolation: number; readonly removals: readonly number[] }[];
  readonly done: readonly number[];
}

const few = (max: number) => ({ maxLength: max });

export const anyRecipe: fc.Arbitrary<Recipe> = fc.record({
  removals: fc.array(
    fc.record({
      kind: fc.constantFrom('off', 'off', 'off', 'off', 'safe', 'drain', 'both'),
      energy: fc.constantFrom('electricity', 'load', 'motion', 'spring', 'ignition'),
      place: fc.constantFrom('', '', 'front', 'under'),
      chain: fc.constantFrom('assumed', 'assumed', 'confirmed', 'loosened'),
      bench: fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(8) }),
      needs: fc.oneof(
        { weight: 2, arbitrary: fc.constant([]) },
        { weight: 1, arbitrary: fc.array(fc.nat(8), few(2)) },
      ),
      lack: fc.constantFrom('none', 'none', 'none', 'none', 'blocked', 'away', 'renew', 'renewed'),
      later: fc.constantFrom('', '', '', '', 'on the ground', 'warm'),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  shared: fc.array(
    fc.record({ home: fc.nat(8), others: fc.array(fc.nat(8), { minLength: 1, maxLength: 2 }) }),
    few(2),
  ),
  fluids: fc.array(
    fc.record({
      opens: fc.array(fc.nat(8), { minLength: 1, maxLength: 3 }),
      bleed: fc.boolean(),
      live: fc.constantFrom('none', 'first'),
    }),
    few(2),
  ),
  carried: fc.array(fc.record({ part: fc.nat(8), to: fc.nat(8) }), few(1)),
  own: fc.array(fc.record({ before: fc.nat(8), after: fc.nat(8), step: fc.boolean() }), few(2)),
  listed: fc.array(
    fc.record({ isolation: fc.nat(8), removals: fc.array(fc.nat(8), { minLength: 1, maxLength: 3 }) }),
    few(1),
  ),
  done: fc.array(fc.nat(20), few(6)),
}) as fc.Arbitrary<Recipe>;

interface Made {
  readonly removal: RemovalBuilder;
  readonly part: string | null;
  readonly holes: readonly string[];
}

function addRemovals(job: JobBuilder, recipe: Recipe): Made[] {
  const made: Made[] = [];
  for (const [i, one] of recipe.removals.entries()) {
    const did = one.kind === 'safe' ? 'safe' : one.kind === 'drain' ? 'opened' : 'off';
    const parts = made.flatMap((other) => (other.part === null ? [] : [other.part]));
    const bench =
      one.bench > 0 && one.kind === 'off' && parts.length > 0 ? parts[one.bench % parts.length] : null;
    const removal = job.removal(`r${i + 1}`, {
      did,
      place: one.place,
      defaultNeed: one.chain,
      benchPartId: bench ?? null,
    });
    if (one.kind === 'safe' || one.kind === 'both') removal.isolation(one.energy, { how: one.energy });
    if (did !== 'off') {
      made.push({ removal, part: null, holes: [] });
    } else made.push(addPieces(job, removal, one, i));
    for (const need of one.needs) {
      const other = made[need % (i + 1)];
      if (other && other.removal !== removal) removal.needs(other.removal);
    }
  }
  return made;
}

function addPieces(
  job: JobBuilder,
  removal: RemovalBuilder,
  one: Recipe['removals'][number],
  i: number,
): Made {
  const stowId = job.bag();
  const renew = one.lack === 'renew' || one.lack === 'renewed' ? 'must' : 'no';
  const part = removal.part(`part ${i + 1}`, { stowId, renew });
  if (one.lack === 'renewed')
    job.move({ partId: part, src: 'supply', dst: 'stow', dstStowId: stowId, fresh: true, cause: 'received' });
  if (one.lack === 'away') job.away(part);
  const { holes } = removal.set(2, { stowId, torqueFrom: 'by feel' });
  if (one.lack === 'blocked')
    job.set('position', holes[0] ?? '', { fate: 'blocked', fateWhy: 'broken stud' });
  if (one.later !== '') removal.set(1, { stowId, laterWhen: one.later, torqueFrom: 'by feel' });
  return { removal, part, holes };
}

/** Builds the job of a recipe. Own orders only go the way of the log back, so that they close no ring among removals. */
export function jobOf(recipe: Recipe): JobBuilder {
  const job = build();
  const made = addRemovals(job, recipe);
  const full = made.filter((one) => one.part !== null);
  const at = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];
  for (const one of recipe.shared) {
    const home = at(full, one.home);
    for (const other of one.others) {
      const part = at(full, other)?.part;
      // The second hole: the first one may be blocked, which is a lack of its own.
      const hole = home?.holes[1];
      if (
        part &&
        hole &&
        part !== home.part &&
        !job.rows.holds.some((row) => row.partId === part && row.positionId === hole)
      )
        job.holds(hole, part);
    }
  }
  const isolation = job.rows.isolation[0];
  for (const [i, one] of recipe.fluids.entries()) {
    const things = [
      ...new Set(
        one.opens.map(
          (n) =>
            at(
              made.filter((m) => m.part !== null || m.removal.id === drainId(job, m)),
              n,
            )?.removal.id ?? '',
        ),
      ),
    ];
    if (things.includes('')) continue;
    job.fluid(`fluid ${i + 1}`, things, {
      bleed: one.bleed,
      drainedMl: 1000,
      liveEnergy: one.live === 'first' && isolation ? isolation.energy : null,
    });
  }
  for (const one of recipe.listed) {
    const row = at(job.rows.isolation, one.isolation);
    if (!row || full.length === 0) continue;
    job.set('isolation', row.id, { scope: 'listed' });
    const removals = new Set(one.removals.map((n) => at(full, n)?.removal.id ?? ''));
    for (const removalId of removals)
      job.add('protects', job.id('protects'), { isolationId: row.id, removalId });
  }
  for (const one of recipe.carried) carry(job, at(full, one.part), at(full, one.to));
  for (const one of recipe.own) {
    const [a, b] = [one.before % Math.max(1, full.length), one.after % Math.max(1, full.length)];
    if (one.step && full[b]) job.first(job.ownStep('look'), full[b].removal.id);
    else if (a > b) job.first(full[a]?.removal.id ?? '', full[b]?.removal.id ?? '');
  }
  return job;
}

function drainId(job: JobBuilder, one: Made): string {
  return job.rows.removal.find((row) => row.id === one.removal.id)?.did === 'opened' ? one.removal.id : '';
}

/** The part goes onto a new one that is fitted with another removal. */
function carry(job: JobBuilder, from: Made | undefined, to: Made | undefined): void {
  if (!from?.part || !to?.part || from === to) return;
  const stowId = job.bag();
  const fresh = job.part('new parent', {
    removalId: to.removal.id,
    kind: 'new part',
    how: 'fitted new',
    stowId,
  });
  job.move({ partId: fresh, src: 'supply', dst: 'stow', dstStowId: stowId, fresh: true, cause: 'received' });
  job.set('part', from.part, { fate: 'carry over', carryToId: fresh, renew: 'no' });
}

/** Ticks a step off, whatever its state, by its kind and what it is ticked on. */
export function tickOff(job: JobBuilder, kind: string, thingId: string, shared: ReadonlySet<string>): void {
  const { rows } = job;
  switch (kind) {
    case 'C1':
      job.deed(thingId, 'filled', { value: 1000 }).deed(thingId, 'cold leak checked');
      return;
    case 'C2':
      job.deed(thingId, 'bled').deed(thingId, 'hot leak checked');
      return;
    case 'I':
      job.deed(thingId, 'given back');
      return;
    case 'F':
      job.deed(thingId, 'tightened');
      fill(
        job,
        rows.position.filter((one) => one.id === thingId),
      );
      return;
    case 'B':
      fit(
        job,
        rows.part.find((one) => one.id === thingId),
      );
      return;
    case 'T':
      for (const hole of rows.position) if (hole.setId === thingId) job.deed(hole.id, 'tightened');
      return;
    case 'S':
      refit(job, thingId, shared);
      return;
    default:
      job.deed(thingId, 'done');
  }
}

/** Everything of a removal back: what else is ticked on its own (shared holes, carried parts) is left alone. */
function refit(job: JobBuilder, removalId: string, shared: ReadonlySet<string>): void {
  const { rows } = job;
  for (const part of rows.part) {
    if (part.removalId !== removalId || part.fate === 'carry over' || part.how === 'aside') continue;
    fit(job, part);
  }
  for (const set of rows.fset) {
    if (set.removalId !== removalId) continue;
    const ticked = new Set(rows.deed.map((one) => one.thingId));
    const holes = rows.position.filter(
      (one) => one.setId === set.id && !shared.has(one.id) && !ticked.has(one.id),
    );
    for (const hole of holes) job.deed(hole.id, set.laterWhen === null ? 'tightened' : 'started');
    fill(job, holes);
  }
  job.deed(removalId, 'done');
}

function fit(job: JobBuilder, part: Row<'part'> | undefined): void {
  if (!part) return;
  const fresh = part.renew === 'must' || part.how === 'fitted new';
  job.deed(part.id, 'fitted', { fresh });
  job.move({ partId: part.id, src: 'stow', srcStowId: part.stowId, dst: 'hole', fresh });
}

function fill(job: JobBuilder, holes: readonly Row<'position'>[]): void {
  for (const hole of holes) {
    const set = job.rows.fset.find((one) => one.id === hole.setId);
    if (set)
      job.move({
        specId: set.specId,
        homeSetId: set.id,
        positionId: hole.id,
        src: 'stow',
        srcStowId: set.stowId,
        dst: 'hole',
      });
  }
}
