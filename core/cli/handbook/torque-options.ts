import {
  convert,
  findThread,
  good,
  parseClass,
  parseDecimal,
  parsePercent,
  parseLength,
  parseLubrication,
  parseStages,
  parseTorque,
  PROOF_SHARE,
  PROOF_SHARE_PERMANENT,
  refuse,
  type Lubrication,
  type Outcome,
  type PropertyClass,
  type Thread,
  type Tightening,
  type Torque,
} from '../../fastening/index.ts';
import { firstRefusal, optional, type HandbookVerb } from './verb.ts';

export const TORQUE_OPTIONS: HandbookVerb['options'] = [
  { name: 'thread', also: ['t'], says: 'M8, M10x1.25, 5/16-18' },
  { name: 'diameter', also: ['d'], says: 'nominal diameter instead of a thread: 8 mm, 0.75 in' },
  { name: 'class', also: ['c', 'grade'], says: '8.8, 10.9, grade 5, A2-70; left out: unknown' },
  { name: 'lubrication', also: ['lube'], says: 'dry, black, zinc, oiled, greased, moly, low-friction' },
  { name: 'k', also: ['K'], says: 'nut factor, instead of the lubrication: 0.2' },
  {
    name: 'share',
    also: ['utilisation', 'fraction'],
    says: 'share of proof load: 75 %; with --mu of the yield strength',
  },
  { name: 'joint', says: 'reused or permanent, instead of a share' },
  { name: 'proof', also: ['proof-strength'], says: 'proof strength, with --area: 580 MPa, 55000 psi' },
  { name: 'area', also: ['stress-area'], says: 'stress area, with --proof: 58 mm², 0.0775 in²' },
  {
    name: 'mu',
    also: ['mu-total', 'mu_total', 'friction'],
    says: 'friction for the fuller metric formula: 0.12',
  },
  { name: 'mu-head', says: 'friction under the head, where it differs' },
  { name: 'preload', also: ['force'], says: 'preload instead of a share: 25230 N, 25 kN, 5853 lbf' },
  {
    name: 'torque',
    also: ['wanted'],
    says: 'torque to judge: 25 N·m, 18 lbf·ft, 100 to 140 lbf·in, 20 N·m + 90°',
  },
  { name: 'reached', says: 'torque reached, against --torque' },
  { name: 'drag', also: ['prevailing'], says: 'drag of a self-locking nut, added to --torque: 8 lbf·in' },
  { name: 'scatter', says: 'with --mu: scatter of the tightening, 1.6 to 1.8 for a torque wrench' },
  { name: 'across-flats', also: ['af', 'head'], says: 'head size where the thread is unknown: 13' },
  { name: 'maker', also: ['page'], says: "page of the maker's manual that gives the torque" },
];

/** Everything that the verb `torque` can be told. */
export interface Read {
  readonly thread: Thread | undefined;
  readonly diameterMm: number | undefined;
  readonly cls: PropertyClass | undefined;
  readonly lubrication: Lubrication | undefined;
  readonly k: number | undefined;
  readonly share: number | undefined;
  readonly joint: Joint | undefined;
  readonly proofMPa: number | undefined;
  readonly areaMm2: number | undefined;
  readonly mu: number | undefined;
  readonly muHead: number | undefined;
  readonly preloadN: number | undefined;
  readonly wanted: Tightening | undefined;
  /** Upper end, where a range is wanted. */
  readonly wantedHigh: Torque | undefined;
  readonly reached: Tightening | undefined;
  readonly headMm: number | undefined;
  readonly maker: string | undefined;
  readonly scatter: number | undefined;
  readonly drag: Torque | undefined;
}

type Joint = 'reused' | 'permanent';

function parseJoint(text: string): Outcome<Joint> {
  const typed = text.trim().toLowerCase();
  return typed === 'reused' || typed === 'permanent'
    ? good(typed)
    : refuse('torque.joint', 'reused or permanent', text.trim());
}

/** A figure with a unit that is turned into another one; a bare figure has that unit already. */
function parseIn(unit: string, code: string, expected: string): (text: string) => Outcome<number> {
  return (text) => {
    const parts = /^([\d.,\s]*\d)\s*(\D.*)?$/.exec(text.trim());
    const number = parts && parseDecimal(parts[1] ?? '');
    const value = number?.ok ? convert(number.value, parts?.[2] ?? unit, unit) : undefined;
    return value?.ok && value.value > 0 ? value : refuse(code, expected, text.trim());
  };
}

const parseProof = parseIn('MPa', 'torque.proof', 'a proof strength such as 580 MPa or 55000 psi');
const parseArea = parseIn('mm²', 'torque.area', 'a stress area such as 58 mm² or 0.0775 in²');

interface Wanted {
  readonly low: Tightening;
  readonly high?: Torque;
}

/** "100 to 140 lbf·in" is a range; everything else is stages. */
function parseWanted(text: string): Outcome<Wanted> {
  const range = /^([\d.,]+)\s*(\D*?)\s*(?:\bto\b|–|\.{2,3}|(?<=\d)-(?=\d))\s*([\d.,]+)\s*(\D+)$/i.exec(
    text.trim(),
  );
  if (!range) {
    const stages = parseStages(text);
    return stages.ok ? good({ low: stages.value }) : stages;
  }
  const [, from = '', own = '', until = '', unit = ''] = range;
  const low = parseStages(`${from} ${own === '' ? unit : own}`);
  const high = parseTorque(`${until} ${unit}`);
  if (!low.ok) return low;
  if (!high.ok) return high;
  return (low.value.torque?.torqueNm ?? 0) <= high.value.torqueNm
    ? good({ low: low.value, high: high.value })
    : refuse('torque.range', 'a range from the lower to the higher torque', text.trim());
}

function parseForce(text: string): Outcome<number> {
  const parts = /^([\d.,\s]*\d)\s*(N|kN|lbf?|kip|kgf)?$/i.exec(text.trim());
  const number = parts && parseDecimal(parts[1] ?? '');
  if (!parts || !number?.ok)
    return refuse('torque.preload', 'a preload such as 25 kN or 5853 lbf', text.trim());
  const unit = (parts[2] ?? 'N').replace(/^lb$/i, 'lbf');
  return convert(number.value, unit, 'N');
}

/** "unknown" is an answer, and the same as leaving the class out. */
function knownClass(typed: string | undefined): string | undefined {
  return /^\s*(unknown|not known|\?)?\s*$/i.test(typed ?? '') ? undefined : typed;
}

/** Every option of `torque` read by itself. */
function outcomesOf(get: (name: string) => string | undefined) {
  return {
    thread: optional(get('thread'), findThread),
    diameter: optional(get('diameter'), (text) => parseLength(text)),
    cls: optional(knownClass(get('class')), parseClass),
    lubrication: optional(get('lubrication'), parseLubrication),
    k: optional(get('k'), parseDecimal),
    mu: optional(get('mu'), parseDecimal),
    muHead: optional(get('mu-head'), parseDecimal),
    scatter: optional(get('scatter'), parseDecimal),
    share: optional(get('share'), parsePercent),
    joint: optional(get('joint'), parseJoint),
    proof: optional(get('proof'), parseProof),
    area: optional(get('area'), parseArea),
    preload: optional(get('preload'), parseForce),
    wanted: optional(get('torque'), parseWanted),
    reached: optional(get('reached'), (text) => parseStages(text)),
    drag: optional(get('drag'), (text) => parseTorque(text)),
    head: optional(get('across-flats'), (text) => parseLength(text)),
  };
}

/** Reads the options of `torque`, or the first refusal. */
export function readAll(get: (name: string) => string | undefined): Outcome<Read> {
  const read = outcomesOf(get);
  const refused = firstRefusal(...Object.values(read));
  if (refused) return refused;
  return {
    ok: true,
    value: {
      thread: valueOf(read.thread),
      diameterMm: valueOf(read.diameter)?.lengthMm,
      cls: valueOf(read.cls),
      lubrication: valueOf(read.lubrication),
      k: valueOf(read.k),
      share: valueOf(read.share) ?? shareOf(valueOf(read.joint)),
      joint: valueOf(read.joint),
      proofMPa: valueOf(read.proof),
      areaMm2: valueOf(read.area),
      mu: valueOf(read.mu),
      muHead: valueOf(read.muHead),
      preloadN: valueOf(read.preload),
      wanted: valueOf(read.wanted)?.low,
      wantedHigh: valueOf(read.wanted)?.high,
      reached: valueOf(read.reached),
      headMm: valueOf(read.head)?.lengthMm,
      maker: get('maker'),
      scatter: valueOf(read.scatter),
      drag: valueOf(read.drag),
    },
  };
}

function shareOf(joint: Joint | undefined): number | undefined {
  if (joint === undefined) return undefined;
  return joint === 'reused' ? PROOF_SHARE : PROOF_SHARE_PERMANENT;
}

/** The value of an outcome that was already found good. */
function valueOf<T>(outcome: Outcome<T>): T | undefined {
  return outcome.ok ? outcome.value : undefined;
}
