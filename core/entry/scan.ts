import type { Atom, Sense } from './atom.ts';
import { isNegated, leadsOn, readNote, readStretch } from './scan-phrase.ts';
import { lockBehind, withLock } from './scan-safe.ts';
import { scanDrive, scanThread, type Found } from './scan-thread.ts';
import { NUM, sticky } from './numbers.ts';
import { CLASSES, QUOTED, scanValue, unquote } from './scan-value.ts';
import { phraseAt } from './vocabulary.ts';

const SPACE = /[^\S\n]+/y;
const QUOTE = new RegExp(QUOTED, 'y');
const TIMES = /[x×*](?=\s|\d|[mM]\s?\d|#|[½¼¾⅛⅜⅝⅞]|$)/uy;
/** "12-20", "25-30 Nm": a range is no value; "25-8.8" is a length and a class. */
const RANGE = sticky(
  String.raw`${NUM}[-–](?!(?:${CLASSES})(?![\d]))${NUM}(?:\s?(?:mm|nm|n·m|in\b))?(?![\p{L}\p{N}/]|[.,]\d)`,
);
const WORD = /[\p{L}\p{M}][\p{L}\p{M}’']*/uy;
const CHUNK = /[^\s,;:+()"&/]+/y;
const GAP = /[ \t-]+(?=\p{L})/uy;

const one = (end: number, s: 'space' | 'hard' | 'colon' | 'plus' | 'times' | 'word' | 'kept'): Found => ({
  end,
  senses: [{ s }],
});

/** Commas, semicolons, brackets and line breaks cut; so do a full stop and a dash with a space behind them. */
function separator(text: string, at: number): Found | null {
  const char = text.charAt(at);
  const before = at === 0 ? ' ' : text.charAt(at - 1);
  const after = at + 1 >= text.length ? ' ' : text.charAt(at + 1);
  if (/[,;\n()|]/.test(char)) return one(at + 1, 'hard');
  if (char === ':' || char === '=') return one(at + 1, 'colon');
  if (char === '+' || (char === '/' && /[\p{L}\s]/u.test(before))) return one(at + 1, 'plus');
  if (char === '&') return { end: at + 1, senses: [{ s: 'and' }] };
  if (/[.!]/.test(char) && /\s/.test(after)) return one(at + 1, 'hard');
  // "M8x25-8.8": the dash of a standard designation; " - " between words.
  if (/[-–—]/.test(char) && (/\s/.test(before) ? /\s/.test(after) : /\d/.test(before) && /\d/.test(after))) {
    return one(at + 1, 'hard');
  }
  return null;
}

/** Known words and phrases, longest first; a hyphen counts as a space. */
function phrase(text: string, at: number): Found | null {
  const words: string[] = [];
  const ends: number[] = [];
  let next = at;
  while (words.length < 6) {
    WORD.lastIndex = next;
    const found = WORD.exec(text);
    if (!found) break;
    if (/[\p{N}_]/u.test(text.charAt(WORD.lastIndex))) break;
    words.push(found[0].toLowerCase().replace('’', "'"));
    ends.push(WORD.lastIndex);
    GAP.lastIndex = WORD.lastIndex;
    if (!GAP.test(text)) break;
    next = GAP.lastIndex;
  }
  const known = phraseAt(words);
  const end = known ? ends[known.count - 1] : undefined;
  if (!known || end === undefined) return null;
  // "bolt-on" is not "bolt": a known word may not be the first half of one that is not known.
  if (text.charAt(end) === '-' && /\p{L}/u.test(text.charAt(end + 1))) return null;
  return { end, senses: known.senses };
}

function quoted(text: string, at: number): Found | null {
  if (text.charAt(at) !== '"') return null;
  QUOTE.lastIndex = at;
  const found = QUOTE.exec(text);
  return found ? { end: QUOTE.lastIndex, senses: [{ s: 'quoted', text: unquote(found[1] ?? '') }] } : null;
}

function run(pattern: RegExp, text: string, at: number): number | null {
  pattern.lastIndex = at;
  return pattern.test(text) && pattern.lastIndex > at ? pattern.lastIndex : null;
}

/** Everything that can stand at this place inside a stretch; one that knows nothing takes the chunk as a word. */
function scanAt(text: string, at: number): readonly Found[] {
  const times = run(TIMES, text, at);
  if (times !== null) return [one(times, 'times')];
  const thread = scanThread(text, at);
  if (thread) return thread;
  const range = run(RANGE, text, at);
  if (range !== null) return [one(range, 'word')];
  const single = quoted(text, at) ?? scanDrive(text, at) ?? scanValue(text, at) ?? phrase(text, at);
  if (single) return [single];
  return [one(run(CHUNK, text, at) ?? at + 1, 'word')];
}

/** Where the stretch that begins here ends: at the next separator outside quotes. */
function stretchEnd(text: string, from: number): number {
  let depth = 0;
  for (let i = from; i < text.length; i += 1) {
    const char = text.charAt(i);
    if (char === '"') {
      QUOTE.lastIndex = i;
      if (QUOTE.test(text)) i = QUOTE.lastIndex - 1;
    } else if (char === '(') depth += 1;
    else if (char === ')' && depth > 0) depth -= 1;
    else if (char === ';' || char === '\n' || char === ')') return i;
    else if (char === ',' && !(/\d/.test(text.charAt(i - 1)) && /\d/.test(text.charAt(i + 1)))) return i;
    else if (/[.!]/.test(char) && (i + 1 === text.length || /\s/.test(text.charAt(i + 1)))) return i;
    else if (i - from > 2100) return text.length;
  }
  return text.length;
}

/** "strap, holds the left rotor". */
const HELD_BY_IT = /^,\s*hold(?:s|ing) [^,;\n]+/iu;
const COMES_OUT =
  /^,\s*(?:must come (?:out|off)(?: again)?|to come out|comes out again|take out again)(?=\s*(?:[;,\n]|$))/iu;

/** A stretch that is one item as a whole: a note, a reading, a mark, an energy made safe, a thing put in. */
function whole(text: string, at: number): Found | null {
  const note = readNote(text, at);
  if (note) return { end: note.end, senses: [note.sense] };
  const end = at + text.slice(at, stretchEnd(text, at)).trimEnd().length;
  const must = COMES_OUT.exec(text.slice(end)) ?? HELD_BY_IT.exec(text.slice(end));
  if (must) {
    // "3 caps, must come out": the words behind the comma make it a thing put in.
    const joined = text.slice(at, end + must[0].length);
    const put = readStretch(joined);
    if (put) return { end: at + joined.length, senses: [put] };
  }
  const stretch = text.slice(at, end);
  if (text.charAt(end) === ',' && leadsOn(stretch)) {
    const to = end + 1 + text.slice(end + 1, stretchEnd(text, end + 1)).trimEnd().length;
    const put = readStretch(`must come out: ${text.slice(at, to).replace(',', '')}`);
    if (put && to > end + 1) return { end: to, senses: [put] };
  }
  const sense: Sense | null = readStretch(stretch);
  if (sense?.s === 'item' && sense.item.kind === 'made safe') {
    const lock = lockBehind(text.slice(end));
    return { end: end + lock.length, senses: [{ ...sense, item: withLock(sense.item, lock) }] };
  }
  if (sense) return { end, senses: [sense] };
  return null;
}

/** Cuts a line into atoms that cover it without gaps. Never throws; work grows with the length of the line. */
export function scan(text: string): Atom[] {
  const atoms: Atom[] = [];
  let at = 0;
  let fresh = true;
  const push = (found: Found): void => {
    const { end, senses } = found;
    atoms.push({ start: at, end, text: text.slice(at, end), senses, kind: null, suggestion: null });
    at = end;
  };
  while (at < text.length) {
    const space = run(SPACE, text, at);
    if (space !== null) {
      push(one(space, 'space'));
      continue;
    }
    const cut = separator(text, at);
    if (cut) {
      fresh = cut.senses[0]?.s === 'hard';
      push(cut);
      continue;
    }
    const item = fresh ? whole(text, at) : null;
    fresh = false;
    if (item) push(item);
    else if (/^[ncdwl]/i.test(text.charAt(at)) && isNegated(text.slice(at, at + 40)))
      push(one(stretchEnd(text, at), 'kept'));
    else for (const found of scanAt(text, at)) push(found);
  }
  return atoms;
}
