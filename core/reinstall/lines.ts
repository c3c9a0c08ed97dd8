import { type CountLine, countLines } from '../tally/index.ts';
import type { Situation } from './situation.ts';

const COUNTED = new WeakMap<Situation, readonly CountLine[]>();

/** The count of every set, made once for each plan: what is lacking and what is damaged both ask for it. */
export function linesOf(at: Situation): readonly CountLine[] {
  const had = COUNTED.get(at);
  if (had) return had;
  const lines = countLines(at.state);
  COUNTED.set(at, lines);
  return lines;
}
