import { type Condition, type Entry, type EntryItem, type FastenerItem } from '../../core/entry/index.ts';

/**
 * The program's meaning in the neutral form of tests/entry/data/lines-*.json: what a person would say of a line,
 * without the program's own names. Fields that a person left out are not compared.
 */
export type Neutral = Readonly<Record<string, unknown>> & { readonly k: string };

const stowOf = (stow: { kind: string; label: string | null } | null): string | undefined =>
  stow === null ? undefined : `${stow.kind} ${stow.label ?? ''}`.trim();

/** Words of people for what the program calls by one word of its own. */
const SAME_CONDITION: Readonly<Record<string, string>> = {
  rusty: 'rusted',
  sheared: 'snapped',
  broken: 'snapped',
};

/** How many are bent, stripped …; said of nobody in particular it holds for all. */
function counted(conditions: readonly Condition[], all: number | null): Record<string, number> {
  const sum: Record<string, number> = {};
  for (const { what, qty, holes } of conditions)
    sum[what] = (sum[what] ?? 0) + (holes.length > 0 ? holes.length : (qty ?? all ?? 1));
  return sum;
}

function lengths(item: FastenerItem): Record<string, number> | undefined {
  if (item.lengths.length === 0) return undefined;
  const told = item.lengths.reduce((sum, { count }) => sum + (count ?? 0), 0);
  return Object.fromEntries(
    item.lengths.map(({ count, lengthMm }) => [String(lengthMm), count ?? (item.count ?? 0) - told]),
  );
}

function ofSet(item: FastenerItem): Neutral {
  if (item.what === 'key') return { k: 'part', kind: 'key', name: `${item.name ?? ''} key`, n: item.count };
  const { drive, thread } = item;
  const conditions = counted(item.conditions, item.count);
  return {
    k: 'set',
    // A screw plug is counted as fasteners, with its word as their name.
    kind: /plugs?$/i.test(item.name ?? '') ? 'plug' : item.what,
    n: item.count,
    name: item.name === null ? item.what : `${item.name} ${item.what}s`,
    size: drive?.acrossFlatsMm ?? drive?.size ?? undefined,
    confirm: item.threadToConfirm !== null,
    may: item.threadsPossible,
    thread: thread?.designation,
    pitch: thread?.pitchMm,
    hand: item.leftHand ? 'left' : 'right',
    len: item.lengthMm,
    lens: lengths(item),
    head: item.head ?? undefined,
    drive: drive?.style.replace('hex socket', 'hex key'),
    grade: item.propertyClass?.replace('grade ', ''),
    torque: item.torque?.torqueNm,
    angle: item.torque?.angleDeg,
    bag: stowOf(item.stow),
    missing: item.missingAsFound ?? 0,
    wrong: conditions['wrong'] ?? 0,
    bad: conditions,
    stack: item.stack.slice(1).map(({ what }) => what),
  };
}

/** An item as a person would say it; places, notes and what only describes are compared as words of the line. */
export function neutral(item: EntryItem): Neutral | null {
  switch (item.kind) {
    case 'fasteners':
      return ofSet(item);
    case 'part':
      return {
        k: 'part',
        name: item.name,
        kind: (item.look ?? 'part').toLowerCase(),
        n: item.qty ?? 1,
        own: item.ownPlace,
        stamped: item.stamped ?? undefined,
        bag: stowOf(item.stow),
        cond: item.conditions.map(({ what }) => what).join(' '),
      };
    case 'connection':
      return {
        k: 'conn',
        kind: item.what === 'connector' ? 'plug' : item.what,
        name: item.name,
        ends: item.ends,
      };
    case 'fluid':
      return { k: 'fluid', name: item.name, ml: item.amountMl };
    case 'made safe':
      return { k: 'safe', energy: item.energy };
    case 'temporary':
      return { k: 'temp', name: item.name, n: item.qty ?? 1 };
    case 'measurement':
      return { k: 'measure', what: item.what, value: item.value, unit: item.unit };
    case 'mark':
      return { k: 'mark', kind: 'match' };
    default:
      return null;
  }
}

const flat = (text: unknown): string =>
  String(text)
    .toLowerCase()
    .replace(/(-\d+) un[cf]$/, '$1')
    .replaceAll(/[\s#-]/g, '');

/** Fields in which it is enough that what was expected is said among more. */
const WITHIN = new Set(['name', 'head', 'drive', 'cond', 'what', 'kind']);

function fieldDiffers(field: string, want: unknown, got: unknown): boolean {
  if (field === 'may') return !(got as string[]).some((one) => flat(want).startsWith(flat(one)));
  if (field === 'bad')
    return Object.entries(want as Record<string, number>).some(
      ([what, n]) => (got as Record<string, number>)[SAME_CONDITION[what] ?? what] !== n,
    );
  if (field === 'stack') return (want as string[]).join() !== (got as string[]).join();
  if (field === 'lens') return JSON.stringify(want) !== JSON.stringify(got);
  if (typeof want === 'number') return typeof got !== 'number' || Math.abs(want - got) > 0.02 + want / 2000;
  if (typeof want !== 'string') return want !== got;
  return WITHIN.has(field) ? !flat(got).includes(flat(want)) : flat(want) !== flat(got);
}

export interface Expected {
  readonly items?: readonly Neutral[];
  /** More items than these may be read out of the line. */
  readonly more?: true;
  readonly did?: string;
  readonly held?: string;
  readonly side?: string;
  readonly place?: string;
  /** Words that must be found again somewhere in the meaning. */
  readonly said?: readonly string[];
  /** Texts that must stand in a note for the way back. */
  readonly backs?: readonly string[];
  /** Two readings are fair: something has to be left to confirm. */
  readonly ask?: true;
  readonly left?: 'any' | readonly string[];
}

function itemFaults(expected: Expected, entry: Entry): string[] {
  const got = entry.items.map(neutral).filter((one) => one !== null);
  const want = expected.items;
  if (want === undefined) return [];
  const faults: string[] = [];
  let from = 0;
  for (const item of want) {
    const at = got.findIndex((one, i) => i >= from && one.k === item.k);
    const found = got[at];
    if (!found) {
      faults.push(`no ${item.k} for ${JSON.stringify(item)}`);
      continue;
    }
    from = at + 1;
    for (const [field, value] of Object.entries(item))
      if (fieldDiffers(field, value, found[field]))
        faults.push(
          `${item.k}.${field}: expected ${JSON.stringify(value)}, got ${JSON.stringify(found[field])}`,
        );
  }
  if (!expected.more && got.length > want.length)
    faults.push(`expected ${want.length} things, got ${got.map(({ k }) => k).join(', ')}`);
  return faults;
}

function wholeFaults(expected: Expected, entry: Entry): string[] {
  const all = JSON.stringify(entry.items).toLowerCase();
  const notes = entry.items.flatMap((item) => (item.kind === 'note' ? [item.text] : []));
  const faults: string[] = [];
  const must = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault);
  };
  for (const field of ['side', 'place', 'held'] as const) {
    const want = expected[field];
    const where = field === 'held' ? /"heldby":"([^"]*)"/g : /"(?:place|name)":"([^"]*)"/g;
    const words = [...all.matchAll(where)].map((one) => one[1]).join(' ');
    if (want !== undefined) must(words.includes(want), `${field}: expected ${want}, got ${words}`);
  }
  if (expected.did !== undefined)
    must(all.includes(`"happened":"${expected.did}"`), `expected ${expected.did}`);
  for (const word of (expected.said ?? []).flatMap((words) => words.toLowerCase().split(' ')))
    must(all.includes(word), `“${word}” is not kept`);
  for (const text of expected.backs ?? [])
    must(
      notes.some((note) => note.includes(text)),
      `“${text}” is no note`,
    );
  return faults;
}

function underlined(expected: Expected, entry: Entry): string[] {
  if (expected.left === 'any' || expected.ask || (expected.said !== undefined && !expected.items)) return [];
  const left = entry.tokens.filter((token) => !token.understood).map((token) => token.text);
  const missing = (expected.left ?? []).filter((word) => !left.join(' ').includes(word));
  if (missing.length > 0) return [`expected ${missing.join(', ')} underlined`];
  return expected.left === undefined && left.length > 0 ? [`underlined: ${left.join(' ')}`] : [];
}

/** Everything in which the program's meaning of a line differs from what a person expects. */
export function differences(expected: Expected, entry: Entry, doubtful: boolean): string[] {
  const faults = [
    ...itemFaults(expected, entry),
    ...wholeFaults(expected, entry),
    ...underlined(expected, entry),
  ];
  return expected.ask && !doubtful ? [...faults, 'expected it to ask'] : faults;
}
