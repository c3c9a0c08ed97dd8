import type { JobState } from '../model/tables.ts';
import { isOff } from './job-log.ts';
import { minutesOf } from './times.ts';
import type { Situation } from './situation.ts';
import type { TimeLeft } from './types.ts';
import { situated } from './weighed.ts';

const MINUTE = 60_000;
/** A longer gap between two ticks is a pause, unless taking it off took longer still. Common practice, no source. */
const PAUSE = 30;
/** Fewer say nothing about the pace. */
const ENOUGH = 3;
/** Two-sided 80 % points of Student's t for 2, 3, … degrees of freedom (standard table, from memory). */
const STUDENT = [1.886, 1.638, 1.533, 1.476, 1.44, 1.415, 1.397, 1.383, 1.372];
const NORMAL = 1.282;

/** What is lacking to tell the pace, and what would be enough. */
function notYet(back: number, usable: number): string {
  const soFar =
    back === 0
      ? 'none is back so far'
      : `so far that is ${usable} of the ${back} that ${back === 1 ? 'is' : 'are'} back`;
  return `Not known yet: too little is back to tell the pace. ${ENOUGH} steps back are enough, each with times of when it came off and ticked within ${PAUSE} minutes of the tick before; ${soFar}.`;
}

/** One step put back: how long it took to take off, and to put back. Minutes. */
interface Pair {
  readonly off: number;
  readonly back: number;
}

/**
 * The time left, from how long each removal took and the pace of what is back: the ratio of the two, and how far single
 * steps strayed from it, as an 80 % range for the sum of what is left (ratio estimator, Cochran, Sampling Techniques,
 * from memory). Not known before three steps are back, or where most of what is left has no times. `now` in UTC ms.
 */
export function timeLeftOf(state: JobState, now: number): TimeLeft {
  const at = situated(state, now);
  const { done, left, untimed, others } = sortedOut(at);
  const pairs = pairsOf(at, done);
  const rest = [...left];
  if (rest.length + untimed === 0)
    return {
      known: false,
      sentence:
        others > 0
          ? 'Only filling, checks and giving back are left; they have no times.'
          : 'Nothing is left to put back.',
    };
  if (pairs.length < ENOUGH) return { known: false, sentence: notYet(done.length, pairs.length) };
  if (untimed > rest.length)
    return { known: false, sentence: 'Not known: most of what is left was taken off without times.' };
  const mean = rest.reduce((sum, one) => sum + one, 0) / rest.length;
  const all = [...rest, ...Array.from({ length: untimed }, () => mean)];
  const { low, high } = rangeOf(pairs, all);
  const n = all.length;
  return {
    known: true,
    minutesLow: Math.round(low),
    minutesHigh: Math.round(high),
    from: pairs.length,
    left: n,
    untimed,
    short: said(low, high),
    sentence: `${said(low, high)} for ${n} ${n === 1 ? 'step' : 'steps'}, at the pace of the ${pairs.length} that are back${untimed > 0 ? `; ${untimed} without times` : ''}${others > 0 ? `; ${others} fills, checks and the like not counted` : ''}.`,
  };
}

/** "About 3 to 5 hours": no finer than it is known. */
function said(low: number, high: number): string {
  if (high < 90) {
    const round = (minutes: number) => Math.max(5, Math.round(minutes / 5) * 5);
    const [a, b] = [round(low), round(high)];
    return a === b ? `About ${a} minutes` : `About ${a} to ${b} minutes`;
  }
  const round = (minutes: number) => Math.max(0.5, Math.round(minutes / 30) / 2);
  const [a, b] =
    high < 600 ? [round(low), round(high)] : [Math.max(1, Math.round(low / 60)), Math.round(high / 60)];
  return a === b ? `About ${a} hours` : `About ${a} to ${b} hours`;
}

function rangeOf(pairs: readonly Pair[], left: readonly number[]): { low: number; high: number } {
  const k = pairs.length;
  const sumOff = pairs.reduce((sum, one) => sum + one.off, 0);
  const ratio = pairs.reduce((sum, one) => sum + one.back, 0) / sumOff;
  // Spread per root minute of taking off, so that a long step may stray further than a short one.
  const spread = pairs.reduce((sum, one) => sum + (one.back - ratio * one.off) ** 2 / one.off, 0) / (k - 1);
  const total = left.reduce((sum, one) => sum + one, 0);
  const error = Math.sqrt(spread * total * (1 + total / sumOff)) * (STUDENT[k - 3] ?? NORMAL);
  const middle = ratio * total;
  return { low: Math.max(middle / 4, middle - error), high: middle + error };
}

interface Sorted {
  /** Nodes of removals that are back. */
  readonly done: readonly number[];
  /** Minutes that what is left took to take off. */
  readonly left: readonly number[];
  readonly untimed: number;
  /** Open steps that are no removal: fills, bleeding, giving back. */
  readonly others: number;
}

function sortedOut(at: Situation): Sorted {
  const done: number[] = [];
  const left: number[] = [];
  let untimed = 0;
  let others = 0;
  at.graph.nodes.forEach((node, i) => {
    const removal = at.graph.log.removals[node.index];
    const isDone = at.progress[i]?.done === true;
    if (node.kind !== 'S' || !removal || !isOff(removal)) {
      if (!isDone && node.kind !== 'K') others += 1;
      return;
    }
    const minutes = minutesOf(removal);
    if (isDone) done.push(i);
    else if (minutes === null) untimed += 1;
    else left.push(minutes);
  });
  return { done, left, untimed, others };
}

/** How long each step that is back took: from the tick before it, unless that lies a pause ago, to its own last one. */
function pairsOf(at: Situation, done: readonly number[]): Pair[] {
  const spans = new Map<number, { first: number; last: number }>();
  const times: number[] = [];
  for (const deed of at.state.deed) {
    times.push(deed.at);
    const node = at.graph.stepOfThing(deed.thingId);
    const span = spans.get(node);
    if (span) {
      span.first = Math.min(span.first, deed.at);
      span.last = Math.max(span.last, deed.at);
    } else spans.set(node, { first: deed.at, last: deed.at });
  }
  times.sort((a, b) => a - b);
  return done.flatMap((node) => {
    const removal = at.graph.log.removals[at.graph.nodes[node]?.index ?? -1];
    const off = removal ? minutesOf(removal) : null;
    const span = spans.get(node);
    if (off === null || !span) return [];
    const before = lastBelow(times, span.first);
    const gap = before === null ? Number.POSITIVE_INFINITY : (span.first - before) / MINUTE;
    const own = (span.last - span.first) / MINUTE;
    const back = own + (gap <= Math.max(PAUSE, 2 * off) ? gap : 0);
    // Ticked in one go after a pause, or left half done for days: no time can be read from that.
    return back <= 0 || back > Math.max(4 * PAUSE, 8 * off) ? [] : [{ off, back }];
  });
}

/** The greatest of a sorted list below a value; null = none. */
function lastBelow(sorted: readonly number[], value: number): number | null {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return sorted[low - 1] ?? null;
}
