import { type BlankTable, blank } from '../../core/model/blank.ts';
import type { JobTable, Row } from '../../core/model/tables.ts';

/** A specification of which everything that matters is known, but its length: M8 × 1.25, hex 13, 8.8. */
export const M8: Partial<Row<'spec'>> = {
  kind: 'bolt',
  thread: 'M8',
  threadKnown: true,
  pitchUm: 1250,
  head: 'hex',
  drive: 'hex external',
  driveSizeUm: 13_000,
  driveTyped: '13 mm',
  grade: '8.8',
};

/** Where a row of a test says more than the program's own blank row; the ledger's rows have no blank at all. */
const SAID: { readonly [T in JobTable]?: Partial<Row<T>> } = {
  halt: { personId: null, note: '', seenAt: null, seenBy: null },
  asFound: { kind: 'damage' },
  removal: { phase: 'off' },
  part: { how: 'fitted new' },
  away: { toWhom: 'the machinist' },
  spec: { ...M8, lengthUm: 30_000 },
  fset: { name: 'bolts' },
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
    personId: null,
  },
  counting: {
    stowId: null,
    thingId: null,
    personId: null,
    note: '',
    ended: null,
    endedWhy: '',
    endedAt: null,
    endedBy: null,
  },
  connection: { kind: 'plug', joint: 'plug', seal: 'none' },
  measure: { unit: 'mm', required: true },
  consumable: { name: 'Sealant' },
  deed: {
    value: null,
    valueTyped: '',
    known: 'ticked',
    toolId: null,
    withThingId: null,
    withSpecId: null,
    fresh: false,
    personId: null,
    why: '',
  },
  want: { what: 'to get' },
  accepted: { personId: null },
  photo: { fileName: 'photo.jpg' },
  marker: { x: 0.5, y: 0.5 },
};

/** A row of a test: what is said, and for the rest what a row has of which nothing is recorded but its kind. */
export function rowOf<T extends JobTable>(
  table: T,
  id: string,
  jobId: string,
  more: Partial<Row<T>>,
): Row<T> {
  return blank(table as BlankTable, id, jobId, { ...SAID[table], ...more } as object) as unknown as Row<T>;
}
