import { good, refuse, showNumber, type Basis, type Outcome } from './outcome.ts';
import { THREADS, type Thread } from './threads.ts';
import { majorBand } from './tolerance.ts';

/** Reading error of a caliper on a thread, mm: kept on top of the tolerance band. */
const CALIPER_MM = 0.05;

export interface ThreadMeasure {
  /** Measured over the crests, mm, 1 to 60. */
  readonly diameterMm: number;
  /** Measured pitch, mm, 0.2 to 8; give either this or threads per inch. */
  readonly pitchMm?: number | undefined;
  /** Threads per inch, 3 to 100. */
  readonly tpi?: number | undefined;
}

export interface ThreadCandidate {
  /** 1 is best; candidates that the measurement cannot tell apart share a rank. */
  readonly rank: number;
  readonly designation: string;
  readonly thread: Thread;
  /** Measured minus nominal diameter, mm: a new external thread measures below nominal. */
  readonly diameterDeviationMm: number;
  /** How far outside the 6g or 2A band the measurement lies, mm; 0 inside. */
  readonly outsideBandMm: number;
  /** Measured minus nominal pitch, mm; absent where no pitch was measured. */
  readonly pitchDeviationMm?: number;
  readonly says: string;
}

/** Two threads that are easily taken for one another. */
export interface Trap {
  readonly between: readonly [string, string];
  readonly sentence: string;
}

export interface ThreadIdentity extends Basis {
  readonly candidates: readonly ThreadCandidate[];
  readonly traps: readonly Trap[];
}

/** Pipe threads are measured as something else: sizes in mm and threads per inch, from memory (ISO 228-1, ISO 7-1, ASME B1.20.1). */
const PIPE_THREADS: readonly (readonly [string, number, number])[] = [
  ['G 1/8 pipe thread', 9.728, 28],
  ['G 1/4 pipe thread', 13.157, 19],
  ['G 3/8 pipe thread', 16.662, 19],
  ['G 1/2 pipe thread', 20.955, 14],
  ['G 3/4 pipe thread', 26.441, 14],
  ['1/8-27 NPT taper thread', 10.287, 27],
  ['1/4-18 NPT taper thread', 13.716, 18],
  ['3/8-18 NPT taper thread', 17.145, 18],
  ['1/2-14 NPT taper thread', 21.336, 14],
];

/**
 * Designations that fit a measured external thread, ranked with their deviations, and the traps among them.
 * Never one answer where the tables know several. Refuses diameters outside 1 to 60 mm and pitches outside 0.2 to 8 mm.
 */
export function identifyThread(measure: ThreadMeasure): Outcome<ThreadIdentity> {
  const { diameterMm, pitchMm, tpi } = measure;
  if (!(diameterMm >= 1 && diameterMm <= 60)) {
    return refuse('identify.diameter', 'a measured diameter from 1 to 60 mm', `${showNumber(diameterMm)} mm`);
  }
  if (pitchMm !== undefined && tpi !== undefined) {
    return refuse(
      'identify.pitch',
      'a pitch or threads per inch, not both',
      `${pitchMm} mm and ${tpi} per inch`,
    );
  }
  if (pitchMm !== undefined && !(pitchMm >= 0.2 && pitchMm <= 8)) {
    return refuse('identify.pitch', 'a pitch from 0.2 to 8 mm', `${showNumber(pitchMm)} mm`);
  }
  if (tpi !== undefined && !(tpi >= 3 && tpi <= 100)) {
    return refuse('identify.tpi', '3 to 100 threads per inch', tpi);
  }
  const pitch = pitchMm ?? (tpi === undefined ? undefined : 25.4 / tpi);
  const scored = THREADS.map((thread) => scoreThread(thread, diameterMm, pitch))
    .filter(
      (s) =>
        s.outside <= 0.45 && (s.pitchOff === undefined || Math.abs(s.pitchOff) <= 0.15 * s.thread.pitchMm),
    )
    .sort(better);
  const candidates = rankAll(pitch === undefined ? bySize(scored) : scored, diameterMm).slice(0, 8);
  return good({
    candidates,
    traps: trapsOf(candidates, diameterMm, pitch),
    formula: 'deviation from the band of a new external thread (6g, 2A), then from the pitch',
    inputs: [
      `diameter ${showNumber(diameterMm)} mm (${showNumber(Number((diameterMm / 25.4).toFixed(4)))} in)`,
      tpi !== undefined
        ? `${showNumber(tpi)} threads per inch (${showNumber(Number((25.4 / tpi).toFixed(3)))} mm)`
        : pitchMm !== undefined
          ? `pitch ${showNumber(pitchMm)} mm (${showNumber(Number((25.4 / pitchMm).toFixed(1)))} per inch)`
          : 'pitch not measured',
    ],
    source: 'ISO 261, ISO 965-1 (6g), ASME B1.1 (2A)',
    limits: [
      'For external threads; a tapped hole is measured with a plug or with the bolt that came out of it.',
      'Wear and stretching make a thread measure smaller, plating larger; a caliper reads to about 0.05 mm.',
      ...(pitch === undefined
        ? ['Without a pitch, threads of one diameter cannot be told apart: hold a thread gauge to it.']
        : []),
      ...(candidates.length === 0
        ? ['No thread in the tables here is near: it may be a pipe, Whitworth or special thread.']
        : []),
    ],
    cautions: [
      'Try it by hand in a known nut: it must run several turns without force before it counts as known.',
    ],
  });
}

interface Scored {
  readonly thread: Thread;
  readonly outside: number;
  readonly pitchOff: number | undefined;
  /** 0: the typed pitch is this thread's; 1: it is near. Beyond the caliper's error comes one step later. */
  readonly tier: number;
  readonly score: number;
}

/**
 * A pitch typed as a gauge shows it (1.25, 18 per inch) decides before the diameter does: 0.7 mm and 36 per inch differ
 * by 0.006 mm, which no caliper reading tells apart, but the words on the gauge do.
 */
function scoreThread(thread: Thread, diameterMm: number, pitch: number | undefined): Scored {
  const band = majorBand(thread);
  const outside = Math.max(0, band.lowMm - diameterMm, diameterMm - band.highMm);
  const pitchOff = pitch === undefined ? undefined : pitch - thread.pitchMm;
  const exact = pitchOff === undefined || Math.abs(pitchOff) < 0.003;
  const tier = (exact ? 0 : 1) + (outside <= CALIPER_MM + 0.001 ? 0 : 2);
  const pitchScore = pitchOff === undefined ? 0 : (pitchOff / (0.02 * thread.pitchMm)) ** 2;
  return {
    thread,
    outside,
    pitchOff,
    tier,
    score: (outside / CALIPER_MM) ** 2 + pitchScore + rarity(thread),
  };
}

function better(a: Scored, b: Scored): number {
  return a.tier - b.tier || a.score - b.score || b.thread.nominalMm - a.thread.nominalMm;
}

/** Without a pitch the size is all that is known: threads of one size stand together. */
function bySize(scored: readonly Scored[]): readonly Scored[] {
  const sizes = [...new Set(scored.map((s) => s.thread.size))];
  return sizes.flatMap((size) => scored.filter((s) => s.thread.size === size));
}

/** Ordinary sizes before rare ones where the measurement does not decide. */
function rarity(thread: Thread): number {
  const series = thread.series === 'coarse' || thread.series === 'UNC' ? 0 : 0.05;
  return (
    series +
    (thread.confidence === 'memory' ? 0.05 : 0) +
    (/^M(3\.5|7|14|18|22|27|33)/.test(thread.designation) ? 0.02 : 0)
  );
}

function rankAll(scored: readonly Scored[], diameterMm: number): readonly ThreadCandidate[] {
  let rank = 0;
  let last: Scored | undefined;
  return scored.map((s) => {
    const alike = last && s.pitchOff === undefined && last.thread.size === s.thread.size;
    if (!alike) rank += 1;
    last = s;
    const deviation = diameterMm - s.thread.nominalMm;
    const band = s.outside <= 1e-9 ? 'inside' : `${s.outside.toFixed(2)} mm outside`;
    return {
      rank,
      designation: s.thread.designation,
      thread: s.thread,
      diameterDeviationMm: deviation,
      outsideBandMm: s.outside,
      ...(s.pitchOff === undefined ? {} : { pitchDeviationMm: s.pitchOff }),
      says: `${sayThread(s.thread)}: ${signed(deviation)} mm from nominal, ${band} the ${majorBand(s.thread).tolerance} band${s.pitchOff === undefined ? '' : `, pitch ${signed(s.pitchOff)} mm`}`,
    };
  });
}

/** "M8 (pitch 1.25 mm, coarse)", "5/16-18 UNC (7.94 mm)". */
export function sayThread(thread: Thread): string {
  return thread.system === 'metric'
    ? `${thread.designation} (pitch ${showNumber(thread.pitchMm)} mm, ${thread.series})`
    : `${thread.designation} ${thread.series} (${thread.nominalMm.toFixed(2)} mm, ${thread.tpi ?? 0} per inch)`;
}

function signed(value: number): string {
  const digits = Math.abs(value).toFixed(2);
  return digits === '0.00' ? digits : `${value < 0 ? '−' : '+'}${digits}`;
}

/** Designation with its pitch, so that a trap names both halves. */
function full(thread: Thread): string {
  return thread.system === 'metric' && thread.series === 'coarse'
    ? `${thread.size}x${thread.pitchMm}`
    : thread.designation;
}

/**
 * The best candidates against every thread of the other system, or the next pitch, that starts by hand on it.
 * Two threads are a trap when their diameters are within 6 % and their pitches within 15 %, or one size has both pitches.
 */
function trapsOf(
  candidates: readonly ThreadCandidate[],
  diameterMm: number,
  pitch: number | undefined,
): readonly Trap[] {
  const best = candidates.filter((c) => c.rank <= 2).slice(0, 3);
  const traps = new Map<string, Trap>();
  for (const { thread } of best) {
    for (const other of THREADS) {
      if (!looksLike(thread, other)) continue;
      // Metric before inch, coarse before fine.
      const before =
        thread.system === other.system ? thread.pitchMm > other.pitchMm : thread.system === 'metric';
      const [one, two] = before ? [thread, other] : [other, thread];
      const pair = [full(one), full(two)] as const;
      traps.set(pair.join('|'), { between: pair, sentence: sayTrap(one, two) });
    }
  }
  for (const [name, mm, tpi] of PIPE_THREADS) {
    const near =
      Math.abs(mm - diameterMm) <= 0.35 &&
      (pitch === undefined || Math.abs(25.4 / tpi - pitch) <= 0.12 * pitch);
    const first = best[0];
    if (near) {
      traps.set(name, {
        between: [first ? full(first.thread) : `${showNumber(diameterMm)} mm`, name],
        sentence: `A ${name} (${mm.toFixed(2)} mm, ${tpi} per inch) measures much the same: look whether the joint carries a fluid.`,
      });
    }
  }
  return [...traps.values()];
}

function looksLike(thread: Thread, other: Thread): boolean {
  if (thread.designation === other.designation) return false;
  const diameters = Math.abs(thread.nominalMm - other.nominalMm) / thread.nominalMm;
  const pitches = Math.abs(thread.pitchMm - other.pitchMm) / thread.pitchMm;
  // One size with the next pitch (M10x1.5 and M10x1.25) is taken for the other as easily as an inch thread.
  if (thread.system === other.system) return thread.size === other.size && pitches <= 0.25;
  return diameters <= 0.06 && pitches <= 0.15;
}

function sayTrap(thread: Thread, other: Thread): string {
  const apart = Math.abs(thread.nominalMm - other.nominalMm);
  const diameters = apart < 0.005 ? 'of one diameter' : `${apart.toFixed(2)} mm apart in diameter`;
  const pitches = Math.abs(thread.pitchMm - other.pitchMm).toFixed(2);
  return `${full(thread)} and ${full(other)} are ${diameters} and ${pitches} mm apart in pitch: one starts in the other by hand, then jams and strips.`;
}
