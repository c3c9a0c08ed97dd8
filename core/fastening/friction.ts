import { good, refuse, type Confidence, type Outcome } from './outcome.ts';

/** A state of thread and underhead, with its nut factor K. */
export interface NutFactor {
  readonly id: Lubrication;
  readonly says: string;
  /** K for the reference torque. */
  readonly k: number;
  /** The lowest K that fits the words: proof is reached soonest with it. */
  readonly lowestK: number;
  readonly source: string;
  readonly confidence: Confidence;
}

export type Lubrication =
  | 'as received'
  | 'dry'
  | 'black'
  | 'zinc'
  | 'oiled'
  | 'greased'
  | 'moly'
  | 'low-friction';

const SHIGLEY = 'Shigley, Mechanical Engineering Design, table of torque factors K';
const HANDBOOK = 'handbooks, e.g. NASA RP-1228';

/**
 * Nut factors. K scatters by 25 to 30 % for a torque wrench on one and the same bolt.
 * "dry" on the bench may be zinc plated (0.20) as well as black (0.30), so the lowest K that fits dry is 0.20.
 * "greased" may be an anti-seize paste (0.12); wax and molybdenum disulfide run from 0.09 to 0.13.
 */
export const NUT_FACTORS: readonly NutFactor[] = [
  {
    id: 'as received',
    says: 'dry steel as received',
    k: 0.2,
    lowestK: 0.2,
    source: HANDBOOK,
    confidence: 'verified-2',
  },
  { id: 'dry', says: 'dry', k: 0.2, lowestK: 0.2, source: HANDBOOK, confidence: 'verified-2' },
  {
    id: 'black',
    says: 'black finish, not plated, dry',
    k: 0.3,
    lowestK: 0.3,
    source: SHIGLEY,
    confidence: 'verified-2',
  },
  { id: 'zinc', says: 'zinc plated, dry', k: 0.2, lowestK: 0.2, source: SHIGLEY, confidence: 'verified-2' },
  { id: 'oiled', says: 'oiled', k: 0.18, lowestK: 0.18, source: SHIGLEY, confidence: 'verified-2' },
  {
    id: 'greased',
    says: 'greased or anti-seize',
    k: 0.12,
    lowestK: 0.12,
    source: SHIGLEY,
    confidence: 'verified-2',
  },
  {
    id: 'moly',
    says: 'molybdenum disulfide or wax',
    k: 0.11,
    lowestK: 0.09,
    source: HANDBOOK,
    confidence: 'memory',
  },
  {
    id: 'low-friction',
    says: 'special low-friction nut',
    k: 0.09,
    lowestK: 0.09,
    source: SHIGLEY,
    confidence: 'verified-2',
  },
];

const WORDS: readonly (readonly [RegExp, Lubrication])[] = [
  [/low.?friction/, 'low-friction'],
  [/mol(y|ybd)|mos2|wax/, 'moly'],
  [/greas|anti.?seize|paste|copper|nickel/, 'greased'],
  [/oil|lubric|wet/, 'oiled'],
  [/zinc|galvan|plated(?!.*non)|cadmium/, 'zinc'],
  [/black|non.?plated|plain/, 'black'],
  [/dry|clean/, 'dry'],
  [/received|unknown|^$/, 'as received'],
];

/** The nut factor of a named state of lubrication. */
export function nutFactor(lubrication: Lubrication): NutFactor {
  const found = NUT_FACTORS.find((factor) => factor.id === lubrication);
  if (!found) throw new Error(`No nut factor for ${lubrication}`);
  return found;
}

/** Reads "dry", "oiled", "greased", "anti-seize", "zinc plated", "black", "moly paste", "as received". */
export function parseLubrication(text: string): Outcome<Lubrication> {
  const bare = text.trim().toLowerCase();
  if (/non.?plated/.test(bare)) return good('black');
  const found = WORDS.find(([pattern]) => pattern.test(bare));
  return found
    ? good(found[1])
    : refuse('lubrication.unknown', 'dry, black, zinc, oiled, greased, moly or low-friction', text.trim());
}
