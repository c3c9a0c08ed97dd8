import { generateKeyBetween } from 'fractional-indexing';
import type { ConnectionItem, FastenerItem, PartItem, PutOn } from '../../entry/meaning.ts';
import { emptyFasteners } from '../../entry/state.ts';
import { writeCondition } from '../../entry/write-words.ts';
import { blank } from '../../model/blank.ts';
import type { Row, TableName } from '../../model/tables.ts';
import type { Decision } from '../frame.ts';
import { book, bookOut, nextBag, stowFor } from '../pieces.ts';
import { kindOf, specOf, torqueOf } from './spec.ts';
import { expectedPart, holesWith, setWith, specWith, takeExpected } from '../pattern/adopt.ts';
import { renewalOf } from './renewal.ts';

/** What one entry line makes, and where: carried from item to item of the line. */
export interface Line {
  readonly decision: Decision;
  readonly removal: Row<'removal'>;
  readonly typed: string;
  readonly made: { table: TableName; id: string }[];
  /** The bag of this removal, taken once for all its sets. */
  bag: Row<'stow'> | null;
  lastSet: Row<'fset'> | null;
  lastOrd: string | null;
  notes: string[];
  /** What was understood and no row can hold: kept as notes too, and said. */
  kept: string[];
}

export function put<T extends TableName>(line: Line, table: T, row: Row<T>): Row<T> {
  line.decision.writer.put(table, row);
  line.made.push({ table, id: (row as { id: string }).id });
  return row;
}

function stowOfItem(line: Line, stow: FastenerItem['stow']): Row<'stow'> | null {
  if (!stow) return null;
  if (stow.label === null) return nextBag(line.decision);
  return stowFor(line.decision, stow.kind, stow.label);
}

/** One hole as typed: its length where several were said, its condition where a hole was named. */
function holesFor(line: Line, item: FastenerItem, set: Row<'fset'>, spec: Row<'spec'>): Row<'position'>[] {
  const { decision } = line;
  const missing = item.missingAsFound ?? item.missingHoles.length;
  const among = item.missingAre !== 'besides';
  const counted = item.count ?? (item.lengths.reduce((sum, group) => sum + (group.count ?? 0), 0) || missing);
  const total = Math.max(
    among ? counted : counted + missing,
    ...item.missingHoles,
    ...item.lengths.flatMap((group) => group.holes),
    0,
  );
  const lengths: (string | undefined)[] = [];
  // Holes that were named first, then those that were only counted; a length without a count is for the rest.
  const named = (group: FastenerItem['lengths'][number]) =>
    group.holes.length > 0 ? 0 : group.count !== null ? 1 : 2;
  for (const group of [...item.lengths].sort((a, b) => named(a) - named(b))) {
    const own = { ...spec, id: decision.newId(), lengthUm: Math.round(group.lengthMm * 1000) };
    decision.writer.put('spec', { ...own, poolKey: specOf.key(own) });
    for (const hole of group.holes) lengths[hole - 1] = own.id;
    let left = group.holes.length > 0 ? 0 : (group.count ?? total);
    for (let i = 0; i < total && left > 0; i += 1)
      if (lengths[i] === undefined) {
        lengths[i] = own.id;
        left -= 1;
      }
  }
  const holes: Row<'position'>[] = [];
  for (let n = 1; n <= total; n += 1) {
    const empty = item.missingHoles.length > 0 ? item.missingHoles.includes(n) : n > total - missing;
    holes.push(
      blank('position', decision.newId(), decision.jobId, {
        setId: set.id,
        n,
        specId: lengths[n - 1] ?? null,
        found: empty ? 'empty' : 'fitted',
      }),
    );
  }
  return withConditions(item, holes);
}

const BLOCKS = new Set(['snapped']);

function withConditions(item: FastenerItem, holes: Row<'position'>[]): Row<'position'>[] {
  const result = [...holes];
  const mark = (index: number, text: string, blocked: boolean) => {
    const hole = result[index];
    if (!hole) return;
    const condition = hole.condition === '' ? text : `${hole.condition}, ${text}`;
    result[index] = blocked
      ? { ...hole, condition, fate: 'blocked', fateWhy: `${text} at removal` }
      : { ...hole, condition };
  };
  for (const condition of item.conditions) {
    if (condition.holes.length > 0)
      for (const n of condition.holes) mark(n - 1, condition.what, BLOCKS.has(condition.what));
    else {
      // Which hole was not said: the piece is marked on the last fitted holes, and the words say so.
      const fitted = result.map((hole, i) => (hole.found === 'fitted' ? i : -1)).filter((i) => i >= 0);
      const hit = condition.qty === null ? fitted : fitted.slice(-condition.qty);
      const words = condition.qty === null ? condition.what : `${condition.what} (one of the set)`;
      for (const i of hit) mark(i, words, BLOCKS.has(condition.what));
    }
  }
  return result;
}

/** Fasteners: a specification, a set, its holes and, for what came out, one booking a piece. */
export function addFasteners(line: Line, item: FastenerItem): void {
  const { decision, removal } = line;
  const typedSpec = specOf(item, decision.newId(), decision.jobId);
  const expected = takeExpected(decision, removal.id, typedSpec);
  const spec = specWith(expected, typedSpec);
  decision.writer.put('spec', spec);
  const slackened = item.happened === 'slackened' || removal.did === 'slackened';
  const named = stowOfItem(line, item.stow);
  if (named) line.bag = named;
  else if (!slackened && !line.bag) line.bag = nextBag(decision);
  const renewal = renewalOf({
    kind: spec.kind,
    name: `${item.name ?? ''} ${item.what}`,
    typed: line.typed,
    head: item.head,
    angleDeg: item.torque?.angleDeg ?? null,
  });
  const treatment = item.treatments.find((one) => one !== 'sealant') ?? null;
  line.lastOrd = generateKeyBetween(line.lastOrd, null);
  const set = blank('fset', expected?.set.id ?? decision.newId(), decision.jobId, {
    removalId: removal.id,
    ord: line.lastOrd,
    name: item.name ?? '',
    typed: line.typed,
    specId: spec.id,
    side: removal.side,
    how: slackened ? 'slackened' : 'out',
    countKnown: item.count !== null || item.lengths.some((group) => group.count !== null),
    stowId: slackened ? null : (line.bag?.id ?? null),
    ...torqueOf(item),
    lubrication: treatment === 'greased' || treatment === 'oiled' ? treatment : (treatment ?? 'unknown'),
    ...renewal,
    ...setWith(expected, item),
  });
  put(line, 'fset', set);
  if (item.stack.length > 0) addStack(line, item, set);
  else for (const one of expected?.stack ?? []) decision.writer.put('stackItem', one);
  const holes = holesWith(expected, typedSpec, item.lengths.length > 0, holesFor(line, item, set, spec));
  for (const hole of holes) decision.writer.put('position', hole);
  if (!slackened) bookOut(decision, set, holes);
  const marked = (n: number) => holes.some((hole) => hole.n === n);
  for (const one of item.conditions)
    if (holes.length === 0 || !one.holes.every(marked)) line.kept.push(writeCondition(one));
  for (const what of item.treatments)
    if (what !== 'dry') addConsumable(line, set.id, { what, typed: CONSUMABLES[what].name });
  line.lastSet = set;
}

/** Each piece of a stack has a specification of its own, so that its washers and nuts are counted too. */
function addStack(line: Line, item: FastenerItem, set: Row<'fset'>): void {
  const { decision } = line;
  let mainTaken = false;
  item.stack.forEach((piece, i) => {
    const main = !mainTaken && ['bolt', 'screw', 'stud'].includes(piece.what);
    mainTaken ||= main;
    const own = blank('spec', decision.newId(), decision.jobId, {
      kind: kindOf(piece.what).kind,
      thread: ['nut', 'lock nut'].includes(piece.what) ? (item.thread?.designation ?? null) : null,
      more: piece.what,
    });
    if (!main) decision.writer.put('spec', own);
    decision.writer.put(
      'stackItem',
      blank('stackItem', decision.newId(), decision.jobId, {
        setId: set.id,
        ord: `a${String(i).padStart(3, '0')}`,
        what: piece.what,
        specId: main ? set.specId : own.id,
        qty: piece.qty,
      }),
    );
  });
}

/** What is put on again, by how it was found, with the word for it where only that was said. */
const CONSUMABLES = {
  sealant: { kind: 'sealant', name: 'sealant' },
  threadlock: { kind: 'threadlock', name: 'threadlock' },
  greased: { kind: 'grease', name: 'grease' },
  oiled: { kind: 'oil', name: 'oil' },
  'anti-seize': { kind: 'paste', name: 'anti-seize' },
} as const;
/** Found so, and no name of what is put on. */
const FOUND = new Set([
  'greased',
  'with grease',
  'oiled',
  'lubricated',
  'sealed',
  'threadlocked',
  'thread locked',
]);

/** What was seen on a thing and is put on again: once, also where a pattern expects it. */
export function addConsumable(line: Line, thingId: string, { what, typed }: PutOn): void {
  const { decision } = line;
  const { kind, name } = CONSUMABLES[what];
  const named = FOUND.has(typed.toLowerCase()) ? name : typed;
  const known = decision.writer.list(
    'consumable',
    (one) => one.thingId === thingId && one.name.toLowerCase() === named.toLowerCase(),
    decision.state.consumable,
  );
  if (known.length > 0) return;
  const row = blank('consumable', decision.newId(), decision.jobId, { thingId, kind, name: named });
  decision.writer.put('consumable', row);
}

const PART_KINDS = {
  gasket: 'gasket',
  'O-ring': 'o-ring',
  seal: 'seal',
  filter: 'filter',
  sleeve: 'sleeve',
  shim: 'shim',
} as const;

/** A part; what came off is booked out of its place. */
export function addPart(line: Line, item: PartItem): void {
  const { decision, removal } = line;
  const named = stowOfItem(line, item.stow);
  // What was only slackened stays where it is, as what was moved aside does: nothing of it is booked out.
  const stays = ['aside', 'slackened'];
  const how =
    stays.includes(item.happened) || stays.includes(removal.did)
      ? 'aside'
      : item.happened === 'opened' || removal.did === 'opened'
        ? 'opened'
        : 'off';
  const renewal =
    item.renew !== null
      ? { renew: item.renew, renewRule: null, renewWhy: 'as noted at removal' }
      : renewalOf({
          kind: item.look ?? 'part',
          name: item.name,
          typed: line.typed,
          head: null,
          angleDeg: null,
        });
  const expected = how === 'off' ? expectedPart(decision, removal.id, item.name) : null;
  const part = blank('part', expected?.id ?? decision.newId(), decision.jobId, {
    ...expected,
    removalId: removal.id,
    name: item.name,
    typed: line.typed,
    kind: item.look === null ? (expected?.kind ?? 'part') : PART_KINDS[item.look],
    qty: item.qty ?? expected?.qty ?? 1,
    how,
    ownPlace: item.ownPlace || expected?.ownPlace === true,
    stamped: item.stamped ?? '',
    stowId: named?.id ?? null,
    condition: item.conditions.map((one) => one.what).join(', '),
    fate: renewal.renew === 'must' ? 'renew' : 'refit',
    ...renewal,
  });
  put(line, 'part', part);
  for (const one of item.treatments) addConsumable(line, part.id, one);
  if (how === 'off')
    book(decision, {
      qty: Math.max(1, part.qty),
      src: 'hole',
      dst: 'stow',
      cause: 'came off',
      partId: part.id,
      dstStowId: part.stowId,
    });
}

const JOINTS = {
  hose: 'hose on stub',
  pipe: 'unknown',
  plug: 'plug',
  connector: 'plug',
  cable: 'unknown',
  'earth lead': 'earth',
  union: 'unknown',
  linkage: 'linkage',
} as const;

/**
 * A hose, plug, cable: it has no place of its own in the books, so where it lies is kept in its words. A bag that was
 * said with a clamp holds the clamp, which then is a piece like any other.
 */
export function addConnection(line: Line, item: ConnectionItem): void {
  const { decision, removal } = line;
  const bagged = item.clampMm !== null && item.stow !== null;
  if (bagged)
    addFasteners(line, {
      ...emptyFasteners(),
      what: 'clamp',
      count: 1,
      sizeMm: item.clampMm,
      happened: item.happened === 'slackened' ? 'slackened' : 'off',
      stow: item.stow,
    });
  const words = [
    item.clampMm === null || bagged ? '' : `clamp ${item.clampMm} mm`,
    item.stow === null || bagged ? '' : [item.stow.kind, item.stow.label ?? ''].join(' ').trim(),
    item.pins === null ? '' : `${item.pins} pin`,
    item.conditions.map((one) => one.what).join(', '),
  ].filter((word) => word !== '');
  const connection = put(
    line,
    'connection',
    blank('connection', decision.newId(), decision.jobId, {
      removalId: removal.id,
      name: [item.name, ...words].join(', '),
      typed: line.typed,
      kind: item.what === 'connector' ? 'plug' : item.what,
      joint: JOINTS[item.what],
      ends: item.ends ?? Math.max(1, item.qty ?? 1),
      seal: JOINTS[item.what] === 'hose on stub' || JOINTS[item.what] === 'plug' ? 'none' : 'unknown',
      leaveAlone: item.leaveAlone,
    }),
  );
  for (const one of item.treatments) addConsumable(line, connection.id, one);
}
