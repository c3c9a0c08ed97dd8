import type { JobState, Row } from '../model/tables.ts';
import { holePieces } from './holes.ts';
import type { HolePiece } from './holes.ts';
import { lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import { RENEWAL_RULES } from './renewal-rules.ts';
import type { RenewalRule } from './renewal-rules.ts';
import { RENEWAL_WORDS } from './renewal-words.ts';
import type { Family } from './renewal-words.ts';

export type RenewalKind = Row<'spec'>['kind'] | Row<'part'>['kind'] | 'O-ring' | 'connection' | 'fluid';

/** What is known of a thing that came off. Only the kind has to be. */
export interface RenewalAsk {
  readonly kind: RenewalKind;
  readonly name?: string;
  readonly typed?: string;
  /** Form of head or nut: "nyloc", "castle", "serrated flange". */
  readonly head?: string | null;
  /** Angle of the final tightening, degrees; more than 0 means that it was tightened by angle. */
  readonly angleDeg?: number | null;
  readonly stages?: readonly string[];
  readonly lubrication?: Row<'fset'>['lubrication'];
}

/** A row of the list that fits, what it means for the set or part (`renew`), and the sentence to show. */
export interface RenewalAdvice {
  readonly rule: RenewalRule;
  readonly renew: 'must' | 'if worn';
  readonly sentence: string;
}

const FAMILIES: Readonly<Record<RenewalKind, readonly Family[]>> = {
  bolt: ['bolt'],
  screw: ['bolt'],
  'set screw': ['bolt'],
  stud: ['bolt'],
  'banjo bolt': ['bolt'],
  'wood screw': [],
  'self-tapping screw': [],
  nut: ['nut'],
  washer: ['washer'],
  spacer: [],
  clip: ['clip', 'ring'],
  'push rivet': ['rivet'],
  rivet: ['rivet'],
  pin: ['pin'],
  'split pin': ['pin'],
  'roll pin': ['pin'],
  'dowel pin': ['pin'],
  'taper pin': ['pin'],
  'clevis pin': [],
  'R-clip': [],
  circlip: ['ring'],
  'E-clip': ['ring'],
  clamp: ['clamp'],
  'cable tie': [],
  key: [],
  plug: [],
  other: ['pin', 'washer', 'nut', 'bolt', 'ring', 'rivet', 'clamp', 'clip'],
  unknown: ['pin', 'washer', 'nut', 'bolt', 'ring', 'rivet', 'clamp', 'clip'],
  part: ['pin', 'washer', 'nut', 'bolt', 'ring', 'rivet', 'clamp', 'clip', 'seal', 'joint', 'part'],
  seal: ['washer', 'seal'],
  gasket: ['washer', 'seal'],
  'o-ring': ['seal'],
  'O-ring': ['seal'],
  filter: ['part'],
  sleeve: [],
  shim: [],
  kit: [],
  // It is new: what must be renewed is what it replaces.
  'new part': [],
  connection: ['joint', 'clamp'],
  fluid: ['fluid'],
};

/** Kinds that are a row of the list whatever they are called. */
const BY_KIND: Readonly<Partial<Record<RenewalKind, string>>> = {
  'split pin': 'cotter-pin',
  'roll pin': 'roll-pin',
  'dowel pin': 'taper-pin',
  'taper pin': 'taper-pin',
  circlip: 'circlip',
  'E-clip': 'e-clip',
  'push rivet': 'plastic-push-rivet',
  rivet: 'rivet',
  gasket: 'flat-gasket',
  'o-ring': 'o-ring',
  'O-ring': 'o-ring',
  seal: 'rubber-seal',
};

/** Trim seals are made to be taken off; a mechanical (face) seal is judged by its faces: no row of the list is theirs. */
const OTHER_SEALS = /\b(door|window|boot|bonnet|weather|trim|mechanical|face)\b.*\b(seal|strip)/i;

/**
 * The rule of the renewal list that fits a thing, or null. Words of both trades are understood: split pin and cotter
 * pin, circlip and snap ring, nyloc and nylon-insert nut. Anything tightened by angle counts as renew unless the maker
 * allows it again. A plain bolt, nut or washer has no rule: it is looked at like everything else.
 */
export function renewalFor(ask: RenewalAsk): RenewalAdvice | null {
  if (OTHER_SEALS.test(ask.name ?? '')) return null;
  const families = FAMILIES[ask.kind];
  const threaded = families.includes('bolt') && ask.kind !== 'part';
  if ((threaded || ask.kind === 'nut') && byAngle(ask)) return advise('torque-plus-angle-bolt');
  const byWords =
    ruleByWords(namesOf(ask), families) ?? BY_KIND[ask.kind] ?? ruleByWords(typedOf(ask), families);
  if (byWords !== undefined) return advise(byWords);
  if (threaded && ask.lubrication === 'threadlock') return advise('threadlocked-bolt');
  if (threaded && ask.lubrication === 'anti-seize') return advise('anti-seize-bolt');
  return null;
}

function byAngle(ask: RenewalAsk): boolean {
  return (ask.angleDeg ?? 0) > 0 || (ask.stages ?? []).some((stage) => /\d\s*(°|deg)/i.test(stage));
}

/** The name, and the form of head or nut with the kind: "nyloc" and "nut" make "nyloc nut". */
function namesOf(ask: RenewalAsk): string[] {
  return [...(ask.head ? [`${ask.head} ${ask.kind}`] : []), ...phrases(ask.name ?? '')];
}

/** The whole line as typed may name other things too: it is asked only where the kind keeps those out, or no name is. */
function typedOf(ask: RenewalAsk): string[] {
  const open: readonly RenewalKind[] = ['part', 'unknown', 'other', 'connection'];
  const named = (ask.name ?? '').replace('unspecified', '').trim() !== '';
  return named && open.includes(ask.kind) ? [] : phrases(ask.typed ?? '');
}

function ruleByWords(names: readonly string[], families: readonly Family[]): string | undefined {
  const plain = names.map(plainName);
  for (const words of RENEWAL_WORDS) {
    if (!families.some((family) => family === words.family)) continue;
    if (plain.some((name) => fits(name, words.qualifiers, words.nouns))) return words.ruleId;
  }
  return undefined;
}

function fits(name: string, qualifiers: readonly string[], nouns: readonly string[]): boolean {
  const padded = ` ${name}`;
  if (!nouns.some((noun) => padded.endsWith(` ${noun}`))) return false;
  return qualifiers.length === 0 || qualifiers.some((word) => `${padded} `.includes(` ${word} `));
}

/** What comes after "for", "of", "on" says where a thing belongs, not what it is; "pressed in" says how it sits. */
function phrases(text: string): string[] {
  return text
    .split(/[,;+\n]/)
    .map(
      (piece) => piece.split(/(?<!\bpressed[- ])\b(?:for|of|on|at|from|in|with|behind|under)\b|\(/i)[0] ?? '',
    )
    .filter((piece) => piece.trim() !== '');
}

const TAIL =
  /^(\d\S*|x|mm|in|inch|id|od|m\d\S*|t\d+|internal|external|inner|outer|upper|lower|front|rear|left|right|top|bottom|new|old|small|large|big|set|pair|one|two)$/;

/** Lower case, hyphens as spaces, singular, without sizes and sides at the end. */
function plainName(text: string): string {
  const words = text
    .toLowerCase()
    .replace(/[-‐–_/]/g, ' ')
    .split(/\s+/)
    .filter((word) => word !== '')
    .map((word) => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word));
  while (words.length > 1 && TAIL.test(words.at(-1) ?? '')) words.pop();
  return words.join(' ');
}

const BY_ID: ReadonlyMap<string, RenewalRule> = new Map(RENEWAL_RULES.map((rule) => [rule.id, rule]));

/** The row of the list with this id or item, or null: what is stored beside a set or part as `renewRule`. */
export function renewalRule(idOrItem: string): RenewalRule | null {
  return BY_ID.get(idOrItem) ?? RENEWAL_RULES.find((rule) => rule.item === idOrItem) ?? null;
}

/** "never reuse" with a condition in its own row: only then is it a must. */
const CONDITIONAL = new Set(['press-fit-bearing']);

function advise(id: string): RenewalAdvice {
  const rule = BY_ID.get(id);
  if (!rule) throw new Error(`No renewal rule is called "${id}".`);
  // The list: "if the maker is silent treat as never reuse".
  const must =
    rule.id === 'torque-plus-angle-bolt' ||
    (!CONDITIONAL.has(rule.id) && rule.rule !== 'inspect' && rule.rule !== 'reuse only if');
  return { rule, renew: must ? 'must' : 'if worn', sentence: sentenceOf(rule) };
}

function sentenceOf(rule: RenewalRule): string {
  const item = rule.item.charAt(0).toUpperCase() + rule.item.slice(1);
  const says = {
    'never reuse': 'never used again',
    'never use': 'not to be used here',
    replace: 'replaced',
    'reuse only if': 'used again only if',
    inspect: 'looked at before it goes back',
  }[rule.rule];
  return `${item}: ${says}${rule.rule === 'reuse only if' ? ' ' : '; '}${rule.check}. Why: ${rule.reason}.`;
}

/** What the list says about each kind of piece of a set, the fastener itself first. Pieces without a rule are left out. */
export function renewalOfSet(state: JobState, setId: string): { piece: HolePiece; advice: RenewalAdvice }[] {
  const look = lookup(state);
  const set = look.sets.get(setId);
  if (!set) return [];
  return holePieces(look, set).flatMap((piece) => {
    const advice = renewalOfPiece(look, set, piece);
    return advice ? [{ piece, advice }] : [];
  });
}

function renewalOfPiece(look: Lookup, set: Row<'fset'>, piece: HolePiece): RenewalAdvice | null {
  const spec = piece.specId === null ? undefined : look.specs.get(piece.specId);
  const asStack = {
    kind: spec?.kind ?? 'unknown',
    name: piece.what,
    typed: spec?.more ?? '',
    head: spec?.head ?? null,
  };
  if (!piece.main) return renewalFor(asStack);
  const { angleDeg, stages, lubrication } = set;
  return renewalFor({ ...asStack, name: set.name, typed: set.typed, angleDeg, stages, lubrication });
}

/** What the list says about a part, or null. */
export function renewalOfPart(part: Row<'part'>): RenewalAdvice | null {
  return renewalFor({ kind: part.kind, name: part.name, typed: part.name === '' ? part.typed : '' });
}

/**
 * Whether this kind of piece of a set has to be new. A rule that was raised for the washers of a stack does not
 * condemn its bolts; a "must" without a rule, or with one that fits no single piece, is about all of them.
 */
export function mustBeNew(look: Lookup, set: Row<'fset'>, piece: HolePiece): boolean {
  if (set.renew !== 'must') return false;
  if (set.renewRule === null || !look.stackOf.has(set.id)) return true;
  const id = renewalRule(set.renewRule)?.id;
  const fitting = holePieces(look, set).filter((p) => renewalOfPiece(look, set, p)?.rule.id === id);
  if (id === undefined || fitting.length === 0) return true;
  return fitting.some((p) => (p.main && piece.main) || (p.specId === piece.specId && p.what === piece.what));
}

/** What makes a kind of joint tight, and whether a seal has to be asked for. */
export interface SealExpected {
  readonly what: 'clamp' | 'seat' | 'sealant' | 'seal or washer' | 'none' | 'ask';
  /** A part that seals belongs into it: ask when none was recorded. */
  readonly asks: boolean;
  readonly sentence: string;
}

const SEALS: Readonly<Record<Row<'connection'>['joint'], SealExpected>> = {
  'hose on stub': { what: 'clamp', asks: false, sentence: 'The clamp seals it; back on its old mark.' },
  flare: { what: 'seat', asks: false, sentence: 'Metal on metal: look at the seat and the cone for scores.' },
  'taper thread': { what: 'sealant', asks: false, sentence: 'Sealant or tape on the clean thread seals it.' },
  face: {
    what: 'seal or washer',
    asks: true,
    sentence: 'A gasket, seal or washer belongs between the faces.',
  },
  port: { what: 'seal or washer', asks: true, sentence: 'A seal or washer belongs under the union or plug.' },
  plug: { what: 'none', asks: false, sentence: 'Nothing seals it but its own housing.' },
  earth: { what: 'none', asks: false, sentence: 'Bare, clean metal; no seal.' },
  linkage: { what: 'none', asks: false, sentence: 'No seal.' },
  unknown: { what: 'ask', asks: false, sentence: 'The kind of joint is not recorded.' },
};

/** What seals a joint of this kind. Common practice, no source. */
export function sealExpected(joint: Row<'connection'>['joint']): SealExpected {
  return SEALS[joint];
}
