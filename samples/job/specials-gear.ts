import { type Bench, must } from './bench.ts';
import { removalOf } from './special-help.ts';

/** What came off at the gear end: oil, cover, gears. */

export async function gearOil(bench: Bench): Promise<void> {
  const oil = bench.find('fluid', 'gear oil');
  await bench.change('fluid', oil.id, { type: 'VG 220', capacityMl: 900 });
  const title = 'Gear oil';
  for (const set of bench.sets(title))
    must(await bench.client.set.count({ ...bench.base(), setId: set.id, count: 1 }));
  const drain = bench.find('part', 'drain plug');
  await bench.make('opens', { fluidId: oil.id, thingId: drain.id });
}

export async function hoseBracket(bench: Bench): Promise<void> {
  const removalId = removalOf(bench, 'Hose bracket, moved aside');
  await bench.change('removal', removalId, { heldBy: 'wire to the frame' });
  await bench.make('mark', {
    removalId,
    kind: 'routing',
    body: 'Hose outside the pressure line, clips every 20 cm.',
  });
}

export async function gearCover(bench: Bench): Promise<void> {
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
  await bench.change('fset', set.id, {
    name: 'gear cover bolts',
    torqueFrom: 'maker',
    torquePage: 'plate on the cover',
  });
  const bracket = bench.find('part', 'hose bracket');
  for (const n of [6, 7])
    await bench.make('holds', { positionId: bench.hole(set, n).id, partId: bracket.id });
  const cover = bench.find('part', 'gear cover', title);
  await bench.change('part', cover.id, {
    condition: 'hairline crack at boss 4',
    fate: 'renew',
    fateWhy: 'Cracked at boss 4.',
  });
  const removalId = removalOf(bench, title);
  const ring = bench.find('part', 'O-ring', title);
  await bench.change('part', ring.id, { name: 'sight glass O-ring' });
  await bench.make('part', {
    removalId,
    name: 'sight glass',
    fate: 'carry over',
    carryToId: cover.id,
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
}

async function gears(bench: Bench, title: string, side: string): Promise<void> {
  const set = bench.sets(title)[1];
  if (set) must(await bench.client.record.remove({ ...bench.base(), table: 'fset', id: set.id }));
  const removalId = removalOf(bench, title);
  await bench.make('part', { removalId, name: `gear key, ${side}`, kind: 'key', ownPlace: true });
  await bench.change('part', bench.find('part', 'gear', title).id, { name: `gear, ${side}` });
  await bench.change('part', bench.find('part', 'retaining plate', title).id, {
    name: `retaining plate, ${side}`,
  });
  const [screws] = bench.sets(title);
  if (screws)
    await bench.change('fset', screws.id, {
      name: `gear screws, ${side}`,
      critical: true,
      torqueFrom: 'maker',
      torquePage: 'sheet 12',
    });
}

export async function gearRight(bench: Bench): Promise<void> {
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

export async function gearLeft(bench: Bench): Promise<void> {
  await gears(bench, 'Gear, left', 'left');
  const twinOfId = removalOf(bench, 'Gear, right');
  await bench.change('removal', removalOf(bench, 'Gear, left'), { twinOfId });
}
