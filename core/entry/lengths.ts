import { parseLength } from '../fastening/index.ts';
import { ok, type Result, refuse } from '../model/result.ts';

/** Lengths of a set: one for all, and by hole what differs. Micrometres. */
interface Lengths {
  readonly allUm: number | null;
  readonly holes: readonly { readonly n: number; readonly lengthUm: number }[];
}

const EXAMPLE = '30, or 1,2,4: 30; 3: 40';

/** The longest length taken as meant, micrometres: 10 m. */
const MAX_UM = 10_000_000;

function readOne(text: string): Result<number> {
  const length = parseLength(text);
  if (!length.ok) return refuse('input', length.sentence);
  const um = Math.round(length.value.lengthMm * 1000);
  return um > 0 && um <= MAX_UM
    ? ok(um)
    : refuse('input', `Expected a length above 0 and up to 10 m, got “${text.trim()}”.`);
}

/** "1, 2, 5-7" → [1, 2, 5, 6, 7]; only holes that are there. */
function readHoles(text: string, count: number): Result<number[]> {
  const holes: number[] = [];
  for (const word of text.split(/[\s,]+|\band\b/).filter((one) => one !== '' && !/^holes?$/i.test(one))) {
    const range = /^(\d+)(?:[-–](\d+))?$/.exec(word);
    const from = Number(range?.[1]);
    const to = Number(range?.[2] ?? range?.[1]);
    if (!range || from < 1 || to < from || to > count)
      return refuse('input', `Expected holes from 1 to ${count}, such as ${EXAMPLE}, got “${word}”.`);
    for (let n = from; n <= to; n += 1) holes.push(n);
  }
  return holes.length > 0
    ? ok(holes)
    : refuse('input', `Expected the holes before the colon, such as ${EXAMPLE}, got none.`);
}

/**
 * Lengths as typed at the bench: "30" for all, "1,2,4: 30; 3: 40" by hole, "rest: 30" for the holes not named.
 * A bare number is millimetres. `count` = how many holes the set has; a hole named twice is refused.
 */
export function readLengths(text: string, count: number): Result<Lengths> {
  const given = new Map<number, number>();
  let allUm: number | null = null;
  for (const part of text.split(';').filter((one) => one.trim() !== '')) {
    const [left, right, more] = part.split(':');
    if (more !== undefined)
      return refuse(
        'input',
        `Expected one colon between holes and length, such as ${EXAMPLE}, got “${part.trim()}”.`,
      );
    const length = readOne(right ?? left ?? '');
    if (!length.ok) return length;
    if (right === undefined || /^\s*(?:the\s+)?(?:rest|others?|all)\s*$/i.test(left ?? '')) {
      if (allUm !== null)
        return refuse('input', `Expected one length for the rest, such as ${EXAMPLE}, got two.`);
      allUm = length.value;
      continue;
    }
    const holes = readHoles(left ?? '', count);
    if (!holes.ok) return holes;
    for (const n of holes.value) {
      if (given.has(n)) return refuse('input', `Expected each hole once, got hole ${n} twice.`);
      given.set(n, length.value);
    }
  }
  if (allUm === null && given.size === 0)
    return refuse('input', `Expected a length, such as ${EXAMPLE}, got “${text.trim()}”.`);
  return ok({ allUm, holes: [...given].map(([n, lengthUm]) => ({ n, lengthUm })) });
}

const mm = (um: number): string => String(um / 1000);

/** The lengths of a set as one would type them; `byHole` in the order of the holes, null = not known. */
export function writeLengths(byHole: readonly (number | null)[]): string {
  const groups = new Map<number, number[]>();
  byHole.forEach((um, i) => {
    if (um !== null) groups.set(um, [...(groups.get(um) ?? []), i + 1]);
  });
  const [first] = groups;
  if (first === undefined) return '';
  if (groups.size === 1 && first[1].length === byHole.length) return mm(first[0]);
  return [...groups].map(([um, holes]) => `${holes.join(',')}: ${mm(um)}`).join('; ');
}
