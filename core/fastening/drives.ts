import { DRIVES } from './data/drives.ts';
import { parseFraction } from './numbers.ts';
import type { Confidence } from './outcome.ts';
import { cell, readRows } from './table.ts';

export type DriveKind = 'hex external' | 'hex socket' | 'hexalobular';

/** One line of a product standard: a thread size and the tool that fits its head. */
export interface DriveRow {
  /** Thread size without pitch: "M8", "5/16", "#10". */
  readonly size: string;
  readonly family: string;
  readonly standard: string;
  readonly drive: DriveKind;
  /** As the tool is named: "13 mm", "1/2 in", "T30". */
  readonly tool: string;
  /** Nominal tool size in mm; a hexalobular tool has its number instead. */
  readonly toolMm?: number;
  readonly confidence: Confidence;
  readonly note: string;
}

interface Table {
  readonly rows: readonly DriveRow[];
  /** Hexalobular number → outside dimension A in mm (ISO 10664). */
  readonly hexalobularMm: ReadonlyMap<string, number>;
}

function readTable(): Table {
  const rows: DriveRow[] = [];
  const hexalobularMm = new Map<string, number>();
  let head: readonly string[] = [];
  for (const row of readRows(DRIVES)) {
    if (cell(row, 0).startsWith('> ')) {
      head = [cell(row, 0).slice(2), ...row.slice(1)];
      continue;
    }
    const [family = '', standard = '', drive = '', unit = ''] = head;
    const tool = cell(row, 1);
    const value = parseFraction(tool);
    if (drive === 'hexalobular' && unit === 'mm') {
      hexalobularMm.set(cell(row, 0), Number(tool));
      continue;
    }
    const toolMm = value.ok ? value.value.value * (unit === 'in' ? 25.4 : 1) : undefined;
    rows.push({
      size: cell(row, 0),
      family,
      standard,
      drive: drive as DriveKind,
      tool: toolMm === undefined ? tool : `${tool} ${unit}`,
      ...(toolMm === undefined ? {} : { toolMm }),
      confidence: cell(row, 2),
      note: cell(row, 3),
    });
  }
  return { rows, hexalobularMm };
}

const TABLE = readTable();

/** All rows of the drive tables, in the order of the standards. */
export const DRIVE_ROWS: readonly DriveRow[] = TABLE.rows;

/** Outside dimension A in mm of a hexalobular socket number such as "T30" (ISO 10664). */
export const HEXALOBULAR_MM: ReadonlyMap<string, number> = TABLE.hexalobularMm;

/** A tool size as an answer: every thread it can belong to, and from which standards. */
export interface DriveMatch {
  readonly size: string;
  readonly rows: readonly DriveRow[];
  /** Measured minus nominal tool size, mm. 0 for hexalobular numbers. */
  readonly deviationMm: number;
}

/**
 * How far a measured head may be from the nominal tool and still belong to it: heads are made smaller than the
 * spanner (ISO 4014: 13 down to 12.73 in grade A; grade B, from M16 on, down to 3.5 %; from memory), paint adds a little. Both in mm.
 */
export function withinTool(measuredMm: number, toolMm: number): boolean {
  const below = Math.max(0.15, (toolMm < 23 ? 0.025 : 0.035) * toolMm);
  return measuredMm >= toolMm - below && measuredMm <= toolMm + 0.1;
}

function bySize(rows: readonly DriveRow[], measuredMm: number | undefined): readonly DriveMatch[] {
  const groups = new Map<string, DriveRow[]>();
  for (const row of rows) groups.set(row.size, [...(groups.get(row.size) ?? []), row]);
  const off = (row: DriveRow): number =>
    measuredMm === undefined || row.toolMm === undefined ? 0 : measuredMm - row.toolMm;
  return [...groups.entries()]
    .map(([size, own]) => {
      const nearest = own.reduce((a, b) => (Math.abs(off(b)) < Math.abs(off(a)) ? b : a));
      return { size, rows: own, deviationMm: off(nearest) };
    })
    .sort(
      (a, b) =>
        Number(Math.abs(a.deviationMm) > 0.05) - Number(Math.abs(b.deviationMm) > 0.05) ||
        b.rows.length - a.rows.length ||
        Math.abs(a.deviationMm) - Math.abs(b.deviationMm),
    );
}

/**
 * Every thread that an outside hexagon of this width across flats can belong to, most standards first.
 * `acrossFlatsMm` in mm, as measured or as the spanner is named. Empty where no table has it.
 * A head alone never proves a thread: 13 mm is usually M8, and is M10 on a small flange bolt.
 */
export function threadsForAcrossFlats(acrossFlatsMm: number): readonly DriveMatch[] {
  return forTool('hex external', acrossFlatsMm);
}

/** Every thread that a hexagon socket of this key size in mm can belong to. */
export function threadsForHexKey(keyMm: number): readonly DriveMatch[] {
  return forTool('hex socket', keyMm);
}

function forTool(drive: DriveKind, measuredMm: number): readonly DriveMatch[] {
  const rows = DRIVE_ROWS.filter(
    (row) => row.drive === drive && row.toolMm !== undefined && withinTool(measuredMm, row.toolMm),
  );
  return bySize(rows, measuredMm);
}

/** Every thread that a hexalobular number such as "T30", "30" or "TX 30" can belong to. */
export function threadsForHexalobular(number: string): readonly DriveMatch[] {
  const wanted = `T${/\d+/.exec(number)?.[0] ?? ''}`;
  return bySize(
    DRIVE_ROWS.filter((row) => row.drive === 'hexalobular' && row.tool === wanted),
    undefined,
  );
}
