import { threadDoubt } from '../../entry/index.ts';
import type { EntryItem, FastenerItem } from '../../entry/meaning.ts';
import { blank } from '../../model/blank.ts';
import { type Row, TABLES } from '../../model/tables.ts';
import { poolKeyOf } from '../../tally/index.ts';

/** A kind that the tables do not tell apart is kept by its wider kind; its own word stays in `more`. */
export function kindOf(what: string): { kind: Row<'spec'>['kind']; more: string } {
  if (what === 'unspecified') return { kind: 'unknown', more: '' };
  const known = TABLES.spec.schema.shape.kind.safeParse(what);
  if (known.success) return { kind: known.data, more: '' };
  const wider = WIDER.find(([word]) => what.includes(word))?.[1] ?? 'other';
  return { kind: wider, more: what };
}

const WIDER: readonly [string, Row<'spec'>['kind']][] = [
  ['washer', 'washer'],
  ['nut', 'nut'],
  ['bush', 'spacer'],
  ['bolt', 'bolt'],
  ['screw', 'screw'],
  ['pin', 'pin'],
  ['clip', 'clip'],
];

/** What an entry says of a fastener, as a stored specification. A thread that only follows from the head is not known. */
export function specOf(item: FastenerItem, id: string, jobId: string): Row<'spec'> {
  const known = item.thread !== null;
  const { kind, more } = kindOf(item.what);
  const pitch = item.thread?.pitchMm ?? null;
  const inNoTable = item.thread !== null && threadDoubt(item.thread) !== null;
  const spec = blank('spec', id, jobId, {
    kind,
    thread: item.thread?.designation ?? item.threadToConfirm,
    threadKnown: known && item.thread?.pitchAssumed !== true && (pitch !== null || !inNoTable),
    pitchUm: pitch === null ? null : Math.round(pitch * 1000),
    lengthUm: item.lengthMm === null ? null : Math.round(item.lengthMm * 1000),
    head: item.head,
    drive: item.drive?.style ?? null,
    driveSizeUm:
      item.drive?.acrossFlatsMm === null || item.drive?.acrossFlatsMm === undefined
        ? null
        : Math.round(item.drive.acrossFlatsMm * 1000),
    driveTyped: item.drive?.size ?? '',
    grade: item.propertyClass,
    hand: item.leftHand ? 'left' : 'right',
    more: [more, item.sizeMm === null ? '' : `${item.sizeMm} mm`].filter((word) => word !== '').join(', '),
  });
  return { ...spec, poolKey: poolKeyOf(spec) };
}
specOf.key = poolKeyOf;

/** A sentence for each thread of a line that no table has, with the sizes that come near; "" for none. */
export function threadDoubts(items: readonly EntryItem[]): string {
  return items
    .flatMap((item) => {
      const thread = item.kind === 'fasteners' ? item.thread : null;
      const doubt = thread && threadDoubt(thread);
      if (!thread || !doubt) return [];
      const name = thread.pitchMm === null ? thread.designation : `${thread.designation} × ${thread.pitchMm}`;
      const near =
        doubt.near.length === 0 ? '' : `; ${doubt.near.join(', ')} ${doubt.near.length > 1 ? 'are' : 'is'}`;
      return [`${name} is in no table of threads here${near}. Confirm it at the bench.`];
    })
    .join(' ');
}

/** Wanted torque of a set, as typed and in millinewton metres. */
export function torqueOf(
  item: FastenerItem,
): Pick<Row<'fset'>, 'torqueMnm' | 'torqueTyped' | 'torqueFrom' | 'angleDeg' | 'stages'> {
  const torque = item.torque;
  if (!torque) return { torqueMnm: null, torqueTyped: '', torqueFrom: null, angleDeg: null, stages: [] };
  const angle = torque.angleDeg === null ? '' : ` + ${torque.angleDeg}°`;
  return {
    torqueMnm: torque.torqueNm === null ? null : Math.round(torque.torqueNm * 1000),
    torqueTyped:
      torque.stages.length > 0
        ? torque.stages.join(', then ').replaceAll('Nm', 'N·m')
        : torque.value === null
          ? angle.trim()
          : `${torque.value} ${UNITS[torque.unit]}${angle}`,
    torqueFrom: torque.byFeel ? 'by feel' : 'own',
    angleDeg: torque.angleDeg,
    stages: torque.stages.map((stage) => stage.replace('Nm', 'N·m')),
  };
}

const UNITS = { Nm: 'N·m', 'lbf ft': 'lbf·ft', 'lbf in': 'lbf·in', 'kgf m': 'kgf·m' } as const;
