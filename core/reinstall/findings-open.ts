import { of } from './job-log.ts';
import type { Draft } from './draft.ts';
import { stepName } from './draft.ts';
import type { Situation } from './situation.ts';
import { isBlocked, isTight, last, standing } from './standing.ts';
import type { FindingCode, Missing } from './types.ts';

/** What was left open under a step that was passed: each open thing is a stop of its own. */
export function openFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  at.graph.nodes.forEach((node, i) => {
    const progress = at.progress[i];
    if (!progress || at.past[i] !== 1 || node.kind === 'K') return;
    for (const missing of progress.missing) {
      const draft = missingDraft(at, i, missing);
      if (draft) drafts.push(draft);
    }
  });
  return drafts;
}

const LOOSE = ['fastener.loose', 'Tighten it and tick it.'] as const;

const OPEN: Record<Missing['what'], readonly [FindingCode, string] | null> = {
  tightened: LOOSE,
  started: ['fastener.short', 'Put one in, leave it out with a reason, or put one on the list to get.'],
  fitted: ['part.missing', 'Fit it, or leave it out with a reason.'],
  joined: ['connection.open', 'Join it and tick it.'],
  'taken out': ['temporary.in-place', 'Take it out and tick it.'],
  measured: ['measure.missing', 'Measure it and write the value down.'],
  filled: ['fluid.open', 'Fill it and write the amount down.'],
  'cold leak checked': ['fluid.open', 'Look for leaks and tick it.'],
  bled: ['fluid.open', 'Bleed it and tick it.'],
  'hot leak checked': ['fluid.open', 'Look for leaks under pressure and tick it.'],
  'given back': ['gate.open', 'Give it back and tick it.'],
  done: null,
};

function missingDraft(at: Situation, node: number, missing: Missing): Draft | null {
  const kind = at.graph.nodes[node]?.kind;
  const position = at.graph.log.position.get(missing.thingId);
  if (kind === 'T')
    return {
      code: 'torque.later',
      severity: 'stop',
      subjects: [missing.thingId],
      sentence: missing.sentence,
      clears: 'Tighten it finally and tick it.',
      node,
    };
  const found = missing.sentence.endsWith('slackened, not tight.') ? LOOSE : OPEN[missing.what];
  if (!found) return null;
  // A blocked hole has its finding from the day it was logged.
  if (position && isBlocked(at.graph.log, position)) return null;
  const empty = position && missing.what === 'tightened' && missing.sentence.endsWith('empty.');
  const code = empty ? 'fastener.short' : found[0];
  return {
    code,
    severity: 'stop',
    // Filling, bleeding and each leak check of one fluid stand open by themselves: passing one passes no other.
    subjects: code === 'fluid.open' ? [missing.thingId, missing.what] : [missing.thingId],
    sentence: empty ? emptyHole(at, node, missing.thingId) : missing.sentence,
    clears: empty ? 'Put one in, leave it out with a reason, or put one on the list to get.' : found[1],
    node,
  };
}

function emptyHole(at: Situation, node: number, positionId: string): string {
  const { log } = at.graph;
  const position = log.position.get(positionId);
  const set = log.set.get(position?.setId ?? '');
  const total = of(log.positionsOf, set?.id ?? '').length;
  const stow = log.stow.get(position?.stowId ?? set?.stowId ?? '');
  const bag = stow ? ` ${stow.kind[0]?.toUpperCase()}${stow.kind.slice(1)} ${stow.label}.` : '';
  return `${set?.name || stepName(at, node)}: hole ${position?.n ?? '?'} of ${total} is empty.${bag}`;
}

/** Blocked holes: known from the day they were logged, in the way until a repair is written down. */
export function blockedFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  at.content.forEach((content, node) => {
    if (at.graph.nodes[node]?.kind === 'T') return;
    for (const { position, set, mark } of content.holes) {
      if (!isBlocked(at.graph.log, position) || mark === 'left out' || isTight(mark)) continue;
      drafts.push({
        code: 'hole.blocked',
        severity: 'stop',
        subjects: [position.id],
        sentence: `${set.name || stepName(at, node)}: hole ${position.n} is blocked, ${position.fateWhy || position.condition || 'no reason given'}.`,
        clears: 'On the way back it waits until a repair is written down.',
        node,
      });
    }
  });
  return drafts;
}

/** Temporaries that were taken out before what they hold was fast, or are in while the machine may turn. */
export function temporaryFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  at.content.forEach((content, node) => {
    for (const temporary of content.temporaries) {
      const out = last(standing(at.graph.log, temporary.id), 'taken out');
      if (!out) continue;
      if (out.value !== null && out.value < temporary.qty)
        drafts.push({
          code: 'item.unaccounted',
          severity: 'stop',
          subjects: [temporary.id],
          sentence: `${temporary.name}: ${temporary.qty} went in, ${out.value} came out.`,
          clears: 'Find the rest, or search and write it off by name.',
          node,
          facts: [out.id],
        });
      const holds = temporary.role === 'supports' || temporary.role === 'cages';
      if (holds && releasedEarly(at, node, out.at))
        drafts.push({
          code: 'temporary.hold',
          severity: 'stop',
          subjects: [temporary.id],
          sentence: `${temporary.name} was taken out before ${stepName(at, node)} was fast.`,
          clears: 'Put it back until everything of this step is tight, or say why it may stay out.',
          node,
          facts: [out.id],
        });
    }
  });
  return drafts;
}

const FAST: readonly string[] = ['tightened', 'paint-checked', 'done'];

/** Whether a hole of the step was not tight yet when its support or cage came out. */
function releasedEarly(at: Situation, node: number, outAt: number): boolean {
  const content = at.content[node];
  if (!content || content.holes.length + content.parts.length === 0) return false;
  const progress = at.progress[node];
  if (progress?.wholeAt && progress.wholeAt <= outAt) return false;
  for (const hole of content.holes) {
    if (hole.mark === 'left out') continue;
    // Snug is fast where the final tightening comes later; that one comes long after the support is out.
    const fast = hole.set.laterWhen === null ? FAST : [...FAST, 'started'];
    const first = hole.standing.deeds.find((one) => fast.includes(one.what));
    if (!first || first.at > outAt) return true;
  }
  return content.parts.some((part) => {
    const fitted = last(standing(at.graph.log, part.id, part.removalId), 'fitted', 'done');
    return part.fate !== 'leave out' && (!fitted || fitted.at > outAt);
  });
}
