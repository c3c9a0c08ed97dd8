import { type Bench, must } from './bench.ts';
import { addShots } from './photos.ts';
import { putBack } from './put-back.ts';
import { HALF_APART } from './removals.ts';
import { begin, type Crew, takeApart } from './take-apart.ts';

/** One of the three copies of the sample job. */
export interface Copy {
  readonly file: string;
  readonly labelsFrom: number;
  readonly tell: (bench: Bench, who: Crew) => Promise<void>;
}

const APART = [
  '0412',
  '0414',
  '0417',
  '0421',
  '0425',
  '0431',
  '0432',
  '0433',
  '0438',
  '0442',
  '0447',
  '0449',
  '0451',
];
const names = (numbers: readonly string[]): string[] => numbers.map((n) => `IMG_${n}.jpg`);

async function halfApart(bench: Bench, who: Crew): Promise<void> {
  await begin(bench, who, 'Sample: blower head, half apart');
  await takeApart(bench, who, HALF_APART);
  bench.clock.set('2025-10-13T14:30:00+02:00');
  await addShots(bench, names(APART));
  await order(bench);
  bench.clock.set('2025-10-13T16:05:00+02:00');
  bench.by(who.Edda);
  must(
    await bench.client.halt.add({
      ...bench.base(),
      note: 'Waiting for the valve. Next: end plate, bolt 8 sits behind the tensioner bracket. Rag is in the inlet.',
    }),
  );
}

/** A bolt for the hole that had none, and one for the stripped one, are on the list to get. */
async function order(bench: Bench): Promise<void> {
  const [set] = bench.sets('Gear cover');
  if (!set) throw new Error('The gear cover has no bolts.');
  for (const n of [4, 11])
    await bench.make('want', {
      thingId: bench.hole(set, n).id,
      specId: set.specId,
      what: `bolt M8 × 30, hole ${n}`,
      qty: 1,
      state: 'ordered',
      cause: n === 4 ? 'stripped' : 'missing as found',
    });
}

async function backToGears(bench: Bench, who: Crew): Promise<void> {
  await takeApart(bench, who);
  bench.clock.set('2025-10-14T16:00:00+02:00');
  await addShots(bench, names(APART));
  await order(bench);
  for (const [date, name] of [
    ['2025-10-20T10:00:00+02:00', 'relief valve'],
    ['2025-10-22T15:00:00+02:00', 'rotor, right'],
  ] as const) {
    bench.clock.set(date);
    const thing = bench.find('part', name);
    const away = bench.state().away.find((one) => one.thingId === thing.id);
    must(await bench.client.away.back({ ...bench.base(), awayId: away?.id ?? '' }));
  }
  bench.by(who.Edda);
  bench.clock.pace = 90_000;
  await putBack(
    bench,
    who,
    { 'Rotor, left': '2025-10-23T08:00:00+02:00', 'Bearing cap 4': '2025-10-24T07:30:00+02:00' },
    'Gear cover',
  );
  bench.clock.set('2025-10-24T12:30:00+02:00');
  await addShots(bench, names(['0466']));
  bench.clock.pace = 90_000;
}

async function halfBack(bench: Bench, who: Crew): Promise<void> {
  await begin(bench, who, 'Sample: blower head, half back');
  await backToGears(bench, who);
  bench.clock.set('2025-10-24T15:40:00+02:00');
  const [set] = bench.sets('Gear cover');
  must(await bench.client.piece.count({ ...bench.base(), stowId: set?.stowId ?? '', counted: 12 }));
}

/** The stripped one goes, and what was ordered comes in. */
async function newBolts(bench: Bench, setId: string): Promise<void> {
  must(
    await bench.client.piece.scrap({
      ...bench.base(),
      thingId: setId,
      qty: 1,
      to: 'scrap',
      fresh: false,
      why: 'Hole 4: head rounded, thread stripped.',
    }),
  );
  for (const want of bench.state().want) {
    const hole = bench.state().position.find((one) => one.id === want.thingId);
    if (hole)
      must(
        await bench.client.piece.receive({
          ...bench.base(),
          thingId: hole.id,
          qty: 1,
          stowId: null,
          wantId: want.id,
        }),
      );
  }
}

async function finished(bench: Bench, who: Crew): Promise<void> {
  await begin(bench, who, 'Sample: blower head, finished');
  await backToGears(bench, who);
  bench.clock.set('2025-10-24T15:40:00+02:00');
  const [set] = bench.sets('Gear cover');
  const stowId = set?.stowId ?? '';
  const counted = must(await bench.client.piece.count({ ...bench.base(), stowId, counted: 12 }));
  bench.clock.set('2025-10-24T15:55:00+02:00');
  must(
    await bench.client.piece.found({
      ...bench.base(),
      countingId: counted.countingId,
      where: 'Under the bench, beside the vice.',
    }),
  );
  await newBolts(bench, set?.id ?? '');
  for (const found of bench.state().asFound)
    if (found.kind !== 'reading')
      await bench.change('asFound', found.id, { closedWhy: 'New cover, new bolts in 4 and 11.' });
  await putBack(bench, who, {
    'Gear cover': '2025-10-27T08:00:00+01:00',
    'Belt tensioner': '2025-10-28T08:00:00+01:00',
  });
  await addShots(bench, names(['0471', '0473']));
  must(
    await bench.client.jobs.change({
      ...bench.base(),
      values: {
        cause: 'Right rotor out of balance; end float 0.24 mm against 0.18 at the most.',
        correction: 'Rotor balanced, shims 3 changed, end float 0.14 mm. Cover, seals and gaskets new.',
      },
    }),
  );
  must(
    await bench.client.jobs.close({
      ...bench.base(),
      phase: 'closed',
      recheckDue: Date.parse('2025-11-24T09:00:00+01:00'),
    }),
  );
}

export const COPIES: readonly Copy[] = [
  { file: 'half-apart.json', labelsFrom: 0, tell: halfApart },
  { file: 'half-back.json', labelsFrom: 20, tell: halfBack },
  { file: 'finished.json', labelsFrom: 40, tell: finished },
];
