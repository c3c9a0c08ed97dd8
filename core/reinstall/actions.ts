import type { Row } from '../model/tables.ts';
import type { Content, Hole } from './content.ts';
import type { PlanNode } from './graph.ts';
import { fluidActions } from './actions-fluid.ts';
import { aids, takeOut } from './actions-temporary.ts';
import { finalActions, locators, threads } from './actions-threads.ts';
import { of } from './job-log.ts';
import { wasPutOn } from './lacks.ts';
import type { Situation } from './situation.ts';
import { isBlocked, isIn, last, standing } from './standing.ts';
import { action } from './action.ts';
import type { StepAction } from './types.ts';

/** What is done in one step, in order. */
export function actionsOf(at: Situation, node: number): StepAction[] {
  const one = at.graph.nodes[node] as PlanNode;
  const content = at.content[node] as Content;
  switch (one.kind) {
    case 'S':
    case 'F':
    case 'B':
      return mechanical(at, one, content);
    case 'C1':
    case 'C2':
      return fluidActions(at, one, content);
    case 'I':
      return [...mechanicalIfAny(at, one, content), giveBack(at, one)];
    case 'T':
      return finalActions(content);
    case 'U':
    case 'K': {
      const own = at.graph.log.ownStep.get(one.thingId);
      const done =
        last(standing(at.graph.log, one.thingId), 'done', 'measured', 'paint-checked') !== undefined;
      const sentence = own
        ? [own.title, own.body].filter((text) => text !== '').join(': ')
        : 'Check the torque once more.';
      return [action(own ? 'own step' : 'recheck', sentence, [one.thingId], done)];
    }
  }
}

function mechanicalIfAny(at: Situation, one: PlanNode, content: Content): StepAction[] {
  return content.parts.length +
    content.holes.length +
    content.connections.length +
    content.temporaries.length >
    0
    ? mechanical(at, one, content)
    : [];
}

/**
 * The reverse of the actions as logged, and on top of it what the trade does in this order: blockers out, faces clean,
 * repaired holes checked, what sits behind the part, seals, sealant last, hidden connections, the part to its marks,
 * every thread by hand, then tight, the other connections, supports and cages out only now, measurements.
 */
function mechanical(at: Situation, one: PlanNode, content: Content): StepAction[] {
  const hidden = content.connections.filter((connection) => connection.hidden);
  const open = content.connections.filter((connection) => !connection.hidden);
  const unions = open.filter((connection) => isUnion(connection));
  const plain = open.filter((connection) => !isUnion(connection));
  // A clamp is set once its hose is on.
  const clamps = plain.length === 0 ? [] : content.holes.filter((hole) => isClamp(at, hole));
  const role = (...roles: Row<'temporary'>['role'][]) =>
    content.temporaries.filter((row) => roles.includes(row.role));
  const inside = content.parts.filter(
    (part) => part.ownPlace || ['sleeve', 'key', 'shim'].includes(part.kind),
  );
  const seals = content.parts.filter((part) => ['seal', 'gasket', 'o-ring', 'filter'].includes(part.kind));
  const main = content.parts.filter((part) => !inside.includes(part) && !seals.includes(part));
  return [
    ...aids(at, one),
    ...role('blocks').map((row) => takeOut(at, row)),
    ...clean(at, content),
    ...content.holes.filter((hole) => repaired(at, hole)).map((hole) => checkHole(hole)),
    ...locators(at, content),
    ...[...inside, ...seals].map((part) => fit(at, part)),
    ...consumables(at, one, content),
    ...hidden.map((connection) => join(at, connection)),
    ...main.map((part) => fit(at, part)),
    ...content.marks.map((mark) => matchAction(at, one, mark)),
    ...logged(at, one),
    ...threads(at, { ...content, holes: content.holes.filter((hole) => !clamps.includes(hole)) }, unions),
    ...unions.map((connection) => join(at, connection)),
    ...plain.map((connection) => join(at, connection)),
    ...threads(at, { ...content, holes: clamps }, []),
    ...role('supports', 'cages', 'locks', 'aid').map((row) => takeOut(at, row)),
    ...content.measures.map((measure) => measureAction(at, measure)),
    ...closeDrain(at, one),
  ];
}

const isClamp = (at: Situation, hole: Hole): boolean =>
  at.graph.log.spec.get(hole.set.specId)?.kind === 'clamp';

const isUnion = (connection: Row<'connection'>): boolean =>
  connection.kind === 'union' ||
  connection.kind === 'pipe' ||
  ['flare', 'taper thread', 'port'].includes(connection.joint);

function clean(at: Situation, content: Content): StepAction[] {
  const wanted = content.parts.filter(
    (part) => part.fate === 'clean and refit' || ['gasket', 'seal', 'o-ring'].includes(part.kind),
  );
  if (wanted.length === 0) return [];
  const done = wanted.every(
    (part) => last(standing(at.graph.log, part.id, part.removalId), 'fitted', 'done') !== undefined,
  );
  return [
    action(
      'clean',
      'Clean the faces and look at them.',
      wanted.map((part) => part.id),
      done,
    ),
  ];
}

function repaired(at: Situation, hole: Hole): boolean {
  return hole.position.fate === 'blocked' && !isBlocked(at.graph.log, hole.position);
}

function checkHole(hole: Hole): StepAction {
  return action(
    'check hole',
    `Try hole ${hole.position.n} by hand: it was repaired, and may take another size or torque.`,
    [hole.position.id],
    isIn(hole.mark) || hole.mark === 'started',
  );
}

function fit(at: Situation, part: Row<'part'>): StepAction {
  const done =
    part.fate === 'leave out' ||
    last(standing(at.graph.log, part.id, part.removalId), 'fitted', 'left out', 'done') !== undefined;
  const count = part.qty > 1 ? `${part.qty} × ` : '';
  const name = `${count}${part.name || 'the part'}`;
  if (part.fate === 'leave out')
    return action('fit', `Leave out: ${name}${part.fateWhy ? `, ${part.fateWhy}` : ''}.`, [part.id], true);
  if (part.renew === 'must' || part.fate === 'renew')
    return action('renew', `Fit new: ${name}.`, [part.id], done);
  if (part.ownPlace) {
    const place = [part.stamped, part.ownPlaceText].filter((text) => text !== '').join(', ');
    return action('fit', `Back exactly where it was: ${name}${place ? ` (${place})` : ''}.`, [part.id], done);
  }
  const { log } = at.graph;
  const slackened = log.removals[log.indexOf.get(part.removalId ?? '') ?? -1]?.did === 'slackened';
  const aside = slackened ? 'Set and tighten' : 'Bring back';
  const verb = part.how === 'aside' ? aside : part.how === 'opened' ? 'Close' : 'Fit';
  const held = part.how === 'aside' && !slackened ? heldBy(at, part.removalId) : '';
  return action('fit', `${verb}: ${name}${held}.`, [part.id], done);
}

function consumables(at: Situation, one: PlanNode, content: Content): StepAction[] {
  const ids = [
    one.thingId,
    ...content.parts.map((part) => part.id),
    ...content.connections.map((row) => row.id),
    ...new Set(content.holes.map((hole) => hole.set.id)),
  ];
  return ids
    .flatMap((id) => of(at.graph.log.consumablesOf, id))
    .map((row) => {
      const cure =
        row.cureMinutes !== null && row.cureBefore !== null
          ? `; it cures ${row.cureMinutes} minutes before you ${row.cureBefore}`
          : '';
      const skin = row.skinMinutes === null ? '' : `; skins in ${row.skinMinutes} minutes`;
      return action('put on', `Put on: ${row.name || row.kind}${skin}${cure}.`, [row.id], wasPutOn(at, row));
    });
}

/** ", hung on wire": how what was moved aside is held, so that this comes off too; "" where nobody said. */
function heldBy(at: Situation, removalId: string | null): string {
  const held = removalOf(at, removalId)?.heldBy ?? '';
  return held === '' ? '' : `, ${held}`;
}

const removalOf = (at: Situation, removalId: string | null): Row<'removal'> | undefined =>
  at.graph.log.removals[at.graph.log.indexOf.get(removalId ?? '') ?? -1];

function join(at: Situation, connection: Row<'connection'>): StepAction {
  const done =
    last(
      standing(at.graph.log, connection.id, connection.removalId),
      'joined',
      'tightened',
      'left out',
      'done',
    ) !== undefined;
  const to = connection.goesTo ? ` to ${connection.goesTo}` : '';
  const ends = connection.ends > 1 ? `, ${connection.ends} ends` : '';
  const before = connection.hidden ? ', before the part goes home' : '';
  // Moved aside as it is, it was never taken apart.
  if (removalOf(at, connection.removalId)?.did === 'aside')
    return action(
      'join',
      `Bring back: ${connection.name || connection.kind}${heldBy(at, connection.removalId)}.`,
      [connection.id],
      done,
    );
  return action(
    'join',
    `Join: ${connection.name || connection.kind}${to}${ends}${before}.`,
    [connection.id],
    done,
  );
}

function matchAction(at: Situation, one: PlanNode, mark: Row<'mark'>): StepAction {
  const done = at.progress[at.graph.numberOf.get(one.id) ?? -1]?.done === true;
  return mark.kind === 'routing'
    ? action('route', `Route as it was: ${mark.body}`, [mark.id], done)
    : action('match', `To its marks: ${mark.body}`, [mark.id], done);
}

/** What was only opened to drain, with no plug written down: closed with its step. */
function closeDrain(at: Situation, one: PlanNode): StepAction[] {
  if (!at.graph.needs.drains[one.index] || of(at.graph.log.setsOf, one.thingId).length > 0) return [];
  const done = at.progress[at.graph.numberOf.get(one.id) ?? -1]?.done === true;
  return [
    action('close drain', 'Close where it was drained, with a new seal where one belongs there.', [], done),
  ];
}

/** What was logged as an ordered action and is not one of the things above: in reverse. */
function logged(at: Situation, one: PlanNode): StepAction[] {
  const done = at.progress[at.graph.numberOf.get(one.id) ?? -1]?.done === true;
  return [...of(at.graph.log.actionsOf, one.thingId)]
    .reverse()
    .filter((row) => row.thingId === null)
    .map((row) => action('as logged', `Undo: ${row.what}.`, [], done));
}

function measureAction(at: Situation, measure: Row<'measure'>): StepAction {
  const done = last(standing(at.graph.log, measure.id, measure.removalId), 'measured', 'done') !== undefined;
  const limits =
    measure.limitLow === null && measure.limitHigh === null
      ? ''
      : ` (${measure.limitLow ?? '…'} to ${measure.limitHigh ?? '…'} ${measure.unit})`;
  const was = measure.asFoundTyped ? `; as found ${measure.asFoundTyped}` : '';
  return action('measure', `Measure: ${measure.what}${limits}${was}.`, [measure.id], done);
}

function giveBack(at: Situation, one: PlanNode): StepAction {
  const isolation = at.graph.log.isolation.get(one.thingId);
  const by = at.state.person.find((person) => person.id === isolation?.byPersonId)?.name;
  const lock = isolation?.lockOwner
    ? ` ${isolation.lockOwner} takes the lock off.`
    : by
      ? ` By ${by}, who made it safe.`
      : '';
  const done = last(standing(at.graph.log, one.thingId), 'given back', 'done') !== undefined;
  return action(
    'give back',
    `Give back: ${isolation?.how || (isolation?.energy ?? '')}.${lock}`,
    [one.thingId],
    done,
  );
}
