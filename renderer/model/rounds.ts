import type { JobView } from '../../core/contract/views.ts';
import { openHoles, roundFigures, TIGHT } from '../../core/drawing/joint.ts';
import type { Round } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';

type Step = JobView['plan']['steps'][number];
type Hole = ReturnType<typeof openHoles>[number];

/** How the holes of a joint are walked: which round is at hand, and which hole is lit in it. */
interface Walk {
  readonly rounds: readonly Round[];
  /** Holes in the order of the round at hand. */
  readonly order: readonly string[];
  readonly nextId: string | null;
  readonly nextRound: string;
  /** Holes that have not been through a round of this name. */
  readonly lagging: (round: string) => readonly string[];
}

interface Sequence {
  readonly order: readonly string[];
  readonly around: readonly string[];
}

const AROUND = 'once around';

/** Index of the round that makes a hole tight. */
const fullOf = (names: readonly string[]): number => names.length - 1 - (names.at(-1) === AROUND ? 1 : 0);

/**
 * Which round a hole was last through: −1 while it is out, the last one once nothing is left to do on it. `skipped`:
 * another hole was made tight at once, so nobody walks the shares.
 */
function through(hole: Hole, names: readonly string[], skipped: boolean): number {
  const full = fullOf(names);
  switch (hole.mark) {
    case 'out':
    case 'left out':
    case 'blocked':
      return -1;
    case 'started':
    case 'later':
      if (hole.round === '' && skipped) return full - 1;
      return Math.max(0, names.indexOf(hole.round));
    case 'tightened':
      return hole.round === AROUND ? names.length - 1 : full;
    case 'paint-checked':
      return names.length - 1;
  }
}

/**
 * Walks a joint: by hand until all are started, then round by round in its order, the last once around. Where a hole
 * stands is read from the record, so that a reload and another window go on at the same hole. `noted`: rounds that some hole was written down for since it came off.
 */
export function walkOf(step: Step, sequence: Sequence, noted: ReadonlySet<string>): Walk {
  const holes = openHoles(step);
  const figures = roundFigures(step, null);
  // Where no torque is known there is nothing to share out: by hand, then tight.
  const names = figures.length > 0 ? figures.map((round) => round.name) : ['snug', '100 %'];
  const skipped =
    holes.some((hole) => TIGHT.has(hole.mark)) &&
    holes.every((hole) => hole.mark !== 'started' || hole.round === '');
  const reached = new Map(holes.map((hole) => [hole.positionId, through(hole, names, skipped)]));
  const at = Math.min(...reached.values(), names.length - 1) + 1;
  const order = names[at] === AROUND ? sequence.around : sequence.order;
  const nextId = order.length > 1 ? (order.find((id) => (reached.get(id) ?? 0) < at) ?? null) : null;
  const countOf = (round: number): number =>
    holes.filter((hole) => (reached.get(hole.positionId) ?? -1) >= round).length;
  const rounds = figures.map((round, i): Round => {
    // Made tight at once: nobody wrote that the shares before it were walked, so they are not shown as done.
    const missed = i > 0 && i < Math.min(at, fullOf(names)) && !noted.has(round.name);
    const progress = i === at && countOf(at) > 0 ? say.ofHoles(countOf(at), holes.length) : '';
    return {
      id: round.name,
      share: say.roundNames[round.name] ?? round.name,
      value: round.value || say.allHoles,
      unit: round.unit,
      about: missed
        ? say.roundMissed
        : i === 0
          ? say.ofHoles(countOf(0), holes.length)
          : [say.roundAbout(i, round.name), progress].filter(Boolean).join(', '),
      state: missed ? 'not noted' : i < at ? 'done' : i === at ? 'now' : 'to come',
    };
  });
  return {
    rounds,
    order,
    nextId: at < names.length ? nextId : null,
    nextRound: nextId === null ? '' : (names[at] ?? ''),
    lagging: (round) =>
      holes.map((hole) => hole.positionId).filter((id) => (reached.get(id) ?? -1) < names.indexOf(round)),
  };
}
