import { METRIC_THREADS, METRIC_THREADS_MORE, UNIFIED_THREADS } from './data/threads.ts';
import { parseDecimal, parseFraction } from './numbers.ts';
import { good, refuse, type Confidence, type Outcome } from './outcome.ts';
import { cell, numberCell, readRows, type Row } from './table.ts';

const INCH_MM = 25.4;

type ThreadSystem = 'metric' | 'unified';

/** One external thread, dimensions in mm and mm². */
export interface Thread {
  readonly designation: string;
  readonly system: ThreadSystem;
  readonly series: string;
  /** Size without the pitch: "M8", "5/16". */
  readonly size: string;
  readonly nominalMm: number;
  readonly pitchMm: number;
  readonly tpi?: number;
  /** As tabulated (three figures), or by the formula where no table has it. */
  readonly stressAreaMm2: number;
  readonly pitchDiameterMm: number;
  readonly minorDiameterMm: number;
  readonly confidence: Confidence;
  readonly source: string;
  readonly note: string;
}

/** Basic pitch diameter d2 = d − 0.649519 P, mm. Source: ISO 724. */
export function pitchDiameterMm(nominalMm: number, pitchMm: number): number {
  return nominalMm - 0.649519 * pitchMm;
}

/** Minor diameter at the root d3 = d − 1.226869 P, mm. Source: ISO 724. */
export function minorDiameterMm(nominalMm: number, pitchMm: number): number {
  return nominalMm - 1.226869 * pitchMm;
}

/** Stress area As = π/4 (d − 0.938194 P)², mm². Source: ISO 898-1. Not for inch threads: their constant differs. */
export function metricStressAreaMm2(nominalMm: number, pitchMm: number): number {
  return (Math.PI / 4) * (nominalMm - 0.938194 * pitchMm) ** 2;
}

/** Stress area As = π/4 (D − 0.9743/n)², in². Source: ASME B1.1. */
export function unifiedStressAreaIn2(majorIn: number, tpi: number): number {
  return (Math.PI / 4) * (majorIn - 0.9743 / tpi) ** 2;
}

function metric(row: Row): Thread {
  const nominalMm = numberCell(row, 1);
  const pitchMm = numberCell(row, 2);
  return {
    designation: cell(row, 0),
    system: 'metric',
    series: cell(row, 3),
    size: `M${nominalMm}`,
    nominalMm,
    pitchMm,
    stressAreaMm2: numberCell(row, 4),
    pitchDiameterMm: pitchDiameterMm(nominalMm, pitchMm),
    minorDiameterMm: minorDiameterMm(nominalMm, pitchMm),
    confidence: cell(row, 5),
    source: 'ISO 261, ISO 724, ISO 898-1',
    note: cell(row, 6),
  };
}

function unified(row: Row): Thread {
  const designation = cell(row, 0);
  const nominalMm = numberCell(row, 1) * INCH_MM;
  const tpi = numberCell(row, 2);
  const pitchMm = INCH_MM / tpi;
  return {
    designation,
    system: 'unified',
    series: cell(row, 3),
    size: designation.slice(0, designation.lastIndexOf('-')),
    nominalMm,
    pitchMm,
    tpi,
    stressAreaMm2: numberCell(row, 4) * INCH_MM * INCH_MM,
    pitchDiameterMm: pitchDiameterMm(nominalMm, pitchMm),
    minorDiameterMm: nominalMm - 1.299038 * pitchMm,
    confidence: cell(row, 5),
    source: 'ASME B1.1',
    note: cell(row, 6),
  };
}

/** A thread with the same in inches, and its stress area by the formula beside the tabulated one. */
export interface ThreadFacts extends Thread {
  readonly nominalIn: number;
  readonly stressAreaIn2: number;
  readonly formulaAreaMm2: number;
  readonly formulaAreaIn2: number;
}

/** Both systems side by side: a unified thread's table is in inches, a metric one's in millimetres. */
export function threadFacts(thread: Thread): ThreadFacts {
  const nominalIn = thread.nominalMm / INCH_MM;
  const formulaAreaMm2 =
    thread.system === 'metric'
      ? metricStressAreaMm2(thread.nominalMm, thread.pitchMm)
      : unifiedStressAreaIn2(nominalIn, INCH_MM / thread.pitchMm) * INCH_MM * INCH_MM;
  const inches = (mm2: number): number => Number((mm2 / (INCH_MM * INCH_MM)).toPrecision(9));
  return {
    ...thread,
    nominalIn: Number(nominalIn.toPrecision(9)),
    stressAreaIn2: inches(thread.stressAreaMm2),
    formulaAreaMm2,
    formulaAreaIn2: inches(formulaAreaMm2),
  };
}

/** Every thread the program knows, metric first, each system by size and series. */
export const THREADS: readonly Thread[] = [
  ...readRows(METRIC_THREADS).map(metric),
  ...readRows(METRIC_THREADS_MORE).map(metric),
  ...readRows(UNIFIED_THREADS).map(unified),
];

const EXPECTED = 'a thread such as M8, M10x1.25, 5/16-18 or #10-32';

/**
 * Finds a thread by what people write: "M8", "M8x1.25", "M10 × 1,25", "5/16-18 UNC", "1/4 UNF", "No. 10-32", "8-36".
 * A metric size without a pitch is the coarse one. A size with a pitch that no table lists is computed by the
 * formula and says so. Refuses what is no thread.
 */
export function findThread(text: string): Outcome<Thread> {
  const bare = text
    .trim()
    .replace(/\s+/g, ' ')
    // Hand and fit class say nothing about the size: "LH", "left-hand", "-6g", "-2A".
    .replace(/[\s,(-]*\b(lh|rh|(left|right)[\s-]?hand(ed)?)\b\)?/gi, '')
    .replace(/(?<=[\dfncs])\s*-\s*(\d[efghEFGH]){1,2}$/, '')
    .replace(/(?<=[\dfncs])\s*-?\s*[123][AB]$/i, '')
    .trim();
  return /^m\s*\d/i.test(bare) ? findMetric(bare) : findUnified(bare);
}

function findMetric(text: string): Outcome<Thread> {
  const parts = /^m\s*([\d.,]+)(?:\s*[x×*-]\s*([\d.,]+))?(?:\s*[x×*-]\s*[\d.,]+)?\s*(?:coarse|fine)?$/i.exec(
    text,
  );
  const nominal = parts ? parseDecimal(parts[1] ?? '') : undefined;
  if (!parts || !nominal?.ok) return refuse('thread.unreadable', EXPECTED, text);
  const nominalMm = nominal.value;
  if (parts[2] === undefined) {
    const coarse = THREADS.find(
      (t) => t.system === 'metric' && t.series === 'coarse' && t.nominalMm === nominalMm,
    );
    return coarse
      ? good(coarse)
      : refuse('thread.unknown', 'a metric size with its pitch, such as M9x1.25', text);
  }
  const pitch = parseDecimal(parts[2]);
  if (!pitch.ok) return refuse('thread.unreadable', EXPECTED, text);
  const pitchMm = pitch.value;
  const listed = THREADS.find(
    (t) => t.system === 'metric' && t.nominalMm === nominalMm && t.pitchMm === pitchMm,
  );
  if (listed) return good(listed);
  if (!(nominalMm >= 1 && nominalMm <= 300 && pitchMm >= 0.2 && pitchMm <= nominalMm / 3)) {
    return refuse(
      'thread.unknown',
      'a diameter of 1 to 300 mm with a pitch from 0.2 mm to a third of it',
      text,
    );
  }
  return good(unlistedMetric(nominalMm, pitchMm));
}

function unlistedMetric(nominalMm: number, pitchMm: number): Thread {
  return metric([
    `M${nominalMm}x${pitchMm}`,
    String(nominalMm),
    String(pitchMm),
    'special',
    String(metricStressAreaMm2(nominalMm, pitchMm)),
    'formula only',
    'not in the tables here; computed by the formula',
  ]);
}

function findUnified(text: string): Outcome<Thread> {
  const bare = text
    .replace(/\bno\.?\s*(?=\d)/i, '#')
    .replace(/["″]/g, '')
    .trim();
  const parts =
    /^(#?\d+(?:[ -]\d+\/\d+|\/\d+)?|0?\.\d+)(?:\s*[- ]\s*(\d+(?:\.5)?))?(?:\s*(unef|un[cfs]?|unr[cf]?))?$/i.exec(
      bare,
    );
  if (!parts) return refuse('thread.unreadable', EXPECTED, text);
  let size = (parts[1] ?? '').replace(' ', '-');
  // "10-32" without a sign is how the trade writes #10-32; whole inches in these tables are 1 only.
  if (/^\d+$/.test(size) && isNumbered(Number(size), Number(parts[2] ?? 99))) size = `#${size}`;
  if (/^0?\.\d+$/.test(size)) size = sizeOfDecimal(Number(size)) ?? size;
  const ofSize = THREADS.filter((t) => t.system === 'unified' && t.size === size);
  const series = parts[3]?.toUpperCase().replace('UNR', 'UN');
  const found =
    parts[2] !== undefined
      ? ofSize.find((t) => t.tpi === Number(parts[2]))
      : ofSize.find((t) => t.series === (series ?? 'UNC'));
  if (found) return good(found);
  const tpi = Number(parts[2] ?? (series === 'UNEF' ? UNEF_TPI.get(size) : undefined) ?? Number.NaN);
  const diameter = unifiedDiameterIn(size);
  if (diameter !== undefined && tpi >= 3 && tpi <= 80 && diameter > 3 / tpi) {
    return good(unlistedUnified(size, diameter, tpi, series));
  }
  return refuse('thread.unknown', EXPECTED, text);
}

/** Threads per inch of the extra-fine series. Source: ASME B1.1, from memory; their areas are computed. */
const UNEF_TPI: ReadonlyMap<string, number> = new Map([
  ['#12', 32],
  ['1/4', 32],
  ['5/16', 32],
  ['3/8', 32],
  ['7/16', 28],
  ['1/2', 28],
  ['9/16', 24],
  ['5/8', 24],
  ['3/4', 20],
  ['7/8', 20],
  ['1', 20],
]);

/** Whether a bare whole number is a numbered screw: #2 to #12 have 20 to 80 threads per inch, whole inches fewer. */
function isNumbered(size: number, tpi: number): boolean {
  return size >= 2 && size <= 12 && tpi >= 20;
}

function sizeOfDecimal(inches: number): string | undefined {
  return THREADS.find((t) => t.system === 'unified' && Math.abs(t.nominalMm / INCH_MM - inches) < 1e-6)?.size;
}

/** #n is 0.060 + 0.013 n inches (ASME B1.1). */
function unifiedDiameterIn(size: string): number | undefined {
  if (size.startsWith('#')) return 0.06 + 0.013 * Number(size.slice(1));
  const value = parseFraction(size);
  return value.ok && value.value.value > 0 && value.value.value <= 4 ? value.value.value : undefined;
}

function unlistedUnified(size: string, majorIn: number, tpi: number, series: string | undefined): Thread {
  return unified([
    `${size}-${tpi}`,
    String(majorIn),
    String(tpi),
    series ?? (UNEF_TPI.get(size) === tpi ? 'UNEF' : 'UN'),
    String(unifiedStressAreaIn2(majorIn, tpi)),
    'formula only',
    'not in the tables here; computed by the formula',
  ]);
}

/**
 * Coarse pitch in mm of a metric nominal diameter in mm, or undefined where ISO 261 has no such coarse size here.
 * M8 without a pitch means M8x1.25.
 */
export function defaultPitch(nominalMm: number): number | undefined {
  return THREADS.find((t) => t.system === 'metric' && t.series === 'coarse' && t.nominalMm === nominalMm)
    ?.pitchMm;
}

/** All threads of one size ("M10": coarse and fine; "5/16": UNC and UNF). */
export function threadsOfSize(size: string): readonly Thread[] {
  const wanted = size.trim().toUpperCase();
  return THREADS.filter((thread) => thread.size.toUpperCase() === wanted);
}
