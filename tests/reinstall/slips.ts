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

const as = (doing: Doing, more: Partial<Doing>): Doing => ({ ...doing, ...more });
const isOn = (doing: Doing, id: string | undefined): boolean => doing.thingIds.includes(id ?? '');

/** The deed on this thing is left out; everything else is done. */
function leaves(what: Doing['what'], name: string): NonNullable<Mistake['slip']> {
  return (machine) => (doing) =>
    (doing.what === what && isOn(doing, machine.ids[name])) ||
    (doing.what === 'done' && !whole(machine, doing))
      ? []
      : null;
}

/** "All done" in one touch is for somebody who looked; the careless one ticks piece by piece. */
const whole = (machine: Machine, doing: Doing): boolean => doing.thingIds[0] === machine.guard;

/** These holes of a removal are left out of a deed. */
function skips(
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

const someHole = (name: string) => (machine: Machine, rnd: Chance) => [
  pick(rnd, machine.story.holes(machine.ids[name] ?? '')),
];

function reached(name: string, typed: string): NonNullable<Mistake['slip']> {
  return (machine) => {
    const holes = new Set(machine.story.holes(machine.ids[name] ?? ''));
    return (doing) =>
      doing.what === 'tightened' && doing.thingIds.some((id) => holes.has(id))
        ? [as(doing, { more: { ...doing.more, valueTyped: typed, known: 'read' } })]
        : null;
  };
}

/** Two things in each other's place. */
function swaps(what: Doing['what'], a: string, b: string): NonNullable<Mistake['slip']> {
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
function early(name: string, removal: string): NonNullable<Mistake['slip']> {
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

async function bagShort(machine: Machine, name: string): Promise<void> {
  const { story } = machine;
  const set = story.set(machine.ids[name] ?? '');
  const holes = story.holes(machine.ids[name] ?? '').length;
  await story.count(set.stowId ?? '', holes - 1);
}

/** The lengths of a mixed joint the wrong way round in two holes. */
const swappedLengths: NonNullable<Mistake['slip']> = (machine) => {
  const { story } = machine;
  const holes = story.state.position.filter((hole) => hole.setId === story.set(machine.ids.mixed ?? '').id);
  const specs = [...new Set(holes.map((hole) => hole.specId ?? ''))];
  const wrong = new Map(
    specs.flatMap((spec, i) => {
      const hole = holes.find((one) => one.specId === spec);
      return hole ? [[hole.id, specs[1 - i] ?? ''] as const] : [];
    }),
  );
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

const fresh =
  (name: string, removal: string): NonNullable<Mistake['slip']> =>
  (machine) => {
    const things = new Set([machine.ids[name], ...machine.story.holes(machine.ids[removal] ?? '')]);
    return (doing) =>
      doing.thingIds.some((id) => things.has(id)) && doing.more.fresh === true
        ? [as(doing, { more: { ...doing.more, fresh: false } })]
        : null;
  };

const wants =
  (name: string, values: Record<string, unknown>): NonNullable<Mistake['before']> =>
  async (machine) => {
    await machine.story.change('fset', machine.story.set(machine.ids[name] ?? '').id, values);
  };

/** One of each kind, some in more than one way. */
export const MISTAKES: readonly Mistake[] = [
  {
    name: 'a bolt lost, seen when the bag is counted',
    must: ['cover'],
    codes: ['item.unaccounted', 'count.differs'],
    deadline: 'log',
    before: (machine) => bagShort(machine, 'cover'),
  },
  {
    name: 'a bolt lost, and a new one bought instead of searching',
    must: ['cover'],
    codes: ['item.unaccounted', 'count.differs'],
    deadline: 'guard',
    before: async (machine) => {
      await bagShort(machine, 'cover');
      await machine.story.receive(machine.story.set(machine.ids.cover ?? '').id, 1);
    },
  },
  {
    name: 'two lengths swapped',
    must: ['mixed'],
    codes: ['fastener.look-alike', 'fastener.left-over'],
    deadline: 'guard',
    slip: swappedLengths,
  },
  {
    name: 'a rag left in the port',
    must: ['rags'],
    codes: ['temporary.in-place'],
    deadline: 'guard',
    slip: leaves('taken out', 'rags'),
  },
  {
    name: 'the caging bolt out before the cover is tight',
    must: ['caged'],
    codes: ['temporary.hold'],
    deadline: { step: 'chamber' },
    slip: early('caging', 'chamber'),
  },
  {
    name: 'the strap off before what it holds is fast',
    must: ['strapped'],
    codes: ['temporary.hold'],
    deadline: { step: 'caliper' },
    slip: early('strap', 'caliper'),
  },
  {
    name: 'the caging bolt left in',
    must: ['caged'],
    codes: ['temporary.in-place'],
    deadline: 'guard',
    slip: leaves('taken out', 'caging'),
  },
  {
    name: 'the old gasket used again',
    must: ['cover'],
    codes: ['renew.not-in-hand'],
    deadline: 'guard',
    slip: fresh('gasket', 'cover'),
  },
  {
    name: 'old bolts used again where they must be new',
    must: ['new bolts'],
    codes: ['renew.not-in-hand'],
    deadline: 'guard',
    slip: fresh('flange', 'flange'),
  },
  {
    name: 'less fluid filled than came out',
    must: ['cover'],
    codes: ['fluid.amount'],
    deadline: 'close',
    slip: (machine) => (doing) =>
      doing.what === 'filled' && isOn(doing, machine.ids.oil)
        ? [as(doing, { more: { valueTyped: '1,5 l' } })]
        : null,
  },
  {
    name: 'fluid not filled at all',
    must: ['cover'],
    codes: ['fluid.open'],
    deadline: 'close',
    slip: leaves('filled', 'oil'),
  },
  {
    name: 'a bolt started and never tightened',
    must: ['cover'],
    codes: ['fastener.loose'],
    deadline: 'guard',
    slip: (m, r) => {
      const holes = someHole('cover')(m, r);
      const inner = skips(['tightened'], 'cover', () => holes)(m, r);
      let begun = false;
      return (doing) => {
        if (
          !begun &&
          doing.what === 'tightened' &&
          doing.thingIds.some((id) => m.story.holes(m.ids.cover ?? '').includes(id))
        ) {
          begun = true;
          return [as(doing, { thingIds: holes, what: 'started', more: {} }), ...(inner(doing) ?? [doing])];
        }
        return inner(doing);
      };
    },
  },
  {
    name: 'slackened nuts never tightened',
    must: ['slackened'],
    codes: ['fastener.loose'],
    deadline: 'guard',
    slip: skips(['started', 'tightened'], 'slack', (m) => m.story.holes(m.ids.slack ?? '')),
  },
  {
    name: 'two bearing caps swapped',
    must: ['caps'],
    codes: ['part.place'],
    deadline: 'guard',
    slip: swaps('fitted', 'cap 1', 'cap 2'),
  },
  {
    name: 'a bearing cap left on the bench',
    must: ['caps'],
    codes: ['part.missing', 'part.left-over'],
    deadline: 'guard',
    slip: leaves('fitted', 'cap 2'),
  },
  {
    name: 'one of three port caps not out again',
    must: ['counted caps'],
    codes: ['item.unaccounted', 'count.differs', 'temporary.in-place'],
    deadline: 'guard',
    slip: (machine) => (doing) =>
      doing.what === 'taken out' && isOn(doing, machine.ids.ports)
        ? [as(doing, { more: { valueTyped: '2' } })]
        : null,
  },
  {
    name: 'two hoses swapped',
    must: ['hoses'],
    codes: ['mate.swapped'],
    deadline: 'guard',
    slip: swaps('joined', 'supply hose', 'return hose'),
  },
  {
    name: 'filled while the sealant is wet',
    must: ['sealed'],
    codes: ['cure.wait'],
    deadline: { deed: 'filled', on: 'oil' },
    patient: false,
  },
  {
    name: 'a measurement skipped',
    must: ['shaft'],
    codes: ['measure.missing'],
    deadline: 'guard',
    slip: leaves('measured', 'float'),
  },
  {
    name: 'a measurement out of its limits',
    must: ['shaft'],
    codes: ['measure.off'],
    deadline: 'guard',
    slip: (machine) => (doing) =>
      doing.what === 'measured' && isOn(doing, machine.ids.float)
        ? [as(doing, { more: { valueTyped: '0,6 mm' } })]
        : null,
  },
  {
    name: 'too little torque',
    must: ['cover'],
    codes: ['torque.off'],
    deadline: 'guard',
    slip: reached('cover', '14 Nm'),
  },
  {
    name: 'more torque than wanted',
    must: ['cover'],
    codes: ['torque.off', 'torque.past-proof'],
    deadline: 'guard',
    slip: reached('cover', '33 Nm'),
  },
  {
    name: 'more torque wanted than the bolt holds',
    must: ['cover'],
    codes: ['torque.past-proof'],
    deadline: { step: 'cover' },
    before: wants('cover', { torqueMnm: 70_000, torqueTyped: '70 N·m' }),
  },
  {
    name: 'a pound-inch figure written as newton metres',
    must: ['cover'],
    codes: ['torque.past-proof'],
    deadline: { step: 'cover' },
    before: wants('cover', { torqueMnm: 220_000, torqueTyped: '220 N·m' }),
  },
  {
    name: 'the wrench set in pound-feet',
    must: ['cover'],
    codes: ['torque.off'],
    deadline: 'guard',
    slip: reached('cover', '25 lbf·ft'),
  },
  {
    name: 'the wrench set in pound-inches',
    must: ['cover'],
    codes: ['torque.off'],
    deadline: 'guard',
    slip: reached('cover', '25 lbf·in'),
  },
  {
    name: 'a plug left open',
    must: ['plug'],
    codes: ['connection.open'],
    deadline: 'guard',
    slip: leaves('joined', 'plug'),
  },
  {
    name: 'a part forgotten on the bench',
    must: ['cover'],
    codes: ['part.missing', 'part.left-over'],
    deadline: 'guard',
    slip: leaves('fitted', 'gasket'),
  },
  {
    name: 'the final tightening forgotten',
    must: ['wheel'],
    codes: ['torque.later'],
    deadline: 'close',
    slip: skips(['tightened'], 'wheel', (m) => m.story.holes(m.ids.wheel ?? '')),
  },
  {
    name: 'a hole that nobody can see left empty',
    must: ['hidden'],
    codes: ['fastener.short'],
    deadline: 'guard',
    slip: skips(['started', 'tightened'], 'inner', (m, r) => [
      pick(r, m.story.holes(m.ids.inner ?? '').slice(0, 2)),
    ]),
  },
  {
    name: 'a bolt that holds two parts forgotten',
    must: ['shared bolt'],
    codes: ['fastener.short'],
    deadline: 'guard',
    slip: skips(['started', 'tightened'], 'bracket', (m) => m.story.holes(m.ids.bracket ?? '').slice(0, 1)),
  },
];
