import {
  threadsForAcrossFlats,
  threadsForHexalobular,
  threadsForHexKey,
  THREADS,
  type DriveMatch,
} from '../fastening/index.ts';
import type { Drive, HeadForm, Thread } from './meaning.ts';

const MEMORY = new Map<string, readonly DriveMatch[]>();

/** Every thread the tables know for a tool size, most standards first. Kept, because a line is read at each key. */
function matches(drive: Drive): readonly DriveMatch[] {
  if (drive.size === null) return [];
  const key = `${drive.style}|${drive.acrossFlatsMm ?? drive.size}`;
  let found = MEMORY.get(key);
  if (!found) {
    found = lookUp(drive);
    if (MEMORY.size > 500) MEMORY.clear();
    MEMORY.set(key, found);
  }
  return found;
}

function lookUp(drive: Drive): readonly DriveMatch[] {
  if (drive.style === 'hexalobular') return threadsForHexalobular(drive.size ?? '');
  if (drive.acrossFlatsMm === null) return [];
  if (drive.style === 'hex external') return threadsForAcrossFlats(drive.acrossFlatsMm);
  return drive.style === 'hex socket' ? threadsForHexKey(drive.acrossFlatsMm) : [];
}

/** The standard that most parts of this form follow; its thread is the first to be confirmed. Common practice, no source. */
const USUAL: Readonly<Record<string, RegExp>> = {
  'hex external': /^ISO 4014|^ASME B18\.2\.1/,
  'hex socket': /^ISO 4762/,
  'socket cap': /^ISO 4762/,
  hexalobular: /^ISO 14579/,
  button: /^ISO 7380/,
  countersunk: /^ISO 10642/,
  headless: /^ISO 4026/,
};

/**
 * Thread sizes that a drive can belong to, commonest first ("M8", "5/16"); all that the tables know, never one picked.
 * For a flange head only the flange tables count, as the same thread has another width there.
 */
export function threadsThatFit(drive: Drive, head: HeadForm | null): readonly string[] {
  const all = matches(drive);
  const flange =
    head === 'flange' ? all.filter((match) => match.rows.some((row) => /flange/.test(row.family))) : [];
  const usual = USUAL[head ?? drive.style] ?? USUAL[drive.style];
  const rank = (match: DriveMatch): number =>
    usual !== undefined &&
    Math.abs(match.deviationMm) <= 0.05 &&
    match.rows.some((row) => usual.test(row.standard))
      ? 0
      : 1;
  const inch = /in$/.test(drive.size ?? '');
  const foreign = (match: DriveMatch): number => (match.size.startsWith('M') === inch ? 1 : 0);
  // The sort is stable, so the order of the tables stays within a rank.
  return [...(flange.length > 0 ? flange : all)]
    .sort((a, b) => foreign(a) - foreign(b) || rank(a) - rank(b))
    .map((match) => match.size);
}

/** Whether a thread is among those that fit; null when the tables know nothing about this drive. */
export function threadFits(thread: Thread, drive: Drive, head: HeadForm | null): boolean | null {
  const sizes = threadsThatFit(drive, head);
  if (sizes.length === 0) return null;
  return sizes.includes(sizeOf(thread));
}

/** Whether a width in mm could be the head of this thread, so that "M8 13 mm" has two readings. */
export function couldBeHead(thread: Thread | null, mm: number): boolean {
  const sizes = threadsForAcrossFlats(mm).map((match) => match.size);
  return thread === null ? sizes.length > 0 : sizes.includes(sizeOf(thread));
}

/** Whether a width in mm is a hexagon key of this thread. */
export function couldBeKey(thread: Thread, mm: number): boolean {
  return threadsForHexKey(mm).some(
    (match) => match.size === sizeOf(thread) && Math.abs(match.deviationMm) <= 0.05,
  );
}

const METRIC_SIZES = [...new Set(THREADS.filter((one) => one.system === 'metric').map((one) => one.size))];
const LARGEST = Math.max(...METRIC_SIZES.map((size) => Number(size.slice(1))));

/** "M80", "M88" for M8: a key that slipped or bounced; else the sizes within an eighth of what was typed. */
function sizesNear(size: string): readonly string[] {
  const slipped = METRIC_SIZES.filter((one) => size === `${one}0` || size === `${one}${one.slice(-1)}`);
  if (slipped.length > 0) return slipped;
  const typed = Number(size.slice(1));
  return METRIC_SIZES.filter((one) => Math.abs(Number(one.slice(1)) - typed) <= typed / 8);
}

/**
 * A metric thread that no table has, so that it may have been mistyped: which sizes come near, where the size is the
 * doubt; null: nothing to doubt. Larger than any in the tables, with its pitch said, it is taken at its word.
 */
export function threadDoubt({ system, designation, pitchMm }: Thread): { near: readonly string[] } | null {
  if (system !== 'metric') return null;
  const listed = THREADS.filter((one) => one.size === designation);
  if (listed.length > 0)
    return pitchMm === null || listed.some((one) => one.pitchMm === pitchMm) ? null : { near: [] };
  if (pitchMm !== null && Number(designation.slice(1)) > LARGEST) return null;
  return { near: sizesNear(designation) };
}

/** "M10", "5/16", "#10": the size without pitch and series. */
function sizeOf(thread: Thread): string {
  return /^(M[\d.]+|#?\d+(?:-\d+\/\d+|\/\d+)?)/.exec(thread.designation)?.[1] ?? thread.designation;
}
