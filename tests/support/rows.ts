import { v7 } from 'uuid';
import { type BlankTable, blank } from '../../core/model/blank.ts';
import { TABLE_NAMES, TABLES, type TableName } from '../../core/model/tables.ts';

const id = v7();
const hash = 'ab'.repeat(32);

/** Values for what a blank row leaves empty, so that the schema takes it. */
const FILLED: Partial<Record<TableName, Record<string, unknown>>> = {
  person: { name: 'Ana' },
  tool: { name: 'Wrench 3', calibratedUntil: 5 },
  stow: { label: '4' },
  original: {
    id: hash,
    bytes: 10,
    type: 'image/jpeg',
    width: 4,
    height: 3,
    turn: 6,
    takenLocal: '2026:09:01 10:00:00',
    takenZone: null,
    takenUtc: null,
    camera: '',
    sharpness: 0.5,
    phash: '0123456789abcdef',
    hasLocation: false,
    gone: false,
    goneWhy: '',
  },
  job: { title: 'Lathe', sideNames: { left: 'headstock', right: 'tailstock', seenFrom: 'the front' } },
  asFound: { text: 'two screws missing' },
  ready: { ord: 'a0', text: '16 mm ring spanner' },
  halt: { at: 1, personId: null, note: 'loose', seenAt: null, seenBy: null },
  signoff: { head: hash, personId: id, said: 'all back', at: 1 },
  thing: { kind: 'part' },
  removal: { ord: 'a0', pauses: [{ from: 1, to: null }] },
  action: { removalId: id, ord: 'a0', what: 'unplug' },
  need: { removalId: id, needsId: id },
  backOrder: { beforeId: id, afterId: id },
  ownStep: { ord: 'a0', title: 'Turn by hand' },
  away: { thingId: id },
  fset: { removalId: id, ord: 'a0', specId: id, stages: ['30 N·m', '+ 90°'] },
  stackItem: { setId: id, ord: 'a0', what: 'washer' },
  position: { setId: id },
  holds: { positionId: id, partId: id },
  opens: { fluidId: id, thingId: id },
  fluid: { name: 'gear oil' },
  isolation: { removalId: id },
  protects: { isolationId: id, removalId: id },
  temporary: { name: 'rag' },
  mark: { body: 'dot to dot' },
  measure: { what: 'end float', asFound: 0.15 },
  consumable: { thingId: id },
  want: { what: 'gasket' },
  photo: { originalId: hash },
  marker: { photoId: id, x: 0.25, y: 0.75 },
  card: { code: 'ABCD' },
  counting: {
    stowId: null,
    thingId: null,
    expected: 8,
    counted: 7,
    at: 1,
    personId: null,
    note: '',
    ended: null,
    endedWhy: '',
    endedAt: null,
    endedBy: null,
  },
  move: {
    specId: null,
    homeSetId: null,
    partId: null,
    qty: 1,
    src: 'hole',
    dst: 'stow',
    positionId: null,
    srcStowId: null,
    dstStowId: null,
    cause: 'came off',
    countId: null,
    fresh: false,
    at: 1,
    personId: null,
  },
  deed: {
    thingId: id,
    round: 1,
    what: 'tightened',
    value: 40.5,
    valueTyped: '40,5 N·m',
    known: 'read',
    toolId: null,
    withThingId: null,
    withSpecId: null,
    fresh: false,
    personId: null,
    at: 1,
    why: '',
  },
  accepted: { finding: 'x', digest: 'y', why: 'seen', personId: null, at: 1 },
};

/** One valid row of every table. */
export const BLANK_ROWS: Readonly<Record<TableName, Record<string, unknown>>> = Object.fromEntries(
  TABLE_NAMES.map((table) => {
    const own = TABLES[table].scope === 'job' ? { id, jobId: id } : { id };
    const base = blank(table as BlankTable, id, id, {}) as Record<string, unknown>;
    const { jobId: _jobId, ...rest } = base;
    return [table, { ...own, ...(TABLES[table].scope === 'job' ? base : rest), ...FILLED[table] }];
  }),
) as unknown as Record<TableName, Record<string, unknown>>;
