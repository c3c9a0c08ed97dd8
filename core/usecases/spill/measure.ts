import type { TrayRow } from '../../contract/tray.ts';
import { findThread, identifyThread, parseDecimal, parseLength } from '../../fastening/index.ts';
import { ok, type Result, refuse } from '../../model/result.ts';
import type { Row } from '../../model/tables.ts';
import { kindOf } from '../log/spec.ts';

export type Unit = 'mm' | 'in';

/** A thread that a measured one may be. */
interface ThreadFit {
  /** Without pitch: "M8", "5/16"; pipe and other threads as written. */
  readonly size: string;
  /** mm; null where no pitch was measured or written. */
  readonly pitchMm: number | null;
  /** How badly it fits: 0 inside the band of a new thread, 100 at the edge of what is taken. */
  readonly cost: number;
  readonly says: string;
}

/** A head as measured: a width in mm, or a number such as T30. */
interface Head {
  readonly mm: number | null;
  readonly number: string | null;
  readonly style: 'hex external' | 'hex socket' | null;
  readonly typed: string;
}

/** One row of a tray, read. What was not measured is null, never nothing. */
export interface Measured {
  readonly row: number;
  readonly count: number;
  readonly kind: Row<'spec'>['kind'] | null;
  readonly threads: readonly ThreadFit[] | null;
  readonly diameterMm: number | null;
  readonly lengthMm: number | null;
  readonly toleranceMm: number;
  readonly head: Head | null;
  readonly says: string;
}

/** How far a length measured with a caliper may be off when nobody says: common practice, no source. */
const TOLERANCE_MM = 1;
/** How far outside the band of a new thread a used one may measure (wear, stretch, plating); common practice, no source. */
export const OUTSIDE_MM = 0.2;
/** How far a measured pitch may be off, as a share of it: 1.25 mm and 18 per inch are 12 % apart. Common practice, no source. */
const PITCH_OFF = 0.05;
const MAX_COUNT = 2_000;
/** A number that is a diameter and no designation. */
const BARE = /^[\d.,]+\s*(mm|in|")?$/;
const PIPE = /^(G|R|Rc|Rp|NPT|NPTF|BSP[PT]?|BSW|BSF|BA|PG)\s*[\d/\s-]+$/i;

const clean = (text: string): string => text.trim().replace(/\s+/g, ' ');

function countOf(text: string): Result<number> {
  const typed = clean(text).replace(/\s*(x|×|pcs?|pieces?)$/i, '');
  const count = /^\d{1,6}$/.test(typed) ? Number(typed) : 0;
  return count >= 1 && count <= MAX_COUNT
    ? ok(count)
    : refuse('input', `Expected a whole number from 1 to ${MAX_COUNT} as its count, got “${text.trim()}”.`);
}

function lengthOf(text: string, unit: Unit, what: string): Result<number | null> {
  if (clean(text) === '') return ok(null);
  const read = parseLength(clean(text).replace(/^(\+-|\+\/-|±)\s*/, ''), unit);
  return read.ok ? ok(read.value.lengthMm) : refuse('input', `${what}: ${read.sentence}`);
}

function pitchOf(text: string, unit: Unit): Result<{ pitchMm?: number; tpi?: number }> {
  const typed = clean(text);
  if (typed === '') return ok({});
  const perInch = /^([\d.,]+)\s*(tpi|per inch|\/\s*in)$/i.exec(typed);
  const number = parseDecimal(perInch?.[1] ?? typed.replace(/\s*mm$/i, ''));
  if (!number.ok || number.value <= 0)
    return refuse('input', `Expected a pitch such as 1.25 mm or 18 tpi, got “${typed}”.`);
  // In a table in inches a bare 18 is threads per inch: no pitch is 18 inches.
  const inches = perInch !== null || (unit === 'in' && !/mm$/i.test(typed));
  return ok(inches ? { tpi: number.value } : { pitchMm: number.value });
}

interface ReadThread {
  readonly threads: readonly ThreadFit[] | null;
  readonly diameterMm: number | null;
  /** "M8x25" says a length too; mm. */
  readonly lengthMm: number | null;
}
const NO_THREAD: ReadThread = { threads: null, diameterMm: null, lengthMm: null };

function measuredThread(diameterMm: number, pitch: { pitchMm?: number; tpi?: number }): Result<ReadThread> {
  const found = identifyThread({ diameterMm, ...pitch });
  if (!found.ok) return refuse('input', found.sentence);
  const known = pitch.pitchMm !== undefined || pitch.tpi !== undefined;
  const fits = new Map<string, ThreadFit>();
  for (const { thread, outsideBandMm, pitchDeviationMm, designation } of found.value.candidates) {
    if (outsideBandMm > OUTSIDE_MM) continue;
    const key = known ? designation : thread.size;
    const off = Math.abs(pitchDeviationMm ?? 0) / thread.pitchMm;
    if (off > PITCH_OFF) continue;
    const cost = Math.round((100 * outsideBandMm) / OUTSIDE_MM + 1000 * off);
    const says = `${diameterMm.toFixed(2)} mm ${outsideBandMm < 0.005 ? `is ${thread.size}` : `is ${outsideBandMm.toFixed(2)} mm outside a new ${thread.size}`}`;
    if ((fits.get(key)?.cost ?? Infinity) > cost)
      fits.set(key, { size: thread.size, pitchMm: known ? thread.pitchMm : null, cost, says });
  }
  return ok({ threads: [...fits.values()], diameterMm, lengthMm: null });
}

function writtenThread(typed: string): ReadThread | null {
  const metric = /^m\s*([\d.,]+)\s*[x×*]\s*([\d.,]+)(?:\s*[x×*]\s*([\d.,]+))?$/i.exec(typed);
  const second = Number((metric?.[2] ?? '').replace(',', '.'));
  const nominal = Number((metric?.[1] ?? '').replace(',', '.'));
  // No pitch is more than a third of its diameter: "M8x25" is 25 long.
  const isLength = metric !== null && metric[3] === undefined && second > nominal / 3;
  const found = findThread(isLength ? `M${metric?.[1] ?? ''}` : typed);
  if (!found.ok)
    return PIPE.test(typed)
      ? {
          ...NO_THREAD,
          threads: [{ size: typed.replace(/\s+/g, '').toUpperCase(), pitchMm: null, cost: 0, says: '' }],
        }
      : null;
  const { size, pitchMm, nominalMm } = found.value;
  const saysPitch = !isLength && /[x×*]\s*[\d.,]+|-\s*\d+|un[cf]/i.test(typed.replace(/^#?\d+-\d+\/\d+/, ''));
  const third = Number((metric?.[3] ?? '').replace(',', '.'));
  return {
    threads: [{ size, pitchMm: saysPitch ? pitchMm : null, cost: 0, says: '' }],
    diameterMm: nominalMm,
    lengthMm: isLength ? second : third > 0 ? third : null,
  };
}

function threadOf(row: TrayRow, unit: Unit): Result<ReadThread> {
  const thread = clean(row.thread);
  const bare = BARE.test(thread);
  const pitch = pitchOf(row.pitch, unit);
  if (!pitch.ok) return pitch;
  const diameter = lengthOf(row.diameter !== '' ? row.diameter : bare ? thread : '', unit, 'Diameter');
  if (!diameter.ok) return diameter;
  if (diameter.value !== null && (thread === '' || bare)) return measuredThread(diameter.value, pitch.value);
  if (thread === '')
    return clean(row.pitch) === ''
      ? ok(NO_THREAD)
      : refuse('input', `Expected a diameter beside the pitch, got the pitch “${row.pitch.trim()}” alone.`);
  const written = writtenThread(thread);
  if (!written)
    return refuse(
      'input',
      `Expected a thread such as M8, M10x1.25 or 5/16-18, or a diameter such as 7.9, got “${thread}”.`,
    );
  const { pitchMm, tpi } = pitch.value;
  const measured = pitchMm ?? (tpi === undefined ? null : 25.4 / tpi);
  const [first] = written.threads ?? [];
  if (!first || measured === null) return ok(written);
  return ok({ ...written, threads: [{ ...first, pitchMm: measured }] });
}

function headOf(text: string, unit: Unit): Result<Head | null> {
  const typed = clean(text);
  if (typed === '') return ok(null);
  const number = /^(?:hexalobular\s*)?(T|TX|E|PH|PZ|SL)\s*-?\s*(\d{1,3})$/i.exec(typed);
  if (number)
    return ok({
      mm: null,
      number: `${(number[1] ?? '').toUpperCase().replace('TX', 'T')}${number[2]}`,
      style: null,
      typed,
    });
  const style = /key|socket|inside|inner/i.test(typed)
    ? ('hex socket' as const)
    : /hex|spanner|wrench|flats|\baf\b|outside/i.test(typed)
      ? ('hex external' as const)
      : null;
  const size = /[\d.,]+(?:\s*-?\s*\d+)?(?:\/\d+)?\s*(?:mm|in|")?/.exec(typed)?.[0] ?? '';
  const read = parseLength(clean(size), unit);
  if (!read.ok || read.value.lengthMm > 200)
    return refuse('input', `Expected a head or key size such as 13, 1/2 in or T30, got “${typed}”.`);
  return ok({ mm: read.value.lengthMm, number: null, style, typed });
}

/** The kind as the tables know it; a word that they do not know says nothing. */
function kindSaid(text: string): Measured['kind'] {
  const { kind } = kindOf(clean(text).toLowerCase().replace(/s$/, ''));
  return clean(text) === '' || kind === 'other' || kind === 'unknown' ? null : kind;
}

const mm = (value: number): string => String(Math.round(value * 100) / 100);

/**
 * Reads one row. Lengths in mm, or in inches where `unit` says so and none is written. Refused in words where a value
 * cannot be meant, and where nothing at all was measured.
 */
export function readRow(row: TrayRow, unit: Unit = 'mm'): Result<Measured> {
  const count = countOf(row.count);
  const thread = threadOf(row, unit);
  const length = lengthOf(row.length, unit, 'Length');
  const tolerance = lengthOf(row.tolerance, unit, 'Tolerance');
  const head = headOf(row.head, unit);
  for (const one of [count, thread, length, tolerance, head]) if (!one.ok) return one;
  if (!(count.ok && thread.ok && length.ok && tolerance.ok && head.ok)) throw new Error('Unreachable.');
  const kind = kindSaid(row.kind);
  const { threads, diameterMm } = thread.value;
  const lengthMm = length.value ?? thread.value.lengthMm;
  if (threads === null && lengthMm === null && head.value === null && kind === null)
    return refuse('input', 'Expected at least a thread, a diameter, a length or a head, got none.');
  const toleranceMm = tolerance.value ?? TOLERANCE_MM;
  const bare = clean(row.thread) === '' || BARE.test(clean(row.thread));
  const written = !bare ? clean(row.thread) : diameterMm === null ? '' : `⌀ ${mm(diameterMm)} mm`;
  const says = [
    kind ?? '',
    [written, clean(row.pitch) === '' ? '' : `pitch ${clean(row.pitch)}`].filter(Boolean).join(', '),
    lengthMm === null ? '' : `${mm(lengthMm)} ± ${mm(toleranceMm)} mm`,
    head.value === null ? '' : `head ${head.value.typed}`,
  ]
    .filter((word) => word !== '')
    .join(', ');
  const { value: many } = count;
  return ok({
    row: row.row,
    count: many,
    kind,
    threads,
    diameterMm,
    lengthMm,
    toleranceMm,
    head: head.value,
    says,
  });
}
