import type { Sense } from './atom.ts';
import type { TemporaryItem, TemporaryRole, TokenKind } from './meaning.ts';
import { FRAC, NUM, numberOf } from './numbers.ts';
import { madeSafe, only, type Reader } from './scan-safe.ts';
import { QUOTED, unquote } from './scan-value.ts';
import { phraseAt } from './vocabulary.ts';

// ---------------------------------------------------------------------------------------------- must come out

const OUT_PREFIX = only(
  String.raw`(?:must come out|to come out|put in|stuffed in|temporary|in(?=:))(?:\s*\((blocks|supports|cages|locks|aid)\))?\s*:?\s*(.+)`,
);
const OUT_SUFFIX = only(
  String.raw`(.+?)(?:\s*,)?\s+(?:must come (?:out|off)(?: again)?|to come out|comes out again|take out again)`,
);
const TEMPORARY = only(
  String.raw`(?:(?:(\d{1,4})|(a|an|one|two|three|four|five|six))\s*[x×]?\s+)?(?:${QUOTED}|(.+?))(?:\s+(?:((?:inside|into|in|onto|on|over|at|under|behind|between|through|across|against|near|around|below|where)\s.+)|"((?:[^"]|"")+)"))?`,
);
const WHERE_QUOTED = /^where "((?:[^"]|"")*)"$/;
/** "jack under the engine": a word that is a part elsewhere, with what it bears. */
const BEARS = only(
  String.raw`(?:\d{1,2} |an? |one |two )?(?:\p{L}+ )?(?:supports?|jacks?|props?|blocks?|stands?|timbers?|packing) (?:under|below|beneath) .+`,
);
/** "2 caps on the hose ends": what closes an opening, though a cap is a part elsewhere. */
const CLOSES = only(
  String.raw`(?:\d{1,2} |an? |one |two )?(?:\p{L}+ )?(?:caps?|plugs?|bungs?|covers?) (?:in|on|over) .*(?:ends?|ports?|stubs?|openings?)`,
);
const HOLDS = only(
  String.raw`(?:(\d{1,2}) |(an?|one) )?((?:\p{L}+ )?(?:straps?|ropes?|slings?|chains?|wires?)),? (hold(?:s|ing)? .+)`,
);
const SEALED_ENDS = only(
  String.raw`(?:(?:(both)|(\d{1,2})|(one))\s)?(?:open )?(?:ends?|ports?|pipes?|hoses?|holes?|unions?|stubs?|inlets?|outlets?)?\s?(capped|plugged|bunged|blanked|taped)(?: (?:off|up|over))?`,
);
const ROLE_WORDS: readonly (readonly [TemporaryRole, RegExp])[] = [
  ['cages', /\b(cag\w+|compressor|spring pin)\b/i],
  ['locks', /\b(lock\w*|timing|slave pin|peg|wedge\w*|holding tool)\b/i],
  [
    'supports',
    /\b(stands?|jack|straps?|wires?|props?|support\w*|hook|string|rope|chain|sling|blocks?|wood|timber)\b/i,
  ],
  ['aid', /\b(guide|aligning|alignment|slave|tool|spanner|wrench|screwdriver|magnet|tray)\b/i],
  [
    'blocks',
    /\b(rags?|bungs?|plugs?|caps?|plates?|blank\w*|tapes?|towels?|film|paper|foam|stopper|cloth|bag|cork)\b/i,
  ],
];
const COUNT_WORDS = ['', 'one', 'two', 'three', 'four', 'five', 'six'];
const SEALED_WITH: Readonly<Record<string, string>> = {
  capped: 'cap',
  plugged: 'plug',
  bunged: 'bung',
  blanked: 'blanking cap',
  taped: 'tape',
};

/** The usual job of a thing put in, by its name; a rag blocks, a strap supports; what is unknown aids. */
export function roleOf(name: string): TemporaryRole {
  return ROLE_WORDS.find(([, words]) => words.test(name))?.[0] ?? 'aid';
}

function temporary(body: string, role: string | undefined): TemporaryItem | null {
  const parts = TEMPORARY.exec(body.trim());
  if (!parts) return null;
  const name = parts[3] === undefined ? (parts[4] ?? '').trim() : unquote(parts[3]);
  if (name === '') return null;
  const word = parts[2]?.toLowerCase();
  const qty =
    parts[1] === undefined
      ? word === undefined
        ? null
        : Math.max(1, COUNT_WORDS.indexOf(word))
      : Number(parts[1]);
  const quoted = parts[5] === undefined ? null : WHERE_QUOTED.exec(parts[5]);
  const where = quoted ? unquote(quoted[1] ?? '') : (parts[5] ?? null);
  return { kind: 'temporary', name, role: (role as TemporaryRole | undefined) ?? roleOf(name), qty, where };
}

const mustComeOut: Reader = (stretch) => {
  const prefixed = OUT_PREFIX.exec(stretch);
  if (prefixed) return temporary(prefixed[2] ?? '', prefixed[1]?.toLowerCase());
  const suffixed = OUT_SUFFIX.exec(stretch);
  if (suffixed) return temporary(suffixed[1] ?? '', undefined);
  if (BEARS.test(stretch)) return temporary(stretch, 'supports');
  if (CLOSES.test(stretch)) return temporary(stretch, 'blocks');
  const holds = HOLDS.exec(stretch);
  if (holds) {
    const qty = holds[1] ? Number(holds[1]) : holds[2] ? 1 : null;
    return { kind: 'temporary', name: holds[3] ?? '', role: 'supports', qty, where: holds[4] ?? null };
  }
  const sealed = SEALED_ENDS.exec(stretch);
  if (!sealed) return null;
  const qty = sealed[1] ? 2 : sealed[2] ? Number(sealed[2]) : sealed[3] ? 1 : null;
  return {
    kind: 'temporary',
    name: SEALED_WITH[(sealed[4] ?? '').toLowerCase()] ?? '',
    role: 'blocks',
    qty,
    where: null,
  };
};

// ----------------------------------------------------------------------------------- readings, marks, places

const READ = String.raw`end[ -]?float|end[ -]?play|backlash|clearance|gap|play|run[ -]?out|thickness|depth|protrusion|compression|preload|bore|diameter|dia|voltage|resistance|pressure|temperature|temp|height|width|stroke|deflection|free play|crush|wear|alignment|tension`;
const READING = only(
  String.raw`((?:\p{L}+\s){0,3}(?:${READ}))\s*(?:[:=]|is|was|of|about)?\s*(${NUM}|[.,]\d+|${FRAC})\s*(mm|µm|μm|um|thou|inch|in|"|bar|mbar|psi|kpa|mpa|mv|v|ma|a|ohms?|ω|kω|°c|°f|°|deg|%|kg|g|n|rpm|hz|l\/min|mpa)?`,
);
const READING_QUOTED = only(
  String.raw`measured\s+${QUOTED}\s*:\s*(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?)(?:\s*${QUOTED})?`,
);

const measurement: Reader = (stretch) => {
  const quoted = READING_QUOTED.exec(stretch);
  if (quoted) {
    const value = Number(quoted[2]);
    return { kind: 'measurement', what: unquote(quoted[1] ?? ''), value, unit: unquote(quoted[3] ?? '') };
  }
  const parts = READING.exec(stretch);
  if (!parts) return null;
  const typed = parts[2] ?? '';
  const value = numberOf(/^[.,]/.test(typed) ? `0${typed}` : typed);
  return { kind: 'measurement', what: (parts[1] ?? '').trim(), value, unit: parts[3] ?? '' };
};

const MARK = only(
  String.raw`(?:(?:match|alignment|paint|punch|centre|center|dot|scribe|timing)[ -]?mark(?:s|ed)?|scribed|marked|marks?|arrow|dot punched|punch(?:ed)? dot|paint(?:ed)? (?:line|dot|stripe))(?!\s*:\s*")(?:\s*:)?(?:\s.+)?`,
);
const MARK_QUOTED = only(String.raw`mark\s*:\s*${QUOTED}`);

const mark: Reader = (stretch) => {
  const quoted = MARK_QUOTED.exec(stretch);
  if (quoted) return { kind: 'mark', text: unquote(quoted[1] ?? '') };
  return MARK.test(stretch) ? { kind: 'mark', text: stretch } : null;
};

const PLACE_QUOTED = only(String.raw`(?:place|where)\s*:\s*(?:${QUOTED}|(.+))`);

const place: Reader = (stretch) => {
  const parts = PLACE_QUOTED.exec(stretch);
  if (!parts) return null;
  return { kind: 'place', place: parts[1] === undefined ? (parts[2] ?? '').trim() : unquote(parts[1]) };
};

const NEGATION =
  /^(?:no|not|without|never|none|dont|cant|didnt|couldnt|nothing|didn[’']t|don[’']t|cannot|can[’']t|couldn[’']t)(?![\p{L}.’'])(?!\s?#?\d)/iu;

/** "leave alone: …": what follows is not taken off. */
const LEFT_ALONE = /^(?:leave|left) alone\s*:?\s+\p{L}/iu;

/** Whether a word turns round what follows, so that nothing in the stretch may be taken at its word. */
export function isNegated(stretch: string): boolean {
  if (LEFT_ALONE.test(stretch)) return true;
  return (
    NEGATION.test(stretch) &&
    phraseAt(
      stretch
        .toLowerCase()
        .split(/[\s-]+/)
        .slice(0, 3),
    ) === null
  );
}

const LEADS_ON = /^(?:\d{1,3} |an? |one |two |three )?(.+) (?:in|into|on|over|under)$/iu;

/** "2 locking pins in, camshaft and flywheel": a thing put in whose place follows behind the comma. */
export function leadsOn(stretch: string): boolean {
  const words =
    LEADS_ON.exec(stretch)?.[1]
      ?.toLowerCase()
      .split(/[\s-]+/) ?? [];
  const known = phraseAt(words);
  return known?.count === words.length && known.senses.some((sense) => sense.s === 'temporary');
}

const READERS: readonly (readonly [TokenKind, Reader])[] = [
  ['temporary', mustComeOut],
  ['made-safe', madeSafe],
  ['measurement', measurement],
  ['mark', mark],
  ['place', place],
];

/** Reads a stretch (trimmed, between separators) as one whole item, or null when it is none. */
export function readStretch(stretch: string): Sense | null {
  if (stretch.length < 3 || stretch.length > 2000) return null;
  for (const [kind, read] of READERS) {
    const item = read(stretch);
    if (item) return { s: 'item', item, kind };
  }
  return null;
}

const NOTE = /(?:notes?|nb|n\.b\.|remark)(?:\s*:\s*|\s+(?=\S))|(?:(?:for|on) the )?way back\s*:\s*/iuy;
const NOTE_QUOTED = new RegExp(String.raw`\s*${QUOTED}`, 'y');

/** "note: …" up to the end of the line or the next semicolon; what stands in quotes is taken whole. */
export function readNote(text: string, at: number): { end: number; sense: Sense } | null {
  NOTE.lastIndex = at;
  const head = NOTE.exec(text);
  if (!head) return null;
  const from = NOTE.lastIndex;
  NOTE_QUOTED.lastIndex = from;
  const quoted = NOTE_QUOTED.exec(text);
  if (quoted) {
    return {
      end: NOTE_QUOTED.lastIndex,
      sense: { s: 'item', item: { kind: 'note', text: unquote(quoted[1] ?? '') }, kind: 'note' },
    };
  }
  const stop = text.slice(from).search(/[;\n]/);
  const end = from + text.slice(from, stop < 0 ? undefined : from + stop).trimEnd().length;
  if (end <= from) return null;
  return { end, sense: { s: 'item', item: { kind: 'note', text: text.slice(from, end) }, kind: 'note' } };
}
