import type { Row } from '../model/tables.ts';
import { sealExpected } from '../tally/index.ts';
import type { Draft } from './draft.ts';
import { stepName } from './draft.ts';
import { partDeed } from './findings-pieces.ts';
import { removalOf } from './job-log.ts';
import type { Situation } from './situation.ts';
import { last, standing } from './standing.ts';

/** Parts: mixed up, reused, away, left over; connections: swapped, without a seal. */
export function partFindings(at: Situation): Draft[] {
  // Once for all parts: looking through the moves for each would be quadratic.
  const fresh = new Set(at.state.move.filter((move) => move.fresh).map((move) => move.partId));
  return [
    ...at.state.part.flatMap((part) => [...placeOf(at, part), ...renewOf(at, part, fresh.has(part.id))]),
    ...awayFindings(at),
    ...leftOver(at),
    ...at.state.connection.flatMap((connection) => [...mateOf(at, connection), ...sealOf(at, connection)]),
  ];
}

/** Own-place pieces must be back where they were: the deed says which one really went in there. */
function placeOf(at: Situation, part: Row<'part'>): Draft[] {
  if (!part.ownPlace) return [];
  const deed = partDeed(at, part, 'fitted', 'done');
  if (!deed) return [];
  const other =
    deed.withThingId !== null && deed.withThingId !== part.id
      ? at.graph.log.part.get(deed.withThingId)
      : null;
  const read = deed.valueTyped.trim();
  const wrong = read !== '' && part.stamped !== '' && read.toLowerCase() !== part.stamped.toLowerCase();
  if (!other && !wrong) return [];
  const got = other ? other.stamped || other.name : read;
  return [
    {
      code: 'part.place',
      severity: 'stop',
      subjects: [part.id],
      sentence: `${part.name}${part.stamped ? ` ${part.stamped}` : ''} must go back exactly where it was, and ${got} is in its place.`,
      clears: 'Take both off and change them over.',
      node: at.graph.stepOfThing(part.id),
      facts: [deed.id],
    },
  ];
}

function renewOf(at: Situation, part: Row<'part'>, inHand: boolean): Draft[] {
  if (part.renew !== 'must' || part.how === 'fitted new' || part.how === 'aside' || part.how === 'opened')
    return [];
  const node = at.graph.stepOfThing(part.id);
  const deed = partDeed(at, part, 'fitted', 'done');
  if (deed && !deed.fresh)
    return [
      {
        code: 'renew.not-in-hand',
        severity: 'stop',
        subjects: [part.id],
        sentence:
          `${part.name || 'A part'} must be renewed, and the old one went back. ${part.renewWhy}`.trim(),
        clears: 'Fit a new one, or say why the old one may stay.',
        node,
        facts: [deed.round, deed.id],
      },
    ];
  if (deed || node < 0 || inHand) return [];
  const whole = at.past[node] === 1;
  return [
    {
      code: 'renew.not-in-hand',
      severity: whole ? 'stop' : 'note',
      subjects: [part.id],
      sentence: `${part.name || 'A part'} must be renewed. ${part.renewWhy}`.trim(),
      clears: whole ? 'Fit a new one and tick it.' : 'Put it on the list to get.',
      node,
    },
  ];
}

function awayFindings(at: Situation): Draft[] {
  return at.state.away
    .filter((one) => one.backAt === null)
    .map((one) => {
      const name = at.graph.log.part.get(one.thingId)?.name || 'A part';
      const late = one.due !== null && one.due < at.now;
      const days = one.due === null ? 0 : Math.floor((at.now - one.due) / 86_400_000);
      return {
        code: 'part.away' as const,
        severity: 'note' as const,
        subjects: [one.thingId],
        sentence: `${name} is away${one.toWhom ? `, with ${one.toWhom}` : ''}${late && days > 0 ? `, ${days} ${days === 1 ? 'day' : 'days'} late` : ''}.`,
        clears: 'Write it down when it is back.',
        node: at.graph.stepOfThing(one.thingId),
      };
    });
}

/** At the end of the job: parts that no step took back. */
function leftOver(at: Situation): Draft[] {
  if (at.state.job.phase === 'open') return [];
  return at.state.part
    .filter(
      (part) =>
        part.how === 'off' && part.fate !== 'leave out' && part.fate !== 'renew' && part.kind !== 'kit',
    )
    .filter((part) => at.graph.stepOfThing(part.id) < 0 && !partDeed(at, part, 'fitted', 'left out', 'done'))
    .filter((part) => happenedStep(at, part))
    .map((part) => ({
      code: 'part.left-over' as const,
      severity: 'stop' as const,
      subjects: [part.id],
      sentence: `${part.name || 'A part'} is left over: no step took it back.`,
      clears: 'Fit it, or leave it out with a reason.',
      node: -1,
    }));
}

function happenedStep(at: Situation, part: Row<'part'>): boolean {
  const index = at.graph.log.indexOf.get(part.removalId ?? '');
  const phase = index === undefined ? undefined : at.graph.log.removals[index]?.phase;
  return phase !== 'void' && phase !== 'planned' && phase !== 'given up';
}

function mateOf(at: Situation, connection: Row<'connection'>): Draft[] {
  const deed = last(
    standing(at.graph.log, connection.id, connection.removalId),
    'joined',
    'tightened',
    'done',
  );
  const other = deed?.withThingId && deed.withThingId !== connection.id ? deed.withThingId : null;
  if (!deed || other === null) return [];
  const got = at.graph.log.connection.get(other)?.name ?? at.graph.log.part.get(other)?.name ?? 'another';
  return [
    {
      code: 'mate.swapped',
      severity: 'stop',
      subjects: [connection.id],
      sentence: `${connection.name || 'A connection'} was joined to what belongs to ${got}${connection.goesTo ? `; it goes to ${connection.goesTo}` : ''}.`,
      clears: 'Change them over.',
      node: at.graph.stepOfThing(connection.id),
      facts: [deed.id],
    },
  ];
}

/** Asked only where that kind of joint has a seal; a note at removal, a warning once it is joined without an answer. */
function sealOf(at: Situation, connection: Row<'connection'>): Draft[] {
  if (connection.leaveAlone || connection.seal !== 'unknown') return [];
  const wanted = sealExpected(connection.joint);
  if (!wanted || wanted.asks !== true) return [];
  const node = at.graph.stepOfThing(connection.id);
  const joined = last(
    standing(at.graph.log, connection.id, connection.removalId),
    'joined',
    'tightened',
    'done',
  );
  return [
    {
      code: 'joint.no-seal',
      severity: joined ? 'warn' : 'note',
      subjects: [connection.id],
      sentence: `${connection.name || stepName(at, node)}: nobody wrote down what seals it. ${wanted.sentence}`,
      clears: 'Say which seal or washer it takes, or that it takes none.',
      node,
      facts: [joined?.id ?? ''],
    },
  ];
}

/** Photos are asked for only where they are worth most: hidden, own place, routed, many connections. */
export function photoFindings(at: Situation): Draft[] {
  // What is only planned is not there to be photographed yet.
  const planned = at.state.removal.filter((removal) => removal.phase === 'planned').map(({ id }) => id);
  const shown = new Set([...planned, ...at.state.photo.map((photo) => photo.removalId)]);
  const wants = new Map<string, string>();
  const want = (removalId: string | null, why: string) => {
    if (removalId !== null && !shown.has(removalId)) wants.set(removalId, why);
  };
  for (const part of at.state.part) {
    if (part.ownPlace) want(part.removalId, 'parts of it have their own place');
    if (part.hidden) want(part.removalId, 'a part of it cannot be seen later');
  }
  for (const mark of at.state.mark)
    if (mark.kind === 'routing') want(mark.removalId, 'something is routed there');
  const joints = new Map<string, number>();
  for (const one of at.state.connection)
    if (one.removalId !== null) joints.set(one.removalId, (joints.get(one.removalId) ?? 0) + 1);
  for (const [removalId, count] of joints) if (count >= 3) want(removalId, `${count} connections came off`);
  for (const position of at.state.position)
    if (position.hidden) want(removalOf(at.graph.log, position.id), 'a hole of it cannot be seen');
  return [...wants].map(([removalId, why]) => ({
    code: 'photo.none' as const,
    severity: 'note' as const,
    subjects: [removalId],
    sentence: `${stepName(at, at.graph.stepOfRemoval(removalId))}: no photo, and ${why}.`,
    clears: 'Take one while it can be taken.',
    node: at.graph.stepOfRemoval(removalId),
  }));
}
