import type { SearchHit } from '../contract/contract.ts';
import { plainText, sameWords } from '../entry/index.ts';
import { WORKSHOP_CHAIN } from '../store/journal.ts';
import type { SearchText } from '../store/search-index.ts';
import type { Context } from './frame.ts';
import { searchTexts, senseMark } from './search-texts.ts';

/** Another number whenever more of a job can be found: texts kept from before are made anew. */
const TEXTS = 3;
const LIMIT = 100;
const SHOWN = 200;
/** A word of fewer letters is only looked for where a word begins. */
const INSIDE = 4;

/** How far a chain has come: what was made from it is stale once this moves. */
function lengthOf({ workshop }: Context, chain: string): number {
  const n = workshop.db.prepare('SELECT MAX(n) FROM journal WHERE chain = ?').pluck().get(chain);
  return (n as number | null) ?? 0;
}

/** Texts of the jobs that changed since they were last made are made anew; given back where nothing keeps them. */
function refresh(context: Context): SearchText[] {
  const { workshop } = context;
  const index = workshop.local?.searchIndex;
  // Bags and people are the workshop's own.
  const shared = lengthOf(context, WORKSHOP_CHAIN);
  const loose: SearchText[] = [];
  for (const { id } of workshop.jobs()) {
    const stamp = `${TEXTS}/${lengthOf(context, id)}/${shared}`;
    if (index?.stampOf(id) === stamp) continue;
    const state = workshop.job(id);
    if (!state) continue;
    const texts = searchTexts(state);
    if (index) index.put(id, stamp, texts);
    else loose.push(...texts);
  }
  return loose;
}

/** Whether a plain text has a word: from the beginning of one of its words on, a longer one anywhere. */
function hasWord(plain: string, word: string): boolean {
  for (let at = plain.indexOf(word); at >= 0; at = plain.indexOf(word, at + 1)) {
    const begins = !/[\p{L}\p{N}.]/u.test(plain[at - 1] ?? ' ');
    const after = plain.slice(at + word.length, at + word.length + 2);
    // "M8" is not "M80", "bag 4" is not "bag 40", and 1.2 is not 1.25.
    const ends = !/\d$/.test(word) || !/^\.?\d/.test(after);
    const whole = !word.includes(':') || !/^[\p{L}\p{N}]/u.test(after);
    if (ends && whole && (begins || word.length >= INSIDE)) return true;
  }
  return false;
}

/**
 * Every job is searched: parts, notes, threads ("M8x1.25"), bags ("bag 4"), in both trades' words. All words must be
 * in one text. Texts stand ready beside the record.
 */
export function search(context: Context, text: string): SearchHit[] {
  const { senses, rest } = sameWords(plainText(text));
  const marks = senses.map(senseMark);
  const pieces = [...marks, ...rest];
  if (pieces.length === 0) return [];
  const loose = refresh(context);
  const kept = context.workshop.local?.searchIndex.holding(pieces);
  const found = kept ?? loose.filter((one) => marks.every((mark) => one.plain.includes(mark)));
  const titles = new Map(context.workshop.jobs().map((job) => [job.id, job.title]));
  return found
    .filter((one) => titles.has(one.jobId) && rest.every((word) => hasWord(one.plain, word)))
    .slice(0, LIMIT)
    .map(({ jobId, removalId, thingId, kind, text: shown }) => ({
      jobId,
      jobTitle: titles.get(jobId) ?? '',
      removalId,
      thingId,
      kind,
      text: shown.slice(0, SHOWN),
    }));
}
