import { type Bench, must } from './bench.ts';
import { removalOf, rows, washers } from './special-help.ts';

/** What came off everywhere else: isolations, belts, lines, caps, end plate, rotors. */

export async function mainsLocked(bench: Bench): Promise<void> {
  const title = 'Mains locked out at the dryer’s isolator';
  for (const one of rows(bench, 'isolation', title))
    await bench.change('isolation', one.id, {
      lockOwner: 'Edda Marlow (lock 7)',
      how: 'mains locked out, lock 7',
    });
}

export async function plugs(bench: Bench): Promise<void> {
  const [plug, earth] = rows(bench, 'connection', 'Plugs and earth lead');
  await bench.change('connection', plug?.id ?? '', { name: 'plug, pressure switch', ends: 1 });
  await bench.change('connection', earth?.id ?? '', {
    name: 'earth lead',
    goesTo: 'left foot',
    seal: 'none',
  });
}

export async function belts(bench: Bench): Promise<void> {
  const belt = bench.find('part', 'V-belts');
  await bench.change('part', belt.id, { stamped: 'A and B', ownPlaceText: 'A inside, B outside' });
}

export async function pulley(bench: Bench): Promise<void> {
  const key = bench.sets('Pulley and taper bush')[1];
  if (key) must(await bench.client.record.remove({ ...bench.base(), table: 'fset', id: key.id }));
  const removalId = removalOf(bench, 'Pulley and taper bush');
  await bench.make('part', { removalId, name: 'pulley key', kind: 'key', ownPlace: true });
  await bench.change('part', bench.find('part', 'pulley').id, { fate: 'clean and refit' });
}

export async function tensioner(bench: Bench): Promise<void> {
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
  await bench.change('connection', hose?.id ?? '', {
    name: 'tensioner hose',
    joint: 'face',
    ends: 2,
    seal: 'none',
  });
  await bench.make('opens', { fluidId: oil.id, thingId: hose?.id });
  await bench.make('temporary', { removalId, name: 'caps on the hose ends', qty: 2, role: 'blocks' });
  // Nobody can see the fourth one: it is felt for behind the bracket.
  const [set] = bench.sets(title);
  if (set) await bench.change('position', bench.hole(set, 4).id, { hidden: true });
}

export async function inlet(bench: Bench): Promise<void> {
  const title = 'Inlet elbow';
  await bench.make('part', { removalId: removalOf(bench, title), name: 'inlet elbow' });
  await washers(bench, title);
}

export async function reliefValve(bench: Bench): Promise<void> {
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

export async function pressureLine(bench: Bench): Promise<void> {
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

export async function feet(bench: Bench): Promise<void> {
  const [set] = bench.sets('Feet to base frame');
  if (!set) throw new Error('The feet have no bolts.');
  const stack = [
    ['washer', 'washer', 'under the head, burr up'],
    ['spacer 10 mm', 'spacer', 'between foot and frame'],
    ['washer', 'washer', 'under the nut'],
    ['nut M12', 'nut', 'from below'],
  ] as const;
  for (const [what, kind, points] of stack) {
    const specId = await bench.make('spec', {
      kind,
      ...(kind === 'nut' ? { thread: 'M12', threadKnown: true } : {}),
    });
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

export async function capThree(bench: Bench): Promise<void> {
  await cap(bench, 3);
  const float = bench.find('measure', 'end float');
  await bench.change('measure', float.id, {
    what: 'end float, right rotor',
    limitLow: 0.1,
    limitHigh: 0.18,
    required: true,
  });
}

export async function capFour(bench: Bench): Promise<void> {
  await cap(bench, 4);
  const twinOfId = removalOf(bench, 'Bearing cap 3');
  await bench.change('removal', removalOf(bench, 'Bearing cap 4'), { twinOfId });
}

export async function endPlate(bench: Bench): Promise<void> {
  const title = 'End plate';
  const [set, pins] = bench.sets(title);
  if (!set || !pins) throw new Error('The end plate lacks its bolts or pins.');
  await bench.change('position', bench.hole(set, 8).id, { hidden: true });
  await bench.change('fset', set.id, { name: 'end plate bolts' });
  await bench.change('fset', pins.id, { name: 'dowel pins', ownPlace: true });
}

export async function rotorRight(bench: Bench): Promise<void> {
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

export async function rotorLeft(bench: Bench): Promise<void> {
  await bench.change('part', bench.find('part', 'rotor', 'Rotor, left').id, { name: 'rotor, left' });
}
