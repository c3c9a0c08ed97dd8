import {
  FASTENERS,
  FASTENERS_WITH_HEAD,
  STACK,
  HEADS,
  DRIVES,
  CONDITIONS,
  TREATMENTS,
  HAPPENED,
  FLUID_DID,
  TEMPORARY,
  RENEW,
  NUMBERS,
  ENDS,
  PLAIN,
} from './words.ts';
import { NOUNS } from './nouns.ts';
import type {
  ConditionKind,
  ConnectionKind,
  DriveStyle,
  Energy,
  FastenerKind,
  FluidItem,
  Happened,
  HeadForm,
  PartLook,
  Renew,
  StackPiece,
  TemporaryRole,
  Treatment,
} from './meaning.ts';

export type WordSense =
  | { readonly s: 'fastener'; readonly what: FastenerKind; readonly head: HeadForm | null }
  | { readonly s: 'stack'; readonly what: StackPiece['what'] }
  | { readonly s: 'head'; readonly head: HeadForm }
  | { readonly s: 'drive-style'; readonly style: DriveStyle }
  | { readonly s: 'condition'; readonly what: ConditionKind }
  | { readonly s: 'treatment'; readonly what: Treatment }
  | { readonly s: 'happened'; readonly what: Happened }
  | { readonly s: 'part'; readonly look: PartLook | null }
  | { readonly s: 'connection'; readonly what: ConnectionKind }
  | { readonly s: 'fluid' }
  | { readonly s: 'fluid-did'; readonly did: NonNullable<FluidItem['did']> }
  | { readonly s: 'temporary'; readonly role: TemporaryRole }
  | { readonly s: 'renew'; readonly what: Renew }
  | { readonly s: 'number'; readonly value: number }
  | { readonly s: PlainSense };

type PlainSense =
  | 'across-flats'
  | 'long'
  | 'length-word'
  | 'of-them'
  | 'rest'
  | 'each'
  | 'more'
  | 'missing'
  | 'as-found'
  | 'left-hand'
  | 'by-feel'
  | 'coarse'
  | 'fine'
  | 'held'
  | 'own-place'
  | 'leave-alone'
  | 'must-come-out'
  | 'place'
  | 'preposition'
  | 'with'
  | 'and'
  | 'stack-word'
  | 'clamp-word'
  | 'remark'
  | 'filler';

interface Line {
  readonly sense: string;
  readonly phrases: readonly string[];
}

function lines(table: string): readonly Line[] {
  return table
    .split('\n')
    .filter((line) => line.includes(' = '))
    .map((line) => {
      const [sense = '', words = ''] = line.split(' = ');
      return { sense: sense.trim(), phrases: words.split(',').map((word) => word.trim()) };
    });
}

/** Regular English plural of the last word: "spring washer" → "spring washers", "bush" → "bushes". */
function plural(phrase: string): string {
  if (/(s|x|ch|sh)$/.test(phrase)) return `${phrase}es`;
  return /[^aeiou]y$/.test(phrase) ? `${phrase.slice(0, -1)}ies` : `${phrase}s`;
}

interface Node {
  readonly next: Map<string, Node>;
  senses: WordSense[];
}

const ROOT: Node = { next: new Map(), senses: [] };
const WORDS = new Set<string>();

function learn(phrase: string, sense: WordSense): void {
  let node = ROOT;
  for (const word of phrase.split(' ')) {
    if (word.length >= 4) WORDS.add(word);
    let next = node.next.get(word);
    if (!next) {
      next = { next: new Map(), senses: [] };
      node.next.set(word, next);
    }
    node = next;
  }
  node.senses.push(sense);
}

function learnAll(table: string, make: (sense: string) => WordSense, nouns = false): void {
  for (const { sense, phrases } of lines(table)) {
    for (const phrase of phrases) {
      learn(phrase, make(sense));
      if (nouns) learn(plural(phrase), make(sense));
    }
  }
}

learnAll(FASTENERS, (what) => ({ s: 'fastener', what: what as FastenerKind, head: null }), true);
learnAll(
  FASTENERS_WITH_HEAD,
  (pair) => {
    const [what, head] = pair.split(':');
    return { s: 'fastener', what: what as FastenerKind, head: head as HeadForm };
  },
  true,
);
learnAll(STACK, (what) => ({ s: 'stack', what: what as StackPiece['what'] }), true);
learnAll(HEADS, (head) => ({ s: 'head', head: head as HeadForm }));
learnAll(DRIVES, (style) => ({ s: 'drive-style', style: style as DriveStyle }));
learnAll(CONDITIONS, (what) => ({ s: 'condition', what: what as ConditionKind }));
learnAll(TREATMENTS, (what) => ({ s: 'treatment', what: what as Treatment }));
learnAll(HAPPENED, (what) => ({ s: 'happened', what: what as Happened }));
learnAll(FLUID_DID, (did) => ({ s: 'fluid-did', did: did as NonNullable<FluidItem['did']> }));
learnAll(TEMPORARY, (role) => ({ s: 'temporary', role: role as TemporaryRole }), true);
learnAll(RENEW, (what) => ({ s: 'renew', what: what as Renew }));
learnAll(NUMBERS, (value) => ({ s: 'number', value: Number(value) }));
for (const word of ENDS.split(', ')) learn(`${word} end`, { s: 'place' });
learnAll(PLAIN, (s) => ({ s: s as PlainSense }));
learnAll(NOUNS.parts, (look) => ({ s: 'part', look: look === 'plain' ? null : (look as PartLook) }), true);
learnAll(NOUNS.connections, (what) => ({ s: 'connection', what: what as ConnectionKind }), true);
learnAll(NOUNS.fluids, () => ({ s: 'fluid' }));

/** Longest known phrase at the start of `words` (lower case): how many words it takes and what it can mean. */
export function phraseAt(words: readonly string[]): { count: number; senses: readonly WordSense[] } | null {
  let node: Node | undefined = ROOT;
  let best: { count: number; senses: readonly WordSense[] } | null = null;
  for (let i = 0; i < words.length; i += 1) {
    node = node.next.get(words[i] ?? '');
    if (!node) break;
    if (node.senses.length > 0) best = { count: i + 1, senses: node.senses };
  }
  return best;
}

/** Every single word of four letters or more that the vocabulary knows, for suggestions. */
export const KNOWN_WORDS: ReadonlySet<string> = WORDS;

/** Which energy a phrase like "battery earth off" or "on stands" is about; the first line that fits. */
export const ENERGY_WORDS: readonly (readonly [Energy, RegExp])[] = [
  ['ignition', /\b(ignition|spark|magneto|glow)/i],
  ['spring', /\bspring/i],
  ['fuel', /\b(fuel|gas|petrol|diesel|lpg)\b/i],
  [
    'electricity',
    /\b(electric\w*|batter\w*|mains|main switch|power|fuses?|breaker|isolator|capacitor|volt\w*|plug|current)\b/i,
  ],
  ['pressure', /\b(pressure|air|steam|hydraulic\w*|depressuri\w*|vented|accumulator|vacuum|water)\b/i],
  ['load', /\b(load|stands?|jack\w*|hoist|chock\w*|prop\w*|lift\w*|raised|crane|slung|blocks|blocked)\b/i],
  ['motion', /\b(motion|rotat\w*|shaft|flywheel|spindle|belt|moving|parking brake|hand ?brake|handbrake)\b/i],
  ['heat', /\b(heat|hot|cool\w*|cold)\b/i],
];
