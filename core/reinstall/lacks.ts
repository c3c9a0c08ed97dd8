import type { Row } from '../model/tables.ts';
import { type CountLine, describeSpec, newParts } from '../tally/index.ts';
import { allocate, promisedFor } from './allocation.ts';
import { of } from './job-log.ts';
import type { Situation } from './situation.ts';
import { isBlocked, isIn, last, standing } from './standing.ts';
import type { Lack } from './types.ts';

/** Lacks by node: what each step waits for. */
export function lacksOf(at: Situation): Lack[][] {
  const lacks: Lack[][] = at.graph.nodes.map(() => []);
  const add = (node: number, lack: Lack) => {
    if (node >= 0 && !at.progress[node]?.done) lacks[node]?.push(lack);
  };
  addAway(at, add);
  addBlocked(at, add);
  addNewParts(at, add);
  addShort(at, add);
  addCures(at, add);
  addNeverPutOn(at, add);
  addClosing(at, add);
  return lacks;
}

type Add = (node: number, lack: Lack) => void;

function addAway(at: Situation, add: Add): void {
  for (const away of at.state.away) {
    if (away.backAt !== null) continue;
    const name = at.graph.log.part.get(away.thingId)?.name || 'A part of this step';
    const where = away.toWhom === '' ? 'away' : `away, with ${away.toWhom}`;
    add(at.graph.stepOfThing(away.thingId), {
      code: 'away',
      thingId: away.thingId,
      qty: 1,
      until: away.due,
      sentence: `${name} is ${where}.`,
    });
  }
}

function addBlocked(at: Situation, add: Add): void {
  at.content.forEach((content, node) => {
    for (const { position, set, mark } of content.holes)
      if (mark === 'blocked' && isBlocked(at.graph.log, position))
        add(node, {
          code: 'repair',
          thingId: position.id,
          qty: 1,
          until: null,
          sentence: `${set.name || 'Fasteners'}, hole ${position.n} is blocked: ${position.fateWhy || position.condition || 'no reason given'}. It waits for its repair.`,
        });
  });
}

function addNewParts(at: Situation, add: Add): void {
  for (const { part, lacking } of newParts(at.state)) {
    if (lacking === 0) continue;
    const lack: Lack = {
      code: 'to get',
      thingId: part.id,
      qty: lacking,
      until: promisedFor(at, part.id, lacking),
      sentence: `${part.name || 'A part'} must be new: ${lacking} to get.`,
    };
    add(at.graph.stepOfThing(part.id), lack);
    // What is carried over to it waits at the bench as well: there is nothing yet to put it on.
    for (const carried of at.state.part)
      if (carried.fate === 'carry over' && carried.carryToId === part.id)
        add(at.graph.stepOfThing(carried.id), lack);
  }
}

/** Holes without a piece, once all stock is given out. */
function addShort(at: Situation, add: Add): void {
  const spec = new Map(at.state.spec.map((one) => [one.id, one]));
  for (const { line, lacking, until } of allocate(at).short)
    for (const node of shortNodes(at, line, at.graph.stepOfThing(line.setId ?? '')))
      add(node, {
        code: line.mustRenew > 0 || line.mustBeNew ? 'to get' : 'short',
        thingId: line.setId ?? '',
        qty: lacking,
        until,
        sentence: shortSentence(at, line, lacking, spec),
      });
}

/** The step of the set, or those of its holes that wait for more than one part, where only they are open. */
function shortNodes(at: Situation, line: CountLine, home: number): number[] {
  const open = (node: number) =>
    at.content[node]?.holes.some((hole) => !isIn(hole.mark) && hole.mark !== 'left out');
  const shared = of(at.graph.log.positionsOf, line.setId ?? '')
    .map((position) => at.graph.shared.get(position.id))
    .filter((node): node is number => node !== undefined && open(node) === true);
  return home >= 0 && (open(home) || shared.length === 0) ? [home] : shared.slice(-1);
}

function shortSentence(
  at: Situation,
  line: CountLine,
  lacking: number,
  spec: ReadonlyMap<string, Row<'spec'>>,
): string {
  const own = spec.get(line.specId ?? '');
  const name = own ? describeSpec(own) : line.what;
  const set = at.graph.log.set.get(line.setId ?? '')?.name;
  const of2 = set ? ` (${set})` : '';
  return line.mustBeNew
    ? `${name}${of2} must be new: ${lacking} to get.`
    : `${name}${of2}: ${line.toFill} to fill, ${line.usable} usable in hand, ${lacking} short.`;
}

/** A sealant that has not cured holds filling or running; it ends by itself. */
function addCures(at: Situation, add: Add): void {
  for (const { node, consumable, until } of cures(at)) {
    if (until <= at.now) continue;
    const minutes = Math.ceil((until - at.now) / 60_000);
    add(node, {
      code: 'cure',
      thingId: consumable.thingId,
      qty: 0,
      until,
      sentence: `${consumable.name || consumable.kind} is still curing: ${minutes} minutes to go.`,
    });
  }
}

/** Its step is done and nobody wrote down when it was put on: nobody can say that it has cured. */
function addNeverPutOn(at: Situation, add: Add): void {
  for (const consumable of at.state.consumable) {
    const { cureMinutes, cureBefore } = consumable;
    if (consumable.putAt !== null || cureMinutes === null || cureBefore === null) continue;
    const own = at.graph.stepOfThing(consumable.thingId);
    if (!at.progress[own]?.done || !wentBack(at, own)) continue;
    for (const node of waitingForCure(at, cureBefore))
      add(node, {
        code: 'cure',
        thingId: consumable.thingId,
        qty: 0,
        until: null,
        sentence: `${consumable.name || consumable.kind} cures ${cureMinutes} minutes, and nobody wrote down when it was put on. Tick it in its step.`,
      });
  }
}

/** Whether a hand put something of the step back: one with nothing to put back is done by itself, its sealant unused. */
function wentBack(at: Situation, node: number): boolean {
  const { parts, holes, connections } = at.content[node] ?? { parts: [], holes: [], connections: [] };
  const ids = [
    at.graph.nodes[node]?.thingId ?? '',
    ...[...parts, ...connections].map((row) => row.id),
    ...holes.map((hole) => hole.position.id),
  ];
  return ids.some((id) => of(at.graph.log.deedsOf, id).some((deed) => PUT_BACK.has(deed.what)));
}

const PUT_BACK: ReadonlySet<Row<'deed'>['what']> = new Set([
  'started',
  'tightened',
  'fitted',
  'joined',
  'done',
]);

/** What waits for a cure: filling, or whatever brings energy. */
function waitingForCure(at: Situation, before: NonNullable<Row<'consumable'>['cureBefore']>): number[] {
  return before === 'fill' ? [...at.graph.closing.values()] : live(at);
}

/** Each cure with the steps that wait for it, and when it is over. Filling waits, or whatever brings energy. */
export function cures(at: Situation): { node: number; consumable: Row<'consumable'>; until: number }[] {
  const found: { node: number; consumable: Row<'consumable'>; until: number }[] = [];
  for (const consumable of at.state.consumable) {
    if (consumable.putAt === null || consumable.cureMinutes === null || consumable.cureBefore === null)
      continue;
    const until = consumable.putAt + consumable.cureMinutes * 60_000;
    for (const node of waitingForCure(at, consumable.cureBefore)) found.push({ node, consumable, until });
  }
  return found;
}

/** Isolations that bring back energy to run with, bleeding and leak checks with it, and own steps of live work. */
function live(at: Situation): number[] {
  const { graph } = at;
  const nodes: number[] = [];
  for (const [id, node] of graph.givenBack) {
    const energy = graph.log.isolation.get(id)?.energy;
    if (energy === 'electricity' || energy === 'ignition' || energy === 'pressure' || energy === 'motion')
      nodes.push(node);
  }
  for (const [id, node] of graph.bleeding)
    if ((graph.log.fluid.get(id)?.liveEnergy ?? null) !== null) nodes.push(node);
  for (const [id, node] of graph.own)
    if ((graph.log.ownStep.get(id)?.liveEnergy ?? null) !== null) nodes.push(node);
  return nodes;
}

/** Re-checks come after the job is closed. */
function addClosing(at: Situation, add: Add): void {
  if (at.state.job.phase !== 'open') return;
  at.graph.nodes.forEach((node, i) => {
    if (node.kind !== 'K') return;
    add(i, {
      code: 'after closing',
      thingId: node.thingId,
      qty: 0,
      until: at.state.job.recheckDue,
      sentence: 'It comes after the job is closed.',
    });
  });
}

/** Whether anything was put on a consumable's thing in the current round. */
export function wasPutOn(at: Situation, consumable: Row<'consumable'>): boolean {
  return (
    consumable.putAt !== null || last(standing(at.graph.log, consumable.thingId), 'put on') !== undefined
  );
}
