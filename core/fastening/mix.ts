import { FREEZE_POINTS } from './data/freeze-points.ts';
import { good, refuse, showNumber, type Basis, type Outcome } from './outcome.ts';
import { cell, readRows } from './table.ts';

export type FreezeFamily = 'inhibited' | 'pure';

const ADDITIVE = 'Volumes are taken as additive; glycol and water shrink by about 1.2 % near half and half.';
const STRONGEST =
  'The freezing point is not a safe limit of use, and above about 60 volume % it rises again.';

/** Volumes in any one unit; strengths as fractions 0…1 by volume. */
export interface MixInput {
  readonly capacity: number;
  /** What stayed inside after draining. */
  readonly remaining: number;
  readonly remainingStrength: number;
  readonly targetStrength: number;
  /** Strength of what is poured in: 1 for concentrate, 0.5 for a half-and-half premix. */
  readonly concentrateStrength?: number | undefined;
  /** Unit of the volumes, for the sentence only. */
  readonly unit?: string | undefined;
}

export interface Mix extends Basis {
  readonly feasible: boolean;
  /** To add, in the unit given; negative where it cannot be done, as computed. */
  readonly concentrate: number;
  readonly water: number;
  /** What is reached at best when filled now, as a fraction. */
  readonly bestStrength: number;
  /** Where it cannot be done: how much must come out first, at least. */
  readonly drainFirst?: number;
  readonly sentence: string;
}

function checkMix(input: MixInput, strength: number): Outcome<never> | undefined {
  const { capacity, remaining, remainingStrength, targetStrength } = input;
  if (!(capacity > 0 && capacity <= 1e6)) return refuse('mix.capacity', 'a capacity above 0', capacity);
  if (!(remaining >= 0 && remaining <= capacity)) {
    return refuse('mix.remaining', `what stayed, from 0 to the capacity ${showNumber(capacity)}`, remaining);
  }
  for (const [name, value] of [
    ['strength of what stayed', remainingStrength],
    ['target strength', targetStrength],
  ] as const) {
    if (!(value >= 0 && value <= 1))
      return refuse('mix.strength', `a ${name} from 0 to 100 %`, `${showNumber(value * 100)} %`);
  }
  if (!(strength > 0 && strength <= 1)) {
    return refuse('mix.strength', 'a concentrate from above 0 to 100 %', `${showNumber(strength * 100)} %`);
  }
  return undefined;
}

/**
 * Concentrate and water to reach a target strength from what stayed, capacity and target:
 * C = (Ct·V − Cr·R)/Cc, water = V − R − C; feasible when both are 0 or more. Otherwise says how much to drain first.
 */
export function mix(input: MixInput): Outcome<Mix> {
  const cc = input.concentrateStrength ?? 1;
  const refused = checkMix(input, cc);
  if (refused) return refused;
  const { capacity: v, remaining: r, remainingStrength: cr, targetStrength: ct } = input;
  const concentrate = (ct * v - cr * r) / cc;
  const water = v - r - concentrate;
  const feasible = concentrate >= -1e-9 && water >= -1e-9;
  const strongest = (cr * r + cc * (v - r)) / v;
  const weakest = (cr * r) / v;
  const bestStrength = feasible ? ct : water < 0 ? strongest : weakest;
  const drainFirst = feasible ? undefined : drainNeeded(input, cc);
  return good({
    feasible,
    concentrate,
    water,
    bestStrength,
    ...(drainFirst === undefined ? {} : { drainFirst }),
    sentence: sayMix(input, cc, { feasible, concentrate, water, bestStrength, drainFirst }),
    formula: 'C = (Ct·V − Cr·R) / Cc, water = V − R − C',
    inputs: [
      `V ${showNumber(v)} ${input.unit ?? 'l'}`,
      `R ${showNumber(r)} ${input.unit ?? 'l'} at ${percent(cr)}`,
      `target ${percent(ct)}`,
      `poured in ${percent(cc)}`,
    ],
    source: 'balance of volumes',
    limits: [ADDITIVE, STRONGEST],
    cautions: [
      "The maker's fluid and strength come first; two kinds of additive may not be mixed.",
      'Open a hot system only when it has cooled down and lost its pressure.',
    ],
  });
}

/** Least to drain from what stayed so that the target can be reached; undefined where no draining helps. */
function drainNeeded(input: MixInput, cc: number): number | undefined {
  const { capacity: v, remaining: r, remainingStrength: cr, targetStrength: ct } = input;
  if (ct > cc && cr <= cc) return undefined;
  // Too weak: Cr·x + Cc·(V − x) = Ct·V. Too strong: Cr·x = Ct·V. x is what may stay.
  const tooStrong = cr * r > ct * v;
  const stay = tooStrong ? (ct * v) / cr : cc === cr ? undefined : (v * (cc - ct)) / (cc - cr);
  return stay === undefined || stay < -1e-9 || stay > r ? undefined : r - Math.max(0, stay);
}

function sayMix(
  input: MixInput,
  cc: number,
  result: Pick<Mix, 'feasible' | 'concentrate' | 'water' | 'bestStrength'> & {
    readonly drainFirst: number | undefined;
  },
): string {
  const pour = cc === 1 ? 'concentrate' : `premix or concentrate of ${percent(cc)}`;
  if (result.feasible) {
    return `Add ${volume(Math.max(0, result.concentrate), input)} of ${pour} and ${volume(Math.max(0, result.water), input)} of water.`;
  }
  const reach = `Filled now it comes to ${percent(result.bestStrength)}`;
  if (result.drainFirst === undefined) {
    return `${reach}; ${percent(input.targetStrength)} cannot be reached with ${pour} of ${percent(cc)}.`;
  }
  return `Drain at least ${volume(roundUp(result.drainFirst), input)} first: ${reach.toLowerCase()}, not ${percent(input.targetStrength)}.`;
}

function percent(fraction: number): string {
  return `${showNumber(Number((fraction * 100).toFixed(1)))} %`;
}

function volume(value: number, input: MixInput): string {
  return `${value.toFixed(2)} ${input.unit ?? 'l'}`;
}

/** "At least" must not be rounded down. */
function roundUp(value: number): number {
  return Math.ceil(value * 100 - 1e-6) / 100;
}

/** Volume to drain and replace in a well mixed full system: x = V (Ct − C0)/(Cc − C0). Fractions 0…1. */
export function drainAndReplace(
  capacity: number,
  present: number,
  target: number,
  replacement: number,
): Outcome<number> {
  if (!(capacity > 0)) return refuse('mix.capacity', 'a capacity above 0', capacity);
  const fractions = [present, target, replacement];
  if (fractions.some((f) => !(f >= 0 && f <= 1))) {
    return refuse('mix.strength', 'strengths from 0 to 100 %', fractions.map(percent).join(', '));
  }
  if (present === target) return good(0);
  const share = (target - present) / (replacement - present);
  if (!(share >= 0 && share <= 1)) {
    return refuse(
      'mix.strength',
      `a target between ${percent(present)} and ${percent(replacement)}`,
      percent(target),
    );
  }
  return good(capacity * share);
}

/** Strength left after n flushes with water, each drained to R and filled to V: C (R/V)^n. */
export function strengthAfterFlushes(
  start: number,
  remaining: number,
  capacity: number,
  flushes: number,
): number {
  return start * (remaining / capacity) ** flushes;
}

interface FreezeRow {
  readonly volumePercent: number | undefined;
  readonly massPercent: number;
  readonly celsius: number | undefined;
  readonly family: FreezeFamily;
}

const FREEZE_ROWS: readonly FreezeRow[] = readRows(FREEZE_POINTS).map((row) => ({
  family: cell(row, 0) === 'pure' ? 'pure' : 'inhibited',
  volumePercent: cell(row, 1) === '' ? undefined : Number(cell(row, 1)),
  massPercent: Number(cell(row, 2)),
  celsius: cell(row, 3) === '' ? undefined : Number(cell(row, 3)),
}));

export interface FreezePoint extends Basis {
  /** °C; absent in the slush region, where nothing was measured. */
  readonly celsius?: number;
  /** °C that it lies below, in the slush region. */
  readonly belowCelsius?: number;
  readonly sentence: string;
}

/**
 * Freezing point from one family of tables, interpolated in a straight line.
 * `inhibited` by volume or mass percent 0 to about 90; `pure` by mass percent 10 to 56.
 */
export function freezePoint(
  percentValue: number,
  by: 'volume' | 'mass' = 'volume',
  family: FreezeFamily = 'inhibited',
): Outcome<FreezePoint> {
  const rows = FREEZE_ROWS.filter((row) => row.family === family);
  const key = (row: FreezeRow): number | undefined => (by === 'volume' ? row.volumePercent : row.massPercent);
  const known = rows.filter((row) => key(row) !== undefined);
  const low = key(known[0] ?? { family, volumePercent: undefined, massPercent: 0, celsius: undefined });
  const high = Math.max(...known.map((row) => key(row) ?? 0));
  if (low === undefined || !(percentValue >= low && percentValue <= high)) {
    const range = low === undefined ? 'mass percent for pure glycol' : `${low} to ${high} ${by} %`;
    return refuse('mix.freeze-range', `a strength of ${range}`, `${showNumber(percentValue)} %`);
  }
  const above = known.findIndex((row) => (key(row) ?? 0) >= percentValue);
  const b = known[above];
  const a = known[Math.max(0, above - 1)] ?? b;
  const celsius =
    b && a ? interpolate(percentValue, key(a) ?? 0, key(b) ?? 0, a.celsius, b.celsius) : undefined;
  return good({
    ...(celsius === undefined ? { belowCelsius: -49 } : { celsius }),
    sentence:
      celsius === undefined
        ? `${showNumber(percentValue)} ${by} % of glycol turns to slush below −49 °C; nothing was measured there.`
        : `${showNumber(percentValue)} ${by} % of glycol begins to freeze near ${celsius.toFixed(1).replace('-', '−')} °C.`,
    formula: 'straight line between the two nearest rows of one table',
    inputs: [`${showNumber(percentValue)} ${by} %`, `${family} ethylene glycol`],
    source:
      family === 'inhibited'
        ? 'ASHRAE-type table for inhibited ethylene glycol (one public copy)'
        : 'CRC Handbook, concentrative properties (two public copies)',
    limits: [
      STRONGEST,
      'Inhibited product and pure glycol differ with rising strength (50 mass %: −33.8 against about −36); they are not mixed.',
    ],
    cautions: ['A tester that reads the mixture itself comes before this figure.'],
  });
}

function interpolate(
  at: number,
  x0: number,
  x1: number,
  y0: number | undefined,
  y1: number | undefined,
): number | undefined {
  if (at === x1) return y1;
  if (at === x0) return y0;
  if (y0 === undefined || y1 === undefined) return undefined;
  return y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
}

/** Volume percent from mass percent by densities: additive volumes. `specificGravity` of the glycol against water. */
export function volumePercentOf(massPercent: number, specificGravity = 1.1155): Outcome<number> {
  if (!(massPercent >= 0 && massPercent <= 100)) {
    return refuse('mix.strength', 'a mass percent from 0 to 100', massPercent);
  }
  if (massPercent === 0) return good(0);
  const p = massPercent / 100;
  return good(100 / (1 + (specificGravity * (1 - p)) / p));
}
