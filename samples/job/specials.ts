import type { Row } from '../../core/model/tables.ts';
import { type Bench, must } from './bench.ts';
import type { Crew } from './take-apart.ts';

/** What a removal of the story holds beside its entry lines: names, own lengths, what is shared, what stays inside. */
type Special = (bench: Bench, who: Crew) => Promise<void>;

const removalOf = (bench: Bench, title: string): string => bench.find('removal', title).id;

/** Rows of the removal in one table, oldest first. */
function rows<T extends 'connection' | 'isolation' | 'part' | 'measure'>(
  bench: Bench,
  table: T,
  title: string,
): Row<T>[] {
  const id = removalOf(bench, title);
  return (bench.state()[table] as readonly Row<T>[])
    .filter((row) => row.removalId === id)
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

async function mainsLocked(bench: Bench): Promise<void> {
  const title = 'Mains locked out at the dryer’s isolator';
  for (const one of rows(bench, 'isolation', title))
    await bench.change('isolation', one.id, { lockOwner: 'Edda Marlow (lock 7)', how: 'mains locked out, lock 7' });
}

async function plugs(bench: Bench): Promise<void> {
  const [plug, earth] = rows(bench, 'connection', 'Plugs and earth lead');
  await bench.change('connection', plug?.id ?? '', { name: 'plug, pressure switch', ends: 1 });
  await bench.change('connection', earth?.id ?? '', { name: 'earth lead', goesTo: 'left foot', seal: 'none' });
}

async function belts(bench: Bench): Promise<void> {
  const belt = bench.find('part', 'V-belts');
  await bench.change('part', belt.id, { stamped: 'A and B', ownPlaceText: 'A inside, B outside' });
}

async function pulley(bench: Bench): Promise<void> {
  const key = bench.sets('Pulley and taper bush')[1];
  if (key) must(await bench.client.record.remove({ ...bench.base(), table: 'fset', id: key.id }));
  const removalId = removalOf(bench, 'Pulley and taper bush');
  await bench.make('part', { removalId, name: 'pulley key', kind: 'key', ownPlace: true });
  await bench.change('part', bench.find('part', 'pulley').id, { fate: 'clean and refit' });
}

async function tensioner(bench: Bench): Promise<void> {
  const title = 'Belt tensioner';
  const removalId = removalOf(bench, title);
  const oil = bench.find('fluid', 'hydraulic oil');
  await bench.change('fluid', oil.id, { type: 'VG 32', capacityMl: 250, bleed: true });
  const isolationId = await bench.make('isolation', {
    removalId: removalOf(bench, 'Pressure let off in the discharge line'),
    energy: 'pressure',
    how: 'hydraulic pressure let off at the ram',
    scope: 'fluid',
    fluidId: oil.id,
  });
  await bench.change('isolation', isolationId, { lockOwner: '' });
  const [hose] = rows(bench, 'connection', title);
  await bench.change('connection', hose?.id ?? '', { name: 'tensioner hose', joint: 'face', ends: 2, seal: 'none' });
  await bench.make('opens', { fluidId: oil.id, thingId: hose?.id });
  await bench.make('temporary', { removalId, name: 'caps on the hose ends', qty: 2, role: 'blocks' });
  // Nobody can see the fourth one: it is felt for behind the bracket.
  const [set] = bench.sets(title);
  if (set) await bench.change('position', bench.hole(set, 4).id, { hidden: true });
}

async function inlet(bench: Bench): Promise<void> {
  const title = 'Inlet elbow';
  await bench.make('part', { removalId: removalOf(bench, title), name: 'inlet elbow' });
  await washers(bench, title);
}

/** A washer under each head of the first set. */
async function washers(bench: Bench, title: string): Promise<void> {
  const [set] = bench.sets(title);
  if (!set) throw new Error(`${title} has no fasteners.`);
  const specId = await bench.make('spec', { kind: 'washer' });
  await bench.make('stackItem', { setId: set.id, what: 'washer', specId, qty: 1, points: 'under the head' });
}

async function reliefValve(bench: Bench): Promise<void> {
  const valve = bench.find('part', 'relief valve');
  await bench.change('part', valve.id, { fate: 'send out', fateWhy: 'To be tested and set to 0.5 bar.' });
  must(
    await bench.client.away.send({
      ...bench.base(),
      thingId: valve.id,
      toWhom: 'Kessling valve bench',
      due: Date.parse('2025-10-20T12:00:00Z'),
      note: 'Test and set to 0.5 bar, with tag.',
    }),
  );
}

async function pressureLine(bench: Bench): Promise<void> {
  const title = 'Pressure line, moved aside';
  const [union] = rows(bench, 'connection', title);
  await bench.change('connection', union?.id ?? '', {
    name: 'pressure line union',
    kind: 'union',
    joint: 'flare',
    seal: 'none',
  });
  await bench.change('removal', removalOf(bench, title), { did: 'aside', heldBy: 'wire to the frame' });
  await bench.make('part', { removalId: removalOf(bench, title), name: 'pressure line', how: 'aside' });
}

async function gearOil(bench: Bench): Promise<void> {
  const oil = bench.find('fluid', 'gear oil');
  await bench.change('fluid', oil.id, { type: 'VG 220', capacityMl: 900 });
  const title = 'Gear oil';
  for (const set of bench.sets(title))
    must(await bench.client.set.count({ ...bench.base(), setId: set.id, count: 1 }));
  const drain = bench.find('part', 'drain plug');
  await bench.make('opens', { fluidId: oil.id, thingId: drain.id });
}

async function hoseBracket(bench: Bench): Promise<void> {
  const removalId = removalOf(bench, 'Hose bracket, moved aside');
  await bench.change('removal', removalId, { heldBy: 'wire to the frame' });
  await bench.make('mark', { removalId, kind: 'routing', body: 'Hose outside the pressure line, clips every 20 cm.' });
}

async function gearCover(bench: Bench, who: Crew): Promise<void> {
  const title = 'Gear cover';
  const [set] = bench.sets(title);
  if (!set) throw new Error('The gear cover has no bolts.');
  const long = [
    ...[3, 10, 13, 14].map((n) => ({ n, lengthUm: 40_000 })),
    ...[6, 7].map((n) => ({ n, lengthUm: 50_000 })),
  ];
  await bench.change('position', bench.hole(set, 11).id, { found: 'empty' });
  must(await bench.client.set.lengths({ ...bench.base(), setId: set.id, holes: long }));
  await bench.change('position', bench.hole(set, 4).id, { condition: 'stripped' });
  await bench.change('fset', set.id, { name: 'gear cover bolts', torqueFrom: 'maker', torquePage: 'plate on the cover' });
  const bracket = bench.find('part', 'hose bracket');
  for (const n of [6, 7]) await bench.make('holds', { positionId: bench.hole(set, n).id, partId: bracket.id });
  const cover = bench.find('part', 'gear cover', title);
  await bench.change('part', cover.id, { condition: 'hairline crack at boss 4', fate: 'renew', fateWhy: 'Cracked at boss 4.' });
  const removalId = removalOf(bench, title);
  const ring = bench.find('part', 'O-ring', title);
  await bench.change('part', ring.id, { name: 'sight glass O-ring' });
  const fresh = await bench.make('part', {
    removalId,
    name: 'new gear cover',
    kind: 'new part',
    how: 'fitted new',
    qty: 0,
  });
  await bench.make('part', {
    removalId,
    name: 'sight glass',
    parentId: cover.id,
    fate: 'carry over',
    carryToId: fresh,
    fateWhy: 'The new cover comes without one.',
  });
  await bench.make('consumable', {
    thingId: removalId,
    kind: 'sealant',
    name: 'Sealant at the four joints of the gasket',
    skinMinutes: 10,
    cureMinutes: 120,
    cureBefore: 'fill',
  });
  bench.by(who.Edda);
}

async function gears(bench: Bench, title: string, side: string): Promise<void> {
  const set = bench.sets(title)[1];
  if (set) must(await bench.client.record.remove({ ...bench.base(), table: 'fset', id: set.id }));
  const removalId = removalOf(bench, title);
  await bench.make('part', { removalId, name: `gear key, ${side}`, kind: 'key', ownPlace: true });
  await bench.change('part', bench.find('part', 'gear', title).id, { name: `gear, ${side}` });
  await bench.change('part', bench.find('part', 'retaining plate', title).id, { name: `retaining plate, ${side}` });
  const [screws] = bench.sets(title);
  if (screws) await bench.change('fset', screws.id, { name: `gear screws, ${side}`, critical: true, torqueFrom: 'maker', torquePage: 'sheet 12' });
}

async function gearRight(bench: Bench): Promise<void> {
  await gears(bench, 'Gear, right', 'right');
  const removalId = removalOf(bench, 'Gear, right');
  await bench.make('mark', {
    removalId,
    kind: 'match',
    body: 'Two dots on the right gear take the one dot of the left gear between them.',
    partId: bench.find('part', 'gear, right').id,
  });
  const pin = bench.find('temporary', 'locking pin in the lower mesh');
  await bench.change('temporary', pin.id, { outWithId: removalId });
}

async function gearLeft(bench: Bench): Promise<void> {
  await gears(bench, 'Gear, left', 'left');
  const twinOfId = removalOf(bench, 'Gear, right');
  await bench.change('removal', removalOf(bench, 'Gear, left'), { twinOfId });
}

async function feet(bench: Bench): Promise<void> {
  const [set] = bench.sets('Feet to base frame');
  if (!set) throw new Error('The feet have no bolts.');
  const stack = [
    ['washer', 'washer', 'under the head, burr up'],
    ['spacer 10 mm', 'spacer', 'between foot and frame'],
    ['washer', 'washer', 'under the nut'],
    ['nut M12', 'nut', 'from below'],
  ] as const;
  for (const [what, kind, points] of stack) {
    const specId = await bench.make('spec', { kind, ...(kind === 'nut' ? { thread: 'M12', threadKnown: true } : {}) });
    await bench.make('stackItem', { setId: set.id, what, specId, qty: 1, points });
  }
  await bench.change('fset', set.id, { name: 'foot bolts', laterWhen: 'when the belts line up' });
  await bench.make('backOrder', {
    beforeId: removalOf(bench, 'V-belts, matched pair'),
    afterId: set.id,
    why: 'The belts show whether the head stands straight.',
  });
}

async function cap(bench: Bench, n: 3 | 4): Promise<void> {
  const title = `Bearing cap ${n}`;
  await bench.change('part', bench.find('part', 'bearing cap', title).id, { name: `bearing cap ${n}` });
  await bench.change('part', bench.find('part', 'shims', title).id, {
    name: `shims ${n}`,
    ownPlaceText: n === 3 ? '0.30 and 0.10 mm' : '0.30 and 0.15 mm',
  });
  await bench.change('part', bench.find('part', 'O-ring', title).id, { name: `O-ring of cap ${n}` });
  await washers(bench, title);
}

async function capThree(bench: Bench): Promise<void> {
  await cap(bench, 3);
  const float = bench.find('measure', 'end float');
  await bench.change('measure', float.id, {
    what: 'end float, right rotor',
    limitLow: 0.1,
    limitHigh: 0.18,
    required: true,
  });
}

async function capFour(bench: Bench): Promise<void> {
  await cap(bench, 4);
  const twinOfId = removalOf(bench, 'Bearing cap 3');
  await bench.change('removal', removalOf(bench, 'Bearing cap 4'), { twinOfId });
}

async function endPlate(bench: Bench): Promise<void> {
  const title = 'End plate';
  const [set, pins] = bench.sets(title);
  if (!set || !pins) throw new Error('The end plate lacks its bolts or pins.');
  await bench.change('position', bench.hole(set, 8).id, { hidden: true });
  await bench.change('fset', set.id, { name: 'end plate bolts' });
  await bench.change('fset', pins.id, { name: 'dowel pins', ownPlace: true });
}

async function rotorRight(bench: Bench): Promise<void> {
  const title = 'Rotor, right';
  const rotor = bench.find('part', 'rotor', title);
  await bench.change('part', rotor.id, {
    name: 'rotor, right',
    fate: 'send out',
    fateWhy: 'To be balanced: it knocked at full speed.',
  });
  const strap = await bench.make('temporary', {
    removalId: removalOf(bench, title),
    name: 'strap under the rotors',
    qty: 1,
    role: 'supports',
    holdsThingId: rotor.id,
  });
  await bench.change('temporary', strap, { outWithId: removalOf(bench, 'End plate') });
  must(
    await bench.client.away.send({
      ...bench.base(),
      thingId: rotor.id,
      toWhom: 'Harrow balancing',
      due: Date.parse('2025-10-22T12:00:00Z'),
      note: 'Balance with its key.',
    }),
  );
}

async function rotorLeft(bench: Bench): Promise<void> {
  await bench.change('part', bench.find('part', 'rotor', 'Rotor, left').id, { name: 'rotor, left' });
}

export const SPECIALS: Readonly<Record<string, Special>> = {
  'Mains locked out at the dryer’s isolator': mainsLocked,
  'Plugs and earth lead': plugs,
  'Belt guard': async (bench) => washers(bench, 'Belt guard'),
  'V-belts, matched pair': belts,
  'Pulley and taper bush': pulley,
  'Belt tensioner': tensioner,
  'Inlet elbow': inlet,
  'Relief valve': reliefValve,
  'Pressure line, moved aside': pressureLine,
  'Gear oil': gearOil,
  'Hose bracket, moved aside': hoseBracket,
  'Gear cover': gearCover,
  'Gear, right': gearRight,
  'Gear, left': gearLeft,
  'Feet to base frame': feet,
  'Bearing cap 3': capThree,
  'Bearing cap 4': capFour,
  'End plate': endPlate,
  'Rotor, right': rotorRight,
  'Rotor, left': rotorLeft,
};
