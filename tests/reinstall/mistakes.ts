import {
  as,
  bagShort,
  early,
  fresh,
  isOn,
  leaves,
  type Mistake,
  reached,
  skips,
  someHole,
  swappedLengths,
  swaps,
  wants,
} from './slips.ts';
import { pick } from './story.ts';

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
    slip: (machine) => {
      const set = machine.story.set(machine.ids.wheel ?? '').id;
      return (doing) => (doing.what === 'tightened' && doing.thingIds.includes(set) ? [] : null);
    },
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
  {
    name: 'tightened past what the bolt holds',
    must: ['cover'],
    codes: ['torque.past-proof'],
    deadline: 'guard',
    slip: reached('cover', '70 Nm'),
  },
  {
    name: 'a plug pulled before the battery was off',
    must: ['plug'],
    codes: ['isolation.late'],
    deadline: 'log',
    before: async (machine) => {
      await machine.story.off('mains locked out');
    },
  },
];
