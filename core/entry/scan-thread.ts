import { defaultPitch, threadsOfSize, THREADS } from '../fastening/index.ts';
import type { Sense } from './atom.ts';
import type { Drive, Thread } from './meaning.ts';
import {
  FRAC,
  INCH_MM,
  isFraction,
  NUM,
  numberOf,
  sticky,
  STOP,
  STOP_OR_TIMES,
  toMm,
  INCH_WORD,
} from './numbers.ts';

/** One stretch found: where it ends and what it means. Several follow each other in a thread designation. */
export interface Found {
  readonly end: number;
  readonly senses: readonly Sense[];
}

const X = String.raw`\s*[x×*]\s*`;
const METRIC = sticky(String.raw`m\s?(${NUM})`);
// A range ("x25-30") is no length; the class of a standard designation ("x25-8.8") may follow.
const timesNumber = (fraction: string): RegExp =>
  sticky(
    String.raw`${X}(${fraction}|${NUM})(?:\s*(mm|${INCH_WORD}|inch|"|″|”))?${STOP_OR_TIMES}(?!\s*-\s*\d+\b(?![.]))`,
  );
const TIMES_NUMBER = timesNumber(FRAC);
/** Behind an inch thread "x 1 1/4" is one and a quarter; "x 1 1/2 AF" is 1 long; behind M16x2 a fraction is something else. */
const TIMES_INCHES = timesNumber(
  String.raw`(?:\d+ (?=${FRAC}(?!["\s]*(?:in\s+)?(?:af|a\/f|spanner|wrench|hex|head)\b)))?${FRAC}`,
);
const TRAPEZOIDAL = sticky(String.raw`tr\s?(${NUM})${X}(${NUM})${STOP}`);
const SERIES = String.raw`(?:un[cfs]?|unef|unr[cf]?|unj[cf]?|bsw|bsf|ba|bsc)`;
const INCH = sticky(
  String.raw`((?:no\.?\s?|#)\d{1,2}|${FRAC}|\d+)["″”]?\s?-\s?(\d{1,2})(?:\s*-?\s*(${SERIES}))?(?:-[123][ab])?(?!\/)${STOP_OR_TIMES}`,
);
const INCH_SERIES = sticky(
  String.raw`((?:no\.?\s?|#)\d{1,2}|${FRAC}|\d+)["″”]?\s?(${SERIES})${STOP_OR_TIMES}`,
);
const PIPE_BEFORE = sticky(
  String.raw`(g|r|rc|rp|bspp?|bspt|nptf?)\s?(${FRAC}|[1-6]${STOP})["″”]?${STOP}(?:\s+bspp?${STOP})?`,
);
const PIPE_AFTER = sticky(String.raw`(${FRAC}|[1-6])["″”]?\s?(bspp?|bspt|nptf?)${STOP}`);

/** Threads per inch of pipe threads: ISO 228-1 / ISO 7-1, and ASME B1.20.1 for NPT. */
const BSP_TPI: Readonly<Record<string, number>> = {
  '1/16': 28,
  '1/8': 28,
  '1/4': 19,
  '3/8': 19,
  '1/2': 14,
  '5/8': 14,
  '3/4': 14,
};
const NPT_TPI: Readonly<Record<string, number>> = {
  '1/16': 27,
  '1/8': 27,
  '1/4': 18,
  '3/8': 18,
  '1/2': 14,
  '3/4': 14,
};

function inchThread(size: string, tpi: number | null, series: string, assumed: boolean): Thread {
  const whitworth = /^(bsw|bsf|ba|bsc)$/i.test(series);
  const name = series.toUpperCase();
  return {
    designation: `${size}${tpi !== null && !assumed ? `-${tpi}` : ''}${name ? ` ${name}` : ''}`,
    system: whitworth ? 'whitworth' : 'unified',
    pitchMm: tpi === null ? null : toMm(1 / tpi, 'in'),
    threadsPerInch: tpi,
    pitchAssumed: assumed,
  };
}

const inchSize = (typed: string): string =>
  typed
    .replace(/^no\.?\s?/i, '#')
    .replace(/(\d) (?=\d)/, '$1-')
    .replace(/(\d?)([½¼¾⅛⅜⅝⅞])/, (_, whole: string, glyph: string) => {
      const eighths = numberOf(glyph) * 8;
      const part = eighths % 4 === 0 ? '1/2' : eighths % 2 === 0 ? `${eighths / 2}/4` : `${eighths}/8`;
      return whole ? `${whole}-${part}` : part;
    });

/** Whether a number behind "M10x" is the pitch rather than the length: what the tables list, else what could be one. */
export function isPitch(diameterMm: number, value: number): boolean {
  if (threadsOfSize(`M${diameterMm}`).some((thread) => thread.pitchMm === value)) return true;
  return value >= 0.2 && value <= Math.min(6, diameterMm * 0.3);
}

function metric(text: string, at: number): readonly Found[] | null {
  METRIC.lastIndex = at;
  const head = METRIC.exec(text);
  if (!head) return null;
  let end = METRIC.lastIndex;
  let typed = head[1] ?? '';
  // "M8,5 bolts" is M8 and five bolts: a decimal comma only where such a size exists.
  if (typed.includes(',') && defaultPitch(numberOf(typed)) === undefined) {
    end -= typed.length - typed.indexOf(',');
    typed = typed.slice(0, typed.indexOf(','));
  }
  const diameterMm = numberOf(typed);
  if (!(diameterMm >= 1 && diameterMm <= 300)) return null;
  const numbers: { end: number; value: number; inch: boolean; unit: boolean }[] = [];
  for (let next = end; numbers.length < 2; next = TIMES_NUMBER.lastIndex) {
    TIMES_NUMBER.lastIndex = next;
    const found = TIMES_NUMBER.exec(text);
    if (!found) break;
    const inch = isFraction(found[1] ?? '') || /^(in|inch|"|″|”)$/.test(found[2] ?? '');
    numbers.push({
      end: TIMES_NUMBER.lastIndex,
      value: numberOf(found[1] ?? ''),
      inch,
      unit: found[2] !== undefined,
    });
  }
  const after = numbers.length > 0 ? '' : text.slice(end, end + 2);
  if (/^[\p{L}\p{N}]/u.test(after) && !/^[x×*](?:$|\W)/.test(after)) return null;
  return split(diameterMm, end, numbers);
}

function split(
  diameterMm: number,
  end: number,
  numbers: readonly { end: number; value: number; inch: boolean; unit: boolean }[],
): readonly Found[] {
  const [first, second] = numbers;
  let pitch: number | null = null;
  let threadEnd = end;
  let length = first;
  if (first && !first.inch && !first.unit && isPitch(diameterMm, first.value)) {
    pitch = first.value;
    threadEnd = first.end;
    length = second;
  } else if (first && second && !second.inch && isPitch(diameterMm, second.value)) {
    // Written the other way round, M10x30x1.5: both numbers are one stretch with two meanings.
    const thread = metricThread(diameterMm, second.value);
    return [{ end: second.end, senses: [{ s: 'thread', thread }, lengthSense(first)] }];
  }
  const found: Found[] = [
    { end: threadEnd, senses: [{ s: 'thread', thread: metricThread(diameterMm, pitch) }] },
  ];
  if (length && length.value > 0) found.push({ end: length.end, senses: [lengthSense(length)] });
  return found;
}

function lengthSense(number: { value: number; inch: boolean }): Sense {
  const unit = number.inch ? 'in' : 'mm';
  return { s: 'length', mm: toMm(number.value, unit), unit };
}

function metricThread(diameterMm: number, pitch: number | null): Thread {
  const coarse = defaultPitch(diameterMm) ?? null;
  return {
    designation: `M${diameterMm}`,
    system: 'metric',
    pitchMm: pitch ?? coarse,
    threadsPerInch: null,
    pitchAssumed: pitch === null && coarse !== null,
  };
}

/** A length behind an inch thread is in inches, unless it says mm; a bare number over 12 is neither, so it is left. */
function withLength(text: string, end: number, thread: Thread): readonly Found[] {
  const found: Found[] = [{ end, senses: [{ s: 'thread', thread }] }];
  TIMES_INCHES.lastIndex = end;
  const length = TIMES_INCHES.exec(text);
  if (!length) return found;
  const value = numberOf(length[1] ?? '');
  const unit = length[2] === 'mm' ? 'mm' : 'in';
  if (!(value > 0) || (length[2] === undefined && value > 12)) return found;
  return [...found, { end: TIMES_INCHES.lastIndex, senses: [{ s: 'length', mm: toMm(value, unit), unit }] }];
}

const NUMBERED = new Set(
  THREADS.filter((t) => t.size.startsWith('#')).map((t) => `${t.size}-${t.tpi ?? ''}`),
);

function inch(text: string, at: number): readonly Found[] | null {
  INCH.lastIndex = at;
  const full = INCH.exec(text);
  if (full) {
    const end = INCH.lastIndex;
    const tpi = Number(full[2]);
    let size = inchSize(full[1] ?? '');
    const series = full[3] ?? '';
    if (/^\d+$/.test(size)) {
      if (NUMBERED.has(`#${size}-${tpi}`)) size = `#${size}`;
      else if (!series && !full[0].includes('"')) return null;
    }
    if (tpi >= 3 && tpi <= 80) return withLength(text, end, inchThread(size, tpi, series, false));
  }
  INCH_SERIES.lastIndex = at;
  const named = INCH_SERIES.exec(text);
  if (!named) return null;
  const end = INCH_SERIES.lastIndex;
  const size = inchSize(named[1] ?? '');
  const series = named[2] ?? '';
  const listed = threadsOfSize(size).find((thread) => thread.series.toUpperCase() === series.toUpperCase());
  return withLength(text, end, inchThread(size, listed?.tpi ?? null, series, listed?.tpi !== undefined));
}

function pipe(text: string, at: number): readonly Found[] | null {
  PIPE_BEFORE.lastIndex = at;
  PIPE_AFTER.lastIndex = at;
  const before = PIPE_BEFORE.exec(text);
  const after = before ? null : PIPE_AFTER.exec(text);
  const found = before ?? after;
  if (!found) return null;
  const name = ((before ? found[1] : found[2]) ?? '')
    .toUpperCase()
    .replace(/^RC$/, 'Rc')
    .replace(/^RP$/, 'Rp');
  const size = inchSize((before ? found[2] : found[1]) ?? '');
  const american = name.startsWith('NPT');
  const tpi = (american ? NPT_TPI[size] : BSP_TPI[size]) ?? (american ? 11.5 : 11);
  const thread: Thread = {
    designation: /^(NPT|BSP)/.test(name) ? `${size} ${name}` : `${name} ${size}`,
    system: 'pipe',
    pitchMm: Math.round((INCH_MM / tpi) * 1000) / 1000,
    threadsPerInch: tpi,
    pitchAssumed: false,
  };
  return [{ end: before ? PIPE_BEFORE.lastIndex : PIPE_AFTER.lastIndex, senses: [{ s: 'thread', thread }] }];
}

function trapezoidal(text: string, at: number): readonly Found[] | null {
  TRAPEZOIDAL.lastIndex = at;
  const found = TRAPEZOIDAL.exec(text);
  if (!found) return null;
  const pitchMm = numberOf(found[2] ?? '');
  const designation = `Tr ${numberOf(found[1] ?? '')}x${pitchMm}`;
  const thread: Thread = {
    designation,
    system: 'trapezoidal',
    pitchMm,
    threadsPerInch: null,
    pitchAssumed: false,
  };
  return [{ end: TRAPEZOIDAL.lastIndex, senses: [{ s: 'thread', thread }] }];
}

/** A thread designation at this place, with its length when one follows as "x30"; null when there is none. */
export function scanThread(text: string, at: number): readonly Found[] | null {
  const first = text.charAt(at).toLowerCase();
  if (first === 'm') return metric(text, at);
  if (first === 't') return trapezoidal(text, at);
  if (/[grbn]/.test(first)) return pipe(text, at) ?? (first === 'n' ? inch(text, at) : null);
  return /[\d#½¼¾⅛⅜⅝⅞]/.test(first) ? (pipe(text, at) ?? inch(text, at)) : null;
}

const NUMBERED_DRIVE = sticky(String.raw`(tx?|e|ph|pz)\s?(\d{1,3})${STOP}(?!\s*[-/]\s*\d)`);

/** "T30", "E10", "PH2", "PZ 2": a drive that is named by a number instead of a width. */
export function scanDrive(text: string, at: number): Found | null {
  NUMBERED_DRIVE.lastIndex = at;
  const found = NUMBERED_DRIVE.exec(text);
  if (!found) return null;
  const letters = (found[1] ?? '').toUpperCase();
  const number = Number(found[2]);
  const drive = numberedDrive(letters === 'TX' ? 'T' : letters, number);
  return drive ? { end: NUMBERED_DRIVE.lastIndex, senses: [{ s: 'drive', drive }] } : null;
}

function numberedDrive(letters: string, number: number): Drive | null {
  const size = `${letters}${number}`;
  if (letters === 'T')
    return number >= 1 && number <= 100 ? { style: 'hexalobular', size, acrossFlatsMm: null } : null;
  if (letters === 'E')
    return number >= 4 && number <= 44 ? { style: 'hexalobular external', size, acrossFlatsMm: null } : null;
  if (number > 5) return null;
  return { style: letters === 'PH' ? 'cross PH' : 'cross PZ', size, acrossFlatsMm: null };
}
