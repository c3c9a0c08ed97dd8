import type { FindingCode } from '../../core/reinstall/index.ts';
import type { Doing, Slip } from './play.ts';
import type { Block, Machine } from './machine.ts';
import { type Chance, pick } from './story.ts';

/** How far somebody may get before the program must have spoken. */
export type Deadline =
  /** Before the guard over everything counts as back. */
  | 'guard'
  /** Before the step of this removal counts as done. */
  | { readonly step: string }
  /** Before this deed is taken. */
  | { readonly deed: Doing['what']; readonly on: string }
  /** Before the job is closed. */
  | 'close'
  /** As soon as it is written down. */
  | 'log';

export interface Mistake {
  readonly name: string;
  readonly must: readonly Block[];
  readonly codes: readonly FindingCode[];
  readonly deadline: Deadline;
  /** Planted before the way back begins. */
  readonly before?: (machine: Machine, rnd: Chance) => Promise<void>;
  readonly slip?: (machine: Machine, rnd: Chance) => Slip;
  /** Cured sealant is waited for. */
  readonly patient?: false;
}

export const as = (doing: Doing, more: Partial<Doing>): Doing => ({ ...doing, ...more });
export const isOn = (doing: Doing, id: string | undefined): boolean => doing.thingIds.includes(id ?? '');

/** The deed on this thing is left out; everything else is done. */
export function leaves(what: Doing['what'], name: string): NonNullable<Mistake['slip']> {
  return (machine) => (doing) =>
    (doing.what === what && isOn(doing, machine.ids[name])) ||
    (doing.what === 'done' && !whole(machine, doing))
      ? []
      : null;
}

/** "All done" in one touch is for somebody who looked; the careless one ticks piece by piece. */
const whole = (machine: Machine, doing: Doing): boolean => doing.thingIds[0] === machine.guard;

/** These holes of a removal are left out of a deed. */
export function skips(
  whats: readonly Doing['what'][],
  name: string,
  holes: (machine: Machine, rnd: Chance) => readonly string[],
): NonNullable<Mistake['slip']> {
  return (machine, rnd) => {
    const out = new Set(holes(machine, rnd));
    return (doing) => {
      if (doing.what === 'done' && doing.thingIds[0] === machine.ids[name]) return [];
      if (!whats.includes(doing.what) || !doing.thingIds.some((id) => out.has(id))) return null;
      const rest = doing.thingIds.filter((id) => !out.has(id));
      return rest.length === 0 ? [] : [as(doing, { thingIds: rest })];
    };
  };
}

export const someHole = (name: string) => (machine: Machine, rnd: Chance) => [
  pick(rnd, machine.story.holes(machine.ids[name] ?? '')),
];

export function reached(name: string, typed: string): NonNullable<Mistake['slip']> {
  return (machine) => {
    const holes = new Set(machine.story.holes(machine.ids[name] ?? ''));
    return (doing) =>
      doing.what === 'tightened' && doing.thingIds.some((id) => holes.has(id))
        ? [as(doing, { more: { ...doing.more, valueTyped: typed, known: 'read' } })]
        : null;
  };
}

/** Two things in each other's place. */
export function swaps(what: Doing['what'], a: string, b: string): NonNullable<Mistake['slip']> {
  return (machine) => (doing) => {
    const other = isOn(doing, machine.ids[a])
      ? machine.ids[b]
      : isOn(doing, machine.ids[b])
        ? machine.ids[a]
        : null;
    if (doing.what !== what || !other) return null;
    return [as(doing, { more: { ...doing.more, withThingId: other } })];
  };
}

/** Out before anything else of its step. */
export function early(name: string, removal: string): NonNullable<Mistake['slip']> {
  return (machine) => {
    let out = false;
    const holes = new Set(machine.story.holes(machine.ids[removal] ?? ''));
    return (doing) => {
      if (doing.what === 'taken out' && isOn(doing, machine.ids[name])) return [];
      if (out || !(doing.what === 'tightened' && doing.thingIds.some((id) => holes.has(id)))) return null;
      out = true;
      return [
        as(doing, { thingIds: [machine.ids[name] ?? ''], what: 'taken out', more: { valueTyped: '1' } }),
        doing,
      ];
    };
  };
}

export async function bagShort(machine: Machine, name: string): Promise<void> {
  const { story } = machine;
  const set = story.set(machine.ids[name] ?? '');
  const holes = story.holes(machine.ids[name] ?? '').length;
  await story.count(set.stowId ?? '', holes - 1);
}

/** The lengths of a mixed joint the wrong way round in two holes. */
export const swappedLengths: NonNullable<Mistake['slip']> = (machine) => {
  const { story } = machine;
  const holes = story.state.position.filter((hole) => hole.setId === story.set(machine.ids.mixed ?? '').id);
  const specs = [...new Set(holes.map((hole) => hole.specId ?? ''))];
  const wrong = new Map(
    specs.flatMap((spec, i) => {
      const hole = holes.find((one) => one.specId === spec);
      return hole ? [[hole.id, specs[1 - i] ?? ''] as const] : [];
    }),
  );
  for (const [hole, spec] of wrong) story.wrong.set(hole, spec);
  const seen = new Set<string>();
  return (doing) => {
    const mine = doing.thingIds.filter((id) => wrong.has(id) && !seen.has(id));
    if (mine.length === 0 || (doing.what !== 'started' && doing.what !== 'tightened')) return null;
    for (const id of mine) seen.add(id);
    const rest = doing.thingIds.filter((id) => !mine.includes(id));
    return [
      ...mine.map((id) =>
        as(doing, { thingIds: [id], more: { ...doing.more, withSpecId: wrong.get(id) ?? '' } }),
      ),
      ...(rest.length > 0 ? [as(doing, { thingIds: rest })] : []),
    ];
  };
};

export const fresh =
  (name: string, removal: string): NonNullable<Mistake['slip']> =>
  (machine) => {
    const things = new Set([machine.ids[name], ...machine.story.holes(machine.ids[removal] ?? '')]);
    return (doing) =>
      doing.thingIds.some((id) => things.has(id)) && doing.more.fresh === true
        ? [as(doing, { more: { ...doing.more, fresh: false } })]
        : null;
  };

export const wants =
  (name: string, values: Record<string, unknown>): NonNullable<Mistake['before']> =>
  async (machine) => {
    await machine.story.change('fset', machine.story.set(machine.ids[name] ?? '').id, values);
  };
