import { findThread, withinTool } from '../../fastening/index.ts';
import type { Row } from '../../model/tables.ts';
import type { Measured } from './measure.ts';

type Spec = Row<'spec'>;

/** What a hole takes, read once: a thread by its size and pitch, a head by its width or number. */
export interface Wanted {
  readonly spec: Spec;
  readonly family: string;
  readonly size: string | null;
  readonly nominalMm: number | null;
  readonly pitchMm: number | null;
  /** The size was read or written, and does not only follow from the head. */
  readonly sizeSure: boolean;
  /** The pitch was read or written, and is not only the usual one. */
  readonly pitchSure: boolean;
  readonly headMm: number | null;
  readonly headNumber: string | null;
}

/** Nuts, washers and spacers lie in a tray beside what goes into a hole, and are never taken for it. */
const FAMILIES: ReadonlySet<Spec['kind']> = new Set(['nut', 'washer', 'spacer']);
const family = (kind: Spec['kind'] | null): string => (kind !== null && FAMILIES.has(kind) ? kind : 'hole');

const cache = new Map<string, ReturnType<typeof findThread>>();
function threadNamed(text: string): ReturnType<typeof findThread> {
  const known = cache.get(text);
  if (known) return known;
  const found = findThread(text);
  // Thread names of real machines are few; a hostile job file must not fill the memory.
  if (cache.size < 5_000) cache.set(text, found);
  return found;
}

/** Reads a specification for matching. */
export function wantedOf(spec: Spec): Wanted {
  const found = spec.thread === null ? null : threadNamed(spec.thread);
  const thread = found?.ok ? found.value : null;
  const written = thread !== null && /[x×]|\d-\d/.test((spec.thread ?? '').replace(/^#?\d+-\d+\/\d+/, ''));
  const number = /^(T|E|PH|PZ|SL)\s*-?(\d{1,3})$/i.exec(spec.driveTyped.trim());
  return {
    spec,
    family: family(spec.kind),
    size: thread?.size ?? spec.thread?.replace(/\s+/g, '').toUpperCase() ?? null,
    nominalMm: thread?.nominalMm ?? null,
    pitchMm: spec.pitchUm !== null ? spec.pitchUm / 1000 : written ? (thread?.pitchMm ?? null) : null,
    sizeSure: spec.threadKnown || spec.pitchUm !== null,
    pitchSure: spec.threadKnown,
    headMm: spec.driveSizeUm === null ? null : spec.driveSizeUm / 1000,
    headNumber: number ? `${(number[1] ?? '').toUpperCase()}${number[2]}` : null,
  };
}

/** How well one goes with the other: `cost` counts while it fits, `off` says how far from fitting it is. */
export interface Fit {
  readonly fits: boolean;
  /** 0 = as measured as recorded; whole number, at most about 1 000. */
  readonly cost: number;
  /** 0 while it fits; else a sum of what is too much, in mm as far as it is lengths. */
  readonly off: number;
  /** What was compared, with deviations. */
  readonly says: readonly string[];
  /** What of the size was never written down there, so that a fit says little; null = enough was. */
  readonly doubt: string | null;
}

interface Part {
  readonly cost: number;
  readonly off: number;
  readonly says: string;
}
const part = (cost: number, off = 0, says = ''): Part => ({ cost: Math.round(cost), off, says });

/** What is not known fits, and counts for less than anything that was measured and agrees. */
const UNKNOWN = 150;
const UNMEASURED = 60;

const signed = (value: number): string =>
  `${value < -0.005 ? '−' : value > 0.005 ? '+' : '±'}${Math.abs(value)
    .toFixed(2)
    .replace(/\.?0+$/, '')} mm`;

function lengthPart(one: Measured, { spec }: Wanted): Part {
  if (one.lengthMm === null) return part(UNMEASURED, 0, 'length not measured');
  if (spec.lengthUm === null) return part(UNKNOWN, 0, 'length not recorded');
  const deviation = one.lengthMm - spec.lengthUm / 1000;
  const over = Math.abs(deviation) - one.toleranceMm;
  const says = `length ${signed(deviation)}`;
  if (over > 1e-6) return part(0, over, says);
  return part(one.toleranceMm === 0 ? 0 : (100 * Math.abs(deviation)) / one.toleranceMm, 0, says);
}

/** Two pitches that a gauge takes for the same, mm. */
const SAME_PITCH = 0.006;

function threadPart(one: Measured, wanted: Wanted): Part {
  if (one.threads === null) return part(UNMEASURED, 0, 'thread not measured');
  if (wanted.size === null) return part(UNKNOWN, 0, 'thread not recorded');
  let best: Part | null = null;
  for (const fit of one.threads) {
    if (fit.size.toUpperCase() !== wanted.size.toUpperCase()) continue;
    const both = fit.pitchMm !== null && wanted.pitchMm !== null;
    const differs = both && Math.abs((fit.pitchMm ?? 0) - (wanted.pitchMm ?? 0)) > SAME_PITCH;
    if (differs && wanted.pitchSure) {
      best ??= part(0, 3, `pitch ${fit.pitchMm?.toFixed(2)} mm, wanted ${wanted.pitchMm?.toFixed(2)} mm`);
      continue;
    }
    const guessed = wanted.sizeSure ? '' : ', as the head suggests';
    const assumed = differs ? ', another pitch than the usual one' : '';
    const found = part(
      fit.cost + (wanted.sizeSure ? 0 : 40) + (differs ? 80 : 0),
      0,
      `${fit.says || `thread ${wanted.spec.thread}`}${guessed}${assumed}`,
    );
    if (best === null || best.off > 0 || best.cost > found.cost) best = found;
  }
  if (best) return best;
  // A size that only follows from the head may be another one; then the head must be what agrees.
  if (!wanted.sizeSure && one.head !== null && wanted.headMm !== null)
    return part(120, 0, `${wanted.spec.thread}? was only guessed from the head`);
  const apart =
    one.diameterMm !== null && wanted.nominalMm !== null ? Math.abs(one.diameterMm - wanted.nominalMm) : 2;
  return part(0, 2 + 5 * apart, `thread is not ${wanted.spec.thread}`);
}

function headPart(one: Measured, wanted: Wanted): Part {
  const { head } = one;
  if (head === null) return part(UNMEASURED / 2, 0, 'head not measured');
  const { headMm, headNumber, spec } = wanted;
  if (headMm === null && headNumber === null) return part(UNMEASURED, 0, 'head not recorded');
  const want = spec.driveTyped || `${headMm ?? ''} mm`;
  const differs = part(0, 5, `head ${head.typed}, wanted ${want}`);
  if (head.number !== null || headNumber !== null)
    return head.number !== null && head.number === headNumber ? part(0, 0, `head ${head.typed}`) : differs;
  if (head.style !== null && spec.drive?.startsWith('hex') && spec.drive !== head.style) return differs;
  const [measured, tool] = [head.mm ?? 0, headMm ?? 0];
  if (!withinTool(measured, tool)) return part(0, Math.abs(measured - tool), differs.says);
  return part(Math.abs(measured - tool) * 100, 0, `head ${head.typed}`);
}

/** Nuts and washers have no length; of what goes into a hole, size and length are what tells it apart. */
function doubtOf(one: Measured, { family: kind, spec, size, sizeSure }: Wanted): string | null {
  if (kind !== 'hole') return null;
  const other = one.threads?.every((fit) => fit.size.toUpperCase() !== size?.toUpperCase()) ?? false;
  if (size === null) return 'thread not recorded there';
  if (!sizeSure && other) return 'thread there only guessed from the head';
  return spec.lengthUm === null ? 'length not recorded there' : null;
}

/**
 * Measures one row against what a hole takes. A length outside its tolerance never fits, nor does another pitch, size or
 * head where both are known. Cost: what deviates, and what is not known.
 */
export function fitOf(one: Measured, wanted: Wanted): Fit {
  if (family(one.kind) !== wanted.family)
    return { fits: false, cost: 0, off: 1_000, says: [`a ${wanted.spec.kind} is wanted`], doubt: null };
  const parts = [threadPart(one, wanted), lengthPart(one, wanted), headPart(one, wanted)];
  const off = parts.reduce((sum, { off: by }) => sum + by, 0);
  return {
    fits: off === 0,
    cost: parts.reduce((sum, { cost }) => sum + cost, 0),
    off,
    says: parts.map(({ says }) => says).filter((word) => word !== ''),
    doubt: doubtOf(one, wanted),
  };
}
