/**
 * Ready-made small jobs, invented: entry lines as somebody would type them, in order. A line that begins with "+" goes
 * on with the removal before it. Most of the machines are not vehicles.
 */
export interface ReadyJob {
  readonly name: string;
  readonly lines: readonly string[];
}

export const READY_JOBS: readonly ReadyJob[] = [
  {
    name: 'Bench grinder, left wheel',
    lines: [
      'mains plug drawn',
      'wheel guard, 3 M5x12',
      'wheel nut, left hand',
      'outer flange, own place, stamped L',
      'wheel',
    ],
  },
  {
    name: 'Hand pump, seals',
    lines: [
      'handle, 1 clevis pin',
      'gland nut',
      'plunger',
      '2 O-rings',
      '4 M8x30 hex 13, class 8.8, 25 Nm',
      '+ pump head, gasket',
    ],
  },
  {
    name: 'Coffee machine, boiler',
    lines: [
      'mains plug drawn',
      'pressure let off',
      'drained water 1,8 l',
      'top cover, 6 push rivets',
      'plug at the thermostat',
      '8 M5x16 socket cap 4 mm hex key',
      '+ boiler lid, O-ring',
    ],
  },
  {
    name: 'Sewing machine, hook',
    lines: [
      'needle plate, 2 screws',
      'bobbin case',
      'hook, 3 grub screws, own place',
      'match mark: dot to dot on the shaft',
    ],
  },
  {
    name: 'Bicycle hub, rear',
    lines: ['wheel off', 'lock ring, threadlock', 'cassette, own place', 'axle, 2 nuts 15 mm', '18 balls'],
  },
  {
    name: 'Gearbox of a winch',
    lines: [
      'load on stands',
      'drained gear oil 2,5 l',
      'belt guard, 4 M6x16 hex 10',
      '12 M8x25 hex 13, class 8.8, bag 3, 25 Nm',
      '+ side cover, gasket',
      'bearing cap 1, own place, stamped 1, 2 M10x40',
      'bearing cap 2, own place, stamped 2, 2 M10x50',
      'end float 0.15 mm',
    ],
  },
  {
    name: 'Compressor, valve plate',
    lines: [
      'mains locked out',
      'pressure let off',
      'intake filter',
      'hose, delivery, 1 end, clamp 25 mm',
      '6 M8x45 hex 13, class 10.9, 30 Nm',
      '+ cylinder head, gasket',
      'valve plate, gasket',
    ],
  },
  {
    name: 'Column drill, quill',
    lines: [
      'mains plug drawn',
      'return spring caged',
      'depth stop, 1 M8x20',
      'feed shaft, 1 grub screw',
      'quill',
    ],
  },
  {
    name: 'Milling table, gibs',
    lines: [
      'handwheel, 1 taper pin',
      'gib, own place, stamped X',
      '4 M6x30 socket cap 5 mm hex key',
      '+ end bracket',
    ],
  },
  {
    name: 'Concrete mixer, drum',
    lines: [
      'fuel shut off',
      'slackened 2 M12 hex 19',
      'drive belt',
      '4 M10x30 hex 17, 2 missing as found',
      '+ drum support',
      '2 split pins 4x40',
    ],
  },
  {
    name: 'Rotary blower, timing gears',
    lines: [
      'mains locked out',
      'drained gear oil 0,9 l',
      '10 M8x25 hex 13, 8 of them 25 long, 2 of them 40',
      '+ gear cover, O-ring',
      'match mark: paint on both gears',
      'locking pin in the gear, must come out',
      'gear, own place, stamped A',
      'gear, own place, stamped B',
    ],
  },
  {
    name: 'Lawn mower, blade',
    lines: ['spark plug lead off', 'blade bolt 17 mm', 'blade', 'aside cable, hung on wire'],
  },
  {
    name: 'Motorcycle, clutch cover',
    lines: [
      'battery earth off',
      'drained engine oil 3,2 l',
      '9 M6x30 flange 8 mm, 7 of them 30 long, 2 of them 45, 10 Nm',
      '+ clutch cover, gasket',
      '6 M6x25, one stripped',
      '+ pressure plate',
    ],
  },
  {
    name: 'Outboard, water pump',
    lines: [
      'load on stands',
      '5 M8x30 hex 13',
      '+ lower unit',
      'shift rod, 1 split pin',
      '4 M6x20',
      '+ pump housing, gasket',
      'impeller',
      'woodruff key',
    ],
  },
  {
    name: 'Loom, shedding gear',
    lines: [
      'mains locked out',
      'chain, 1 clip',
      'plate 1, own place, stamped 1',
      'plate 2, own place, stamped 2',
      'plate 3, own place, stamped 3',
      '8 M8x20, 8 washers',
    ],
  },
  {
    name: 'Steam whistle valve',
    lines: ['pressure let off', 'flange, 4 1/2-13 x 2 bolts', 'gasket', 'valve', 'spring'],
  },
  {
    name: 'Printing press, ink unit',
    lines: [
      'mains locked out',
      'guard, 4 M6x12',
      'roller, left, 2 M8x30',
      'roller, right, 2 M8x30',
      'opened ink duct',
    ],
  },
  {
    name: 'Milk separator',
    lines: [
      'mains plug drawn',
      'bowl nut, left hand',
      'bowl, own place, stamped 7',
      '24 discs, own place',
      'O-ring 45x3',
    ],
  },
  {
    name: 'Hydraulic jack',
    lines: [
      'load on stands',
      'drained hydraulic oil 0,4 l',
      'release valve',
      '1 circlip',
      'ram',
      '2 seals',
      '3 O-rings',
    ],
  },
  {
    name: 'Truck hub, left',
    lines: [
      'load on stands',
      'caging bolt in the spring brake',
      '10 wheel nuts 32 mm, 600 Nm',
      '+ wheel',
      'hub cap, gasket, 8 M8x16',
      '4 M16x60 hex 24, class 10.9, 250 Nm',
      '+ caliper, hung on strap',
      'hub nut',
    ],
  },
];
