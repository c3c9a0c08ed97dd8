import { type Chance, pick, shuffled, Story, whole, type Yard } from './story.ts';

/** What can be part of an invented machine; each stands for a way in which things go wrong on the way back. */
export const BLOCKS = [
  'cover',
  'mixed',
  'caps',
  'hoses',
  'plug',
  'rags',
  'counted caps',
  'wheel',
  'sealed',
  'shaft',
  'caged',
  'slackened',
  'strapped',
  'hidden',
  'new bolts',
  'shared bolt',
] as const;
export type Block = (typeof BLOCKS)[number];

/** A job that is all off and wants nothing: what was made for each block, by name. */
export interface Machine {
  readonly story: Story;
  readonly guard: string;
  readonly ids: Readonly<Record<string, string>>;
}

type Ids = Record<string, string>;
type Maker = (story: Story, ids: Ids, rnd: Chance) => Promise<void>;

/** Where things lie, so that nothing is left to be said about it. */
const SHELF = 'tray';
let tray = 0;
const lies = (): string => `${SHELF} ${(tray += 1)}`;

async function joint(story: Story, bolts: string, part: string): Promise<string> {
  return story.off(`${part}, ${lies()}`, bolts);
}

async function mixed(story: Story, ids: Ids): Promise<void> {
  ids.mixed = await joint(
    story,
    '6 M8x25 hex 13, class 8.8, 4 of them 25 long, 2 of them 40, 25 Nm',
    'timing cover',
  );
}

async function caps(story: Story, ids: Ids): Promise<void> {
  for (const n of [1, 2]) {
    const cap = `bearing cap ${n}`;
    const removal = await story.off(`${cap}, own place, stamped ${n}, ${lies()}`, '2 M10x40, 45 Nm');
    ids[`cap ${n} off`] = removal;
    ids[`cap ${n}`] = story.part(removal, cap);
  }
}

async function hoses(story: Story, ids: Ids): Promise<void> {
  const removal = await story.off('supply hose, clamp 25 mm', 'return hose, clamp 25 mm');
  ids.hoses = removal;
  const made = story.state.connection.filter((one) => one.removalId === removal);
  for (const one of made) {
    const name = one.name.startsWith('supply') ? 'supply' : 'return';
    await story.change('connection', one.id, { goesTo: `the ${name} stub` });
    ids[`${name} hose`] = one.id;
  }
}

async function shared(story: Story, ids: Ids): Promise<void> {
  ids.bracket = await joint(story, '2 M8x40 hex 13, class 8.8, 25 Nm', 'bracket');
  ids.pulley = await story.off(`pulley, ${lies()}`);
  const hole = story.holes(ids.bracket)[0] ?? '';
  await story.make('holds', { positionId: hole, partId: story.part(ids.pulley, 'pulley') });
}

const MAKERS: Record<Block, Maker> = {
  cover: async (story, ids, rnd) => {
    const n = 2 + whole(rnd, 5);
    const removal = await story.off(`side cover, ${lies()}`, `${n} M8x25 hex 13, class 8.8, 25 Nm`, 'gasket');
    ids.cover = removal;
    ids.gasket = story.part(removal, 'gasket');
    await story.receive(ids.gasket);
  },
  mixed,
  caps,
  hoses,
  plug: async (story, ids) => {
    ids.plugs = await story.off('sensor plug');
    ids.plug = story.state.connection.find((one) => one.removalId === ids.plugs)?.id ?? '';
  },
  rags: async (story, ids) => {
    const removal = await story.off(`inlet pipe, ${lies()}`, '3 M6x20 hex 10, 9 Nm', '2 rags in the port');
    ids.inlet = removal;
    ids.rags = story.state.temporary.find((one) => one.removalId === removal)?.id ?? '';
  },
  'counted caps': async (story, ids) => {
    const removal = await joint(story, '2 M6x16 hex 10, 9 Nm', 'fuel rail');
    ids.rail = removal;
    ids.ports = await story.make('temporary', {
      removalId: removal,
      name: 'port caps',
      qty: 3,
      role: 'blocks',
    });
  },
  wheel: async (story, ids) => {
    const removal = await joint(story, '5 M12x40 hex 19, class 10.9, 110 Nm', 'wheel');
    ids.wheel = removal;
    await story.change('fset', story.set(removal).id, { laterWhen: 'on the ground' });
  },
  sealed: async (story, ids) => {
    const removal = await joint(story, '4 M6x16 hex 10, 9 Nm', 'sump');
    ids.sump = removal;
    ids.sealant = await story.make('consumable', {
      thingId: removal,
      kind: 'sealant',
      name: 'grey sealant',
      cureMinutes: 60,
      cureBefore: 'fill',
    });
    if (ids.oil) await story.make('opens', { fluidId: ids.oil, thingId: removal });
  },
  shaft: async (story, ids) => {
    const removal = await joint(story, '2 M8x20 hex 13, class 8.8, 25 Nm', 'rotor shaft');
    ids.shaft = removal;
    ids.float = await story.make('measure', {
      removalId: removal,
      what: 'end float',
      unit: 'mm',
      asFound: 0.15,
      asFoundTyped: '0.15 mm',
      limitLow: 0.05,
      limitHigh: 0.25,
      required: true,
    });
  },
  caged: async (story, ids) => {
    const removal = await joint(story, '4 M10x30, 40 Nm', 'spring chamber');
    ids.chamber = removal;
    ids.caging = await story.make('temporary', { removalId: removal, name: 'caging bolt', role: 'cages' });
  },
  slackened: async (story, ids) => {
    ids.slack = await story.off('slackened 2 M12 hex 19');
  },
  strapped: async (story, ids) => {
    const removal = await joint(story, '2 M10x30, 40 Nm', 'caliper');
    ids.caliper = removal;
    ids.strap = await story.make('temporary', { removalId: removal, name: 'strap', role: 'supports' });
  },
  hidden: async (story, ids) => {
    const removal = await joint(story, '4 M6x16 hex 10, 9 Nm', 'inner bracket');
    ids.inner = removal;
    for (const hole of story.holes(removal).slice(0, 2))
      await story.change('position', hole, { hidden: true });
  },
  'new bolts': async (story, ids) => {
    const removal = await joint(story, '4 M10x60 hex 17, class 10.9, 60 Nm', 'adapter plate');
    ids.flange = removal;
    const set = story.set(removal);
    await story.change('fset', set.id, { renew: 'must', renewWhy: 'The maker says so.' });
    await story.receive(set.id, 4);
  },
  'shared bolt': shared,
};

/** Energies made safe and fluids let out before anything comes off. */
async function prologue(story: Story, ids: Ids, rnd: Chance, all: boolean): Promise<void> {
  if (all || rnd() < 0.6) ids.battery = await story.off(pick(rnd, ['battery earth off', 'mains locked out']));
  if (all || rnd() < 0.5) ids.stands = await story.off('load on stands');
  if (all || rnd() < 0.6) {
    ids.drain = await story.off('drained gear oil 2,5 l');
    ids.oil = story.state.fluid.find((one) => one.name === 'gear oil')?.id ?? '';
  }
  if (rnd() < 0.4) {
    await story.off('drained brake fluid 0,6 l');
    const fluid = story.state.fluid.find((one) => one.name === 'brake fluid')?.id ?? '';
    await story.change('fluid', fluid, {
      bleed: true,
      ...(ids.battery ? { liveEnergy: 'electricity' } : {}),
    });
  }
}

/** Places, confirmed and loosened needs, own steps: what makes the list more than the log read backwards. */
async function loosen(story: Story, rnd: Chance): Promise<void> {
  const removals = [...story.state.removal].sort((a, b) => (a.ord < b.ord ? -1 : 1));
  for (const [i, removal] of removals.entries()) {
    if (removal.did === 'safe' || i === 0) continue;
    const dice = rnd();
    if (dice < 0.25)
      await story.change('removal', removal.id, { place: pick(rnd, ['front', 'left', 'under']) });
    else if (dice < 0.5) await story.change('removal', removal.id, { defaultNeed: 'loosened' });
    else if (dice < 0.6) await story.change('removal', removal.id, { defaultNeed: 'confirmed' });
    const before = removals[whole(rnd, i)];
    if (rnd() < 0.2 && before)
      await story.make('need', { removalId: removal.id, needsId: before.id, confirmed: rnd() < 0.6 });
  }
  if (rnd() < 0.4)
    await story.make('ownStep', {
      ord: 'a1',
      title: 'Look at the belt',
      kind: pick(rnd, ['work', 'recheck']),
    });
}

/**
 * An invented machine, taken apart without a mistake: a guard over everything, then these blocks. `must` blocks are in
 * it and lie under the guard; with `plain` the log is left as it is, everything under the guard by its order.
 */
export async function machine(
  yard: Yard,
  rnd: Chance,
  { must = [], plain = false }: { must?: readonly Block[]; plain?: boolean } = {},
): Promise<Machine> {
  const story = await new Story(yard).begin();
  const ids: Ids = {};
  await prologue(story, ids, rnd, plain);
  const guard = await joint(story, '2 M6x12 hex 10, 9 Nm', 'belt guard');
  ids.guard = guard;
  const more = shuffled(rnd, BLOCKS).slice(0, (plain ? 1 : 2) + whole(rnd, plain ? 2 : 4));
  for (const block of shuffled(rnd, [...new Set([...must, ...more])])) await MAKERS[block](story, ids, rnd);
  const last = story.state.removal.find((one) => one.phase === 'under way');
  if (last) await story.change('removal', last.id, { phase: 'off' });
  if (!plain) await loosen(story, rnd);
  return { story, guard, ids };
}
