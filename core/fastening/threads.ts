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
  const bare = text.trim().replace(/\s+/g, ' ');
  return /^m\s*\d/i.test(bare) ? findMetric(bare) : findUnified(bare);
}

function findMetric(text: string): Outcome<Thread> {
  const parts =
    /^m\s*([\d.,]+)(?:\s*[x×*-]\s*([\d.,]+))?(?:\s*[x×*-]\s*[\d.,]+)?\s*(?:coarse|fine|lh|rh)?$/i.exec(text);
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
    /^(#?\d+(?:[ -]\d+\/\d+|\/\d+)?|0?\.\d+)(?:\s*-\s*(\d+))?(?:\s*(un[cfs]?|unef|unr[cf]?))?(?:\s*-\s*[12]a)?$/i.exec(
      bare,
    );
  if (!parts) return refuse('thread.unreadable', EXPECTED, text);
  let size = (parts[1] ?? '').replace(' ', '-');
  // "10-32" without a sign is how the trade writes #10-32; whole inches in these tables are 1 only.
  if (/^\d+$/.test(size) && Number(size) >= 2 && Number(size) <= 12) size = `#${size}`;
  if (/^0?\.\d+$/.test(size)) size = sizeOfDecimal(Number(size)) ?? size;
  const ofSize = THREADS.filter((t) => t.system === 'unified' && t.size === size);
  const series = parts[3]?.toUpperCase().replace('UNR', 'UN');
  const found =
    parts[2] !== undefined
      ? ofSize.find((t) => t.tpi === Number(parts[2]))
      : ofSize.find((t) => t.series === (series ?? 'UNC'));
  if (found) return good(found);
  const tpi = Number(parts[2] ?? Number.NaN);
  const diameter = unifiedDiameterIn(size);
  if (diameter !== undefined && tpi >= 3 && tpi <= 80 && diameter > 3 / tpi) {
    return good(unlistedUnified(size, diameter, tpi));
  }
  return refuse('thread.unknown', EXPECTED, text);
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

function unlistedUnified(size: string, majorIn: number, tpi: number): Thread {
  return unified([
    `${size}-${tpi}`,
    String(majorIn),
    String(tpi),
    'UN',
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
