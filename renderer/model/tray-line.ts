import type { MeasureData } from '../screens/off/MeasureForm.tsx';

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const LINE = new RegExp(
  String.raw`^(?:(\d{1,4})\s*[x×]?\s+)?(m\s*${NUMBER}(?:\s*[x×*]\s*${NUMBER}){0,2}|#?\d+(?:/\d+)?-\d+|\d+/\d+)(?:\s+(.*))?$`,
  'i',
);
const METRIC = new RegExp(
  String.raw`^m\s*(${NUMBER})(?:\s*[x×*]\s*(${NUMBER}))?(?:\s*[x×*]\s*(${NUMBER}))?$`,
  'i',
);
const HEAD =
  /^(?:hex\s+|head\s+)?((?:t|tx|e|ph|pz)\s*\d{1,3}|[\d.,/]+(?:\s*mm)?\s*(?:key|socket|af|head|hex)?)$/i;

const value = (text: string): number => Number(text.replace(',', '.'));

/** What "M8x1.25x25" says, field by field; no pitch is more than a third of its diameter. */
function sizeOf(typed: string): Pick<MeasureData, 'thread' | 'pitch' | 'length'> {
  const metric = METRIC.exec(typed);
  const [, nominal = '', second, third] = metric ?? [];
  if (!metric || second === undefined) return { thread: typed, pitch: '', length: '' };
  const thread = `M${nominal}`;
  if (third !== undefined) return { thread, pitch: second, length: third };
  const isLength = value(second) > value(nominal) / 3;
  return { thread, pitch: isLength ? '' : second, length: isLength ? second : '' };
}

/** "25 13", "hex 13", "25 long T30": what stands behind the thread; null where a word of it is not known. */
function restOf(typed: string, known: string): Pick<MeasureData, 'length' | 'head' | 'kind'> | null {
  let rest = typed.trim();
  const kind = /\bnuts?\b/i.test(rest) ? 'nut' : /\bwashers?\b/i.test(rest) ? 'washer' : '';
  rest = rest
    .replace(/\b(nuts?|washers?|bolts?|screws?)\b/gi, '')
    .replace(/\s+/g, ' ')
    .trim();
  let length = known;
  const long = new RegExp(String.raw`^(${NUMBER})(?:\s*mm)?(?:\s+long)?(?=\s|$)`, 'i').exec(rest);
  if (length === '' && kind === '' && long) {
    length = long[1] ?? '';
    rest = rest.slice(long[0].length).trim();
  }
  if (rest === '') return { length, head: '', kind };
  const head = HEAD.exec(rest);
  return head ? { length, head: head[1] ?? '', kind } : null;
}

/** A whole line such as "4 M8x25 13" as the fields of the form; null where it is none. */
export function measuredLine(text: string): Partial<MeasureData> | null {
  const line = LINE.exec(text.trim());
  if (!line) return null;
  const [, count = '', typed = '', behind = ''] = line;
  const size = sizeOf(typed);
  const rest = restOf(behind, size.length);
  return rest && { ...size, ...rest, count };
}

/** What was typed, with a line that stands in the first field alone split to the fields it belongs to. */
export function spreadLine(measure: MeasureData): MeasureData {
  const { count, thread, pitch, length, head } = measure;
  if (pitch !== '' || length !== '' || head !== '') return measure;
  if (thread !== '' && !/\s/.test(thread.trim())) return measure;
  const line = measuredLine(`${count} ${thread}`);
  if (!line) return measure;
  return { ...measure, ...line, count: line.count ?? '', kind: line.kind || measure.kind };
}
