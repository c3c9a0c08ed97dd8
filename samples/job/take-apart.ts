import { v7 } from 'uuid';
import type { Row } from '../../core/model/tables.ts';
import { type Bench, must } from './bench.ts';
import { REMOVALS, type Told } from './removals.ts';
import { SPECIALS } from './specials.ts';

/** Who works here, whose machine it is, and what is measured with. All invented. */
export interface Crew {
  readonly Edda: string;
  readonly Tomas: string;
  readonly owner: string;
  readonly wrench: string;
}

/** The same in every copy, so that three of them bring in one Edda and not three. */
const idOf = (n: number): string => `0199b000-0000-7000-8000-00000000000${n}`;

/** People and tools of the workshop; made once for all copies, so that they are the same people. */
export async function crew(bench: Bench): Promise<Crew> {
  const put = async (table: 'person' | 'tool', n: number, values: Record<string, unknown>) =>
    must(await bench.client.workshop.put({ command: v7(), table, id: idOf(n), values })).id;
  return {
    Edda: await put('person', 1, { name: 'Edda Marlow' }),
    Tomas: await put('person', 2, { name: 'Tomas Rieke' }),
    owner: await put('person', 3, { name: 'Oststeig farm, Jonna Harle', role: 'owns' }),
    wrench: await put('tool', 4, {
      name: 'Torque wrench 2, 5 to 100 N·m',
      calibratedUntil: Date.parse('2026-03-31T12:00:00Z'),
    }),
  };
}

/** Starts the job: machine, complaint, as found, what to have ready. */
export async function begin(bench: Bench, who: Crew, title: string): Promise<void> {
  bench.clock.set('2025-10-07T09:30:00+02:00');
  bench.by(who.Edda);
  must(
    await bench.client.jobs.add({
      command: v7(),
      id: bench.jobId,
      title,
      values: {
        machine: 'Blower head of a grain dryer, two rotors, about 1970, 2471',
        ownerId: who.owner,
        complaint: 'Knocks at full speed, gear oil goes dark within a month.',
        cause: '',
        sideNames: { left: 'left', right: 'right', seenFrom: 'facing the gear end' },
        zone: 'Europe/Berlin',
      },
    }),
  );
  const found = [
    ['reading', 'Discharge pressure at full speed', '0.38 bar'],
    ['damage', 'Gear cover bolt 4: head rounded, thread stripped', null],
    ['missing', 'Gear cover hole 11: no bolt in it', null],
    ['damage', 'Gear cover: hairline crack at boss 4', null],
  ] as const;
  for (const [kind, text, valueTyped] of found) await bench.make('asFound', { kind, text, valueTyped });
  const ready = ['Stand for the motor', 'Lock 7 and tag', 'Bags and tins', 'Pan for 1 litre', 'Strap'];
  for (const text of ready) await bench.make('ready', { text, done: true });
}

async function takeOff(bench: Bench, who: Crew, told: Told): Promise<void> {
  bench.by(who[told.who]);
  bench.clock.set(told.from);
  bench.clock.pace = Math.round((told.minutes * 60_000) / (told.lines.length * 3 + 30));
  const removalId = v7();
  let first = true;
  for (const text of told.lines.map((line) => bench.labelled(line))) {
    const reply = await bench.client.log.add({
      ...bench.base(),
      text,
      removalId: first ? null : removalId,
      ...(first
        ? {
            newRemovalId: removalId,
            ...(told.did === undefined ? {} : { did: told.did }),
            ...(told.place === undefined ? {} : { place: told.place }),
            ...(told.side === undefined ? {} : { side: told.side }),
          }
        : {}),
    });
    const { notUnderstood } = must(reply);
    if (notUnderstood.length > 0)
      throw new Error(`“${text}” was not understood: ${notUnderstood.join(', ')}`);
    first = false;
  }
  const words: Partial<Row<'removal'>> = { title: told.title };
  if (told.note !== undefined) words.note = told.note;
  if (told.back !== undefined) words.noteBack = told.back;
  if (told.caution !== undefined) words.caution = told.caution;
  await bench.change('removal', removalId, words);
  await SPECIALS[told.title]?.(bench);
  if (bench.find('removal', told.title).phase === 'under way')
    must(await bench.client.removal.end({ ...bench.base(), removalId }));
}

const SHELVES: Readonly<Record<string, readonly string[]>> = {
  A: ['belt guard', 'V-belts', 'pulley', 'taper bush', 'pulley key', 'belt tensioner'],
  B: ['inlet elbow', 'screen', 'relief valve', 'drain plug'],
  C: ['gear cover', 'sight glass', 'gear, right', 'gear, left', 'gear key, right', 'gear key, left'],
  D: [
    'retaining plate, right',
    'retaining plate, left',
    'bearing cap 3',
    'shims 3',
    'bearing cap 4',
    'shims 4',
  ],
  E: ['end plate', 'rotor, right', 'rotor, left'],
};

/** Everything lies somewhere: a shelf for each end of the machine. */
async function shelve(bench: Bench): Promise<void> {
  for (const [letter, names] of Object.entries(SHELVES)) {
    const parts = bench.state().part.filter((part) => names.includes(part.name) && part.how === 'off');
    if (parts.length === 0) continue;
    const label = bench.labelled(`shelf ${letter}`).replace('shelf ', '');
    const values = { kind: 'shelf', label };
    const stowId = must(await bench.client.workshop.put({ command: v7(), table: 'stow', values })).id;
    for (const part of parts) await bench.change('part', part.id, { stowId });
  }
}

/** Takes the machine apart as told, to the end or to the removal named. */
export async function takeApart(bench: Bench, who: Crew, last?: string): Promise<void> {
  for (const told of REMOVALS) {
    await takeOff(bench, who, told);
    if (told.title === last) break;
  }
  bench.clock.pace = 1000;
  await shelve(bench);
}
