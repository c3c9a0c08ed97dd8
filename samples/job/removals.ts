import type { Row } from '../../core/model/tables.ts';

/** One removal of the story: what was typed, and when. Invented, like the machine and the people. */
export interface Told {
  readonly title: string;
  /** ISO 8601 with offset. */
  readonly from: string;
  readonly minutes: number;
  readonly who: 'Edda' | 'Tomas';
  readonly place?: string;
  readonly side?: Row<'removal'>['side'];
  readonly did?: Row<'removal'>['did'];
  /** Entry lines as typed; the first makes the removal. */
  readonly lines: readonly string[];
  readonly note?: string;
  /** For the way back. */
  readonly back?: string;
  readonly caution?: string;
}

const day = (date: string, time: string): string => `2025-10-${date}T${time}:00+02:00`;

/** The log, in order. Numbers in the program are counted from here: the first is 1. */
export const REMOVALS: readonly Told[] = [
  {
    title: 'Mains locked out at the dryer’s isolator',
    from: day('07', '09:58'),
    minutes: 4,
    who: 'Edda',
    lines: ['mains locked out'],
    caution: 'Only Edda takes lock 7 off. Try the start button before you reach in.',
  },
  {
    title: 'Pressure let off in the discharge line',
    from: day('07', '10:06'),
    minutes: 3,
    who: 'Edda',
    lines: ['pressure let off'],
    caution: 'The line is hot after a run. Open the valve slowly and stand aside.',
  },
  {
    title: 'Plugs and earth lead',
    from: day('07', '10:15'),
    minutes: 6,
    who: 'Tomas',
    place: 'gear end, low',
    side: 'left',
    lines: ['plug', 'earth lead'],
    back: 'Scrape the lug bright before the earth lead goes on.',
  },
  {
    title: 'Belt guard',
    from: day('07', '10:31'),
    minutes: 8,
    who: 'Tomas',
    place: 'drive end',
    lines: ['belt guard, 4 M8x20 bolts hex 13, class 8.8, bag 1, 20 Nm'],
  },
  {
    title: 'Motor swing plate, slackened',
    from: day('07', '13:10'),
    minutes: 12,
    who: 'Tomas',
    place: 'drive end',
    did: 'slackened',
    lines: ['slackened 4 M12x40 bolts hex 18, class 8.8, 80 Nm', 'load on stands'],
    caution: 'The motor hangs on the plate. Stand under it before a bolt is turned.',
    back: 'Belt tension first, then these.',
  },
  {
    title: 'V-belts, matched pair',
    from: day('07', '13:40'),
    minutes: 5,
    who: 'Tomas',
    place: 'drive end',
    lines: ['2 V-belts, own place, stamped A'],
    back: 'A runs inside. Never one old and one new.',
  },
  {
    title: 'Pulley and taper bush',
    from: day('07', '15:20'),
    minutes: 24,
    who: 'Edda',
    place: 'drive end',
    lines: ['2 M10x20 set screws, 5 mm hex key, bag 2, 20 Nm', 'pulley', 'taper bush', 'key'],
    note: 'The third hole of the bush is for jacking it off. Empty by design.',
    back: 'Bush dry and clean. The pulley stands 6 mm from the casing.',
  },
  {
    title: 'Belt tensioner',
    from: day('07', '16:40'),
    minutes: 21,
    who: 'Edda',
    place: 'drive end',
    side: 'right',
    lines: [
      'drained hydraulic oil 0.25 l',
      'hose, 2 ends',
      'belt tensioner, 4 M10x30 bolts hex 16, class 8.8, bag 3, 45 Nm',
    ],
    note: 'The bracket covers one bolt of the end plate: number 8, on no photo.',
  },
  {
    title: 'Inlet elbow',
    from: day('08', '08:20'),
    minutes: 18,
    who: 'Tomas',
    place: 'top',
    lines: ['8 M10x35 bolts hex 16, class 8.8, bag 5, 45 Nm', 'gasket', 'screen', 'rag in the inlet port'],
  },
  {
    title: 'Relief valve',
    from: day('08', '08:52'),
    minutes: 15,
    who: 'Tomas',
    place: 'flank',
    side: 'right',
    lines: ['relief valve, gasket, 4 M10x30 bolts hex 16, class 8.8, bag 6, 45 Nm'],
    back: 'Only with the test tag on it: opens at 0.5 bar.',
  },
  {
    title: 'Pressure line, moved aside',
    from: day('08', '09:25'),
    minutes: 9,
    who: 'Tomas',
    place: 'flank',
    side: 'right',
    did: 'aside',
    lines: ['union at the casing'],
  },
  {
    title: 'Gear oil',
    from: day('08', '13:30'),
    minutes: 25,
    who: 'Edda',
    place: 'gear end',
    lines: ['drained gear oil 0.9 l', 'drain plug, sealing washer', 'fill plug, sealing washer'],
    note: 'Dark, no water. Two bright flakes on the magnet, smaller than a pinhead.',
  },
  {
    title: 'Hose bracket, moved aside',
    from: day('09', '09:40'),
    minutes: 6,
    who: 'Edda',
    place: 'gear end',
    side: 'right',
    did: 'aside',
    lines: ['aside hose bracket, hung on wire', '3 clips'],
  },
  {
    title: 'Gear cover',
    from: day('09', '10:05'),
    minutes: 58,
    who: 'Edda',
    place: 'gear end',
    lines: ['14 M8x30 bolts hex 13, class 8.8, tin 7, 25 Nm', 'gear cover, gasket', 'O-ring'],
    note: 'Three lengths that look alike: 30, 40 and 50. Bolt 4 turned round under the spanner.',
    back: 'Long ones in 6 and 7, through the hose bracket: those two come last.',
  },
  {
    title: 'Gear, right',
    from: day('09', '12:40'),
    minutes: 34,
    who: 'Edda',
    place: 'gear end',
    side: 'right',
    lines: [
      'locking pin in the lower mesh, must come out',
      '3 M8x25 socket cap bolts 6 mm hex key, class 12.9, tin 4, 35 Nm, threadlock',
      'retaining plate',
      'gear, own place, stamped R',
      'key',
    ],
    caution: 'Fingers out of the mesh: the rotors turn by their own weight.',
  },
  {
    title: 'Gear, left',
    from: day('09', '13:40'),
    minutes: 22,
    who: 'Edda',
    place: 'gear end',
    side: 'left',
    lines: [
      '3 M8x25 socket cap bolts 6 mm hex key, class 12.9, tin 9, 35 Nm, threadlock',
      'retaining plate',
      'gear, own place, stamped L',
      'key',
    ],
  },
  {
    title: 'Feet to base frame',
    from: day('13', '07:30'),
    minutes: 35,
    who: 'Tomas',
    place: 'base',
    lines: ['4 M12x70 bolts hex 18, class 8.8, bag 8, 80 Nm'],
    note: 'Freed to turn the head round on the frame: the drive end now faces the light.',
    back: 'Shim under foot 3 is 0.4 mm. Tight only when the belts line up.',
  },
  {
    title: 'Bearing cap 3',
    from: day('13', '08:10'),
    minutes: 22,
    who: 'Edda',
    place: 'drive end',
    side: 'right',
    lines: [
      'end float 0.24 mm',
      'bearing cap, own place, stamped 3, 6 M6x20 bolts hex 10, class 8.8, bag 11, 10 Nm',
      '2 shims, own place, stamped 3',
      'O-ring',
      'shaft seal',
    ],
    back: 'Shims 3 and shims 4 never mix: the end float hangs on them.',
  },
  {
    title: 'Bearing cap 4',
    from: day('13', '08:36'),
    minutes: 14,
    who: 'Edda',
    place: 'drive end',
    side: 'left',
    lines: [
      'bearing cap, own place, stamped 4, 6 M6x20 bolts hex 10, class 8.8, bag 12, 10 Nm',
      '2 shims, own place, stamped 4',
      'O-ring',
    ],
  },
  {
    title: 'End plate',
    from: day('14', '09:05'),
    minutes: 47,
    who: 'Edda',
    place: 'drive end',
    lines: ['14 M10x45 bolts hex 16, class 8.8, bag 10, 45 Nm', 'end plate, gasket', '2 dowel pins'],
    caution: 'The plate weighs 31 kg. Two people, or a strap.',
    back: 'Bolt 8 sits behind the tensioner bracket: fit it before the tensioner.',
  },
  {
    title: 'Rotor, right',
    from: day('14', '10:20'),
    minutes: 40,
    who: 'Edda',
    place: 'inside',
    side: 'right',
    lines: ['rotor, own place, stamped R'],
    caution: 'Suspended load: nobody under the strap.',
  },
  {
    title: 'Rotor, left',
    from: day('14', '11:15'),
    minutes: 30,
    who: 'Edda',
    place: 'inside',
    side: 'left',
    lines: ['rotor, own place, stamped L'],
  },
];

/** The half-way copy ends after this one. */
export const HALF_APART = 'Bearing cap 4';
