import type {
  ConditionKind,
  DriveStyle,
  FastenerKind,
  HeadForm,
  StackPiece,
  TemporaryRole,
  Treatment,
} from './meaning.ts';

/**
 * The words that the entry line says: in the notation it writes, and under the chips.
 * What is written has to be read again by the vocabulary; a test holds both together.
 */

/** One fastener and several: "bolt", "bolts". */
export function kindWord(what: FastenerKind | StackPiece['what'], count: number | null): string {
  const word = what === 'unspecified' ? 'fastener' : what;
  if (count === 1) return word;
  return /(?:s|x|ch|sh)$/.test(word) ? `${word}es` : `${word}s`;
}

/** Heads that the line names beside the kind; heads of nuts stand before "nut". */
export const HEAD_WORD: Readonly<Record<HeadForm, string>> = {
  hex: 'hex',
  flange: 'flange',
  'socket cap': 'socket cap',
  button: 'button head',
  countersunk: 'countersunk',
  pan: 'pan head',
  cheese: 'cheese head',
  round: 'round head',
  square: 'square head',
  wing: 'wing',
  coach: 'coach head',
  eye: 'eye head',
  knurled: 'knurled',
  'T-head': 'T-head',
  shoulder: 'shoulder head',
  headless: 'headless',
  nyloc: 'nyloc',
  castle: 'castle',
  thin: 'thin',
  domed: 'domed',
  'all-metal lock': 'all-metal lock',
};

/** Heads that only nuts have, written as one word with it: "nyloc nut". */
export const NUT_HEADS: ReadonlySet<HeadForm> = new Set([
  'nyloc',
  'castle',
  'thin',
  'domed',
  'all-metal lock',
]);

export const DRIVE_WORD: Readonly<Record<DriveStyle, string>> = {
  'hex external': 'external hex',
  'hex socket': 'hex key',
  hexalobular: 'hexalobular',
  'hexalobular external': 'external hexalobular',
  slotted: 'slotted',
  'cross PH': 'cross head',
  'cross PZ': 'pozidriv',
  'triple square': 'triple square',
  'bi-hex': 'bi-hex',
  'square external': 'square drive',
  'square socket': 'square socket',
};

export const TREATMENT_WORD: Readonly<Record<Treatment, string>> = {
  threadlock: 'threadlock',
  sealant: 'sealant',
  greased: 'greased',
  oiled: 'oiled',
  'anti-seize': 'anti-seize',
  dry: 'dry',
};

/** What is said of a condition: the code is the word, "wrong" wants two. */
export const CONDITION_WORD = (what: ConditionKind): string => (what === 'wrong' ? 'wrong one' : what);

export const RENEW_WORD = { must: 'renew', 'if worn': 'renew if worn' } as const;

const ROLE_CAPTION: Readonly<Record<TemporaryRole, string>> = {
  blocks: 'must come out: it blocks',
  supports: 'must come out: it supports',
  cages: 'must come out: it cages',
  locks: 'must come out: it locks',
  aid: 'must come out: it helps',
};

const listed = (words: readonly string[]): string => words.join(', ');

/** Captions under the chips. */
export const CAPTION = {
  count: 'count',
  countOrHead: 'count, or the width of a head?',
  countUnknown: 'count not recorded',
  slackened: 'slackened',
  pitchAssumed: (pitch: number): string => `pitch ${pitch} assumed`,
  pitch: (pitch: number): string => `pitch ${pitch}`,
  pitchUnknown: 'pitch not known',
  noSuchThread: (near: readonly string[]): string =>
    near.length === 0 ? 'in no table here' : `in no table here, ${near.map((size) => `${size}?`).join(' ')}`,
  noSuchPitch: (pitch: number, size: string): string => `pitch ${pitch} in no table for ${size}`,
  perInch: (threads: number, assumed: boolean): string => `${threads} per inch${assumed ? ' assumed' : ''}`,
  confirm: (sizes: readonly string[]): string =>
    sizes.length > 1 ? `to confirm: ${listed(sizes)}` : 'to confirm',
  noThread: 'no thread known for this head',
  long: 'long',
  size: 'size',
  of: (count: number): string => `${count} of them`,
  fits: (thread: string): string => `fits ${thread}`,
  misfits: (thread: string, sizes: readonly string[]): string =>
    `not ${thread} in the tables: ${listed(sizes)}`,
  head: 'head',
  driveSize: 'across flats',
  driveKey: 'key',
  grade: 'grade',
  propertyClass: 'class',
  leftHand: 'thread',
  holds: 'where',
  stack: 'in order, at each',
  torque: 'torque as found',
  byFeel: 'by feel',
  angle: 'angle',
  treated: 'as found',
  putOn: 'put on again',
  renew: 'on the way back',
  stow: 'goes in',
  stowClamp: '1 clamp goes in',
  stowBeside: 'noted beside it',
  stowNext: 'next free number',
  missing: 'missing as found',
  missingAmong: 'missing as found, of these',
  missingBesides: 'missing as found, besides these',
  condition: 'condition',
  hole: (holes: readonly number[]): string =>
    `${holes.length > 1 ? 'holes' : 'hole'} ${listed(holes.map(String))}`,
  part: { off: 'off', slackened: 'slackened', opened: 'opened', aside: 'moved aside' },
  ownPlace: 'goes back where it was',
  stamped: 'stamped',
  heldBy: 'holds it',
  ends: 'hose ends',
  clamp: 'clamp',
  pins: 'ways',
  leaveAlone: 'leave alone',
  fluid: { drained: 'drained', lost: 'lost', filled: 'filled', bled: 'bled' },
  fluidOnly: 'fluid',
  amount: 'amount',
  amountWhose: 'US or imperial?',
  fluidType: 'type',
  madeSafe: (energy: string): string => `made safe: ${energy}`,
  role: ROLE_CAPTION,
  where: 'where it is',
  measured: 'measured',
  mark: 'match mark',
  place: 'place',
  note: 'note',
  keptAsNote: (typed: string): string => `“${typed}” is kept as a note`,
  notUnderstood: 'not understood, kept as a note',
} as const;
