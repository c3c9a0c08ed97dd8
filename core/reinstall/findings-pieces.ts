import type { Row } from '../model/tables.ts';
import { damagesPiece, describeSpec, lookAlikes, openSearches, poolLines } from '../tally/index.ts';
import type { Hole } from './content.ts';
import type { Draft } from './draft.ts';
import { stepName } from './draft.ts';
import { linesOf } from './lines.ts';
import type { Situation } from './situation.ts';
import { staysEmpty } from './job-log.ts';
import { holeMark, last, standing, standingOfHole } from './standing.ts';

const IN = ['started', 'tightened', 'paint-checked', 'fitted', 'done'] as const;

/** What is short, left over, looked for, alike. */
export function pieceFindings(at: Situation): Draft[] {
  return [...shortFindings(at), ...searchFindings(at), ...alikeFindings(at), ...stowFindings(at)];
}

function shortFindings(at: Situation): Draft[] {
  const spec = new Map(at.state.spec.map((one) => [one.id, one]));
  return poolLines(at.state, linesOf(at)).flatMap((pool) => {
    const homes = pool.lines.filter((line) => line.setId !== null);
    const first = homes.find((line) => (line.toFill ?? 0) > 0) ?? homes[0];
    if (!first?.setId) return [];
    const own = spec.get(pool.specId ?? '');
    const sets = [...new Set(homes.map((line) => at.graph.log.set.get(line.setId ?? '')?.name ?? ''))].filter(
      (name) => name !== '',
    );
    const name = [sets.join(', '), own ? describeSpec(own) : first.what]
      .filter((word) => word !== '')
      .join(', ');
    const subjects = [
      ...new Set(homes.map((line) => line.setId as string)),
      ...(first.main ? [] : [pool.specId ?? '']),
    ];
    return [...shortOf(at, pool, first, name, subjects), ...leftOf(at, pool, homes, name, subjects)];
  });
}

type Pool = ReturnType<typeof poolLines>[number];
type Line = Pool['lines'][number];

function shortOf(at: Situation, pool: Pool, first: Line, name: string, subjects: string[]): Draft[] {
  const short = pool.short ?? 0;
  if (short === 0) return [];
  const base = { subjects, node: at.graph.stepOfThing(first.setId ?? '') };
  if (pool.lines.some((line) => line.mustBeNew))
    return [
      {
        ...base,
        code: 'renew.not-in-hand',
        severity: 'note',
        sentence: `${name} must be new: ${short} to get.`,
        clears: 'Put them on the list to get.',
      },
    ];
  // What is away, looked for, damaged or wanted for a new hole has its own finding; here it only says what to get.
  const homes = new Set(pool.lines.map((line) => line.setId));
  const repaired = at.state.position.some((hole) => homes.has(hole.setId) && hole.fate === 'blocked');
  const explained =
    repaired || pool.unknown + pool.lost + pool.damaged + pool.newHoles + pool.away + pool.scrapped > 0;
  return [
    {
      ...base,
      code: 'fastener.short',
      severity: explained ? 'note' : 'stop',
      sentence: `${name}: ${pool.toFill} to fill, ${pool.usable} usable in hand, ${short} short.`,
      clears: 'Find it, or put one on the list to get.',
    },
  ];
}

function leftOf(
  at: Situation,
  pool: Pool,
  homes: readonly Line[],
  name: string,
  subjects: string[],
): Draft[] {
  const left = pool.leftOver ?? 0;
  const done = homes.every((line) => at.progress[at.graph.stepOfThing(line.setId ?? '')]?.done);
  if (left === 0 || !done) return [];
  return [
    {
      code: 'fastener.left-over',
      severity: 'warn',
      subjects,
      sentence: `${name}: all holes are filled, and ${left} old ${left === 1 ? 'one is' : 'ones are'} left over.`,
      clears: 'Look for an empty hole, scrap it, or put it to stock.',
      node: at.graph.stepOfThing(homes[0]?.setId ?? ''),
    },
  ];
}

function searchFindings(at: Situation): Draft[] {
  return openSearches(at.state).flatMap((search) => {
    const stow = at.graph.log.stow.get(search.stowId ?? '');
    const thing = search.thingId ?? search.of[0]?.setId ?? search.of[0]?.partId ?? null;
    const subject = search.thingId ?? search.stowId ?? search.countingId;
    const first = search.lookAt[0] ?? 'Look where it was seen last.';
    const where = first.charAt(0).toUpperCase() + first.slice(1);
    const name = stow
      ? `${stow.kind[0]?.toUpperCase()}${stow.kind.slice(1)} ${stow.label} was counted at ${search.counted}, ${search.expected} by the books.`
      : `${search.name}: ${search.missing} not found.`;
    const less = search.missing > 0;
    return [
      {
        code: stow ? ('count.differs' as const) : ('item.unaccounted' as const),
        severity: less ? ('stop' as const) : ('warn' as const),
        subjects: [subject, search.countingId],
        sentence: less ? `${name} ${search.lastSeen.sentence} ${where}`.trim() : name,
        clears: less
          ? 'Find it, or search and write it off by name. Buying another does not end the search.'
          : 'Count again, or correct what came off.',
        node: thing === null ? -1 : at.graph.stepOfThing(thing),
        facts: [search.missing],
        // What is no fastener may lie in any way in that stands open: none of them is closed over it.
        holds: stow !== undefined || !less ? [] : waysIn(at, search),
      },
    ];
  });
}

function waysIn(at: Situation, search: ReturnType<typeof openSearches>[number]): number[] {
  const { log } = at.graph;
  const id = search.thingId ?? '';
  if (search.thingId !== null && !log.indexOf.has(id) && !log.temporary.has(id)) return [];
  return search.openings
    .filter((opening) => opening.closedAt === null)
    .map((opening) => at.graph.stepOfRemoval(opening.removalId))
    .filter((node) => node >= 0);
}

function alikeFindings(at: Situation): Draft[] {
  return lookAlikes(at.state).map((pair) => ({
    code: 'fastener.look-alike' as const,
    severity: 'note' as const,
    subjects: [pair.specIds[0], pair.specIds[1]],
    sentence: pair.sentence,
    clears: 'Start all by hand first; all heads must stand out alike.',
    node: -1,
  }));
}

function stowFindings(at: Situation): Draft[] {
  const away = new Set(at.state.away.filter((one) => one.backAt === null).map((one) => one.thingId));
  return (
    at.state.part
      .filter((part) => part.how === 'off' && part.stowId === null && part.fate !== 'leave out')
      // Nobody looks for the old one where a new one goes in.
      .filter((part) => !away.has(part.id) && part.renew !== 'must')
      .map((part) => ({ part, node: at.graph.stepOfThing(part.id) }))
      .filter(({ node }) => node >= 0 && !at.progress[node]?.done)
      .map(({ part, node }) => ({
        code: 'part.no-stow' as const,
        severity: 'note' as const,
        subjects: [part.id],
        sentence: `Nobody wrote down where ${part.name || 'a part'} lies.`,
        clears: 'Say which shelf, tray or bag.',
        node,
      }))
  );
}

/** Per hole: the wrong length in it, a damaged or single-use one that went back. */
export function holeFindings(at: Situation): Draft[] {
  const drafts: Draft[] = [];
  const spec = new Map(at.state.spec.map((one) => [one.id, one]));
  at.content.forEach((content, node) => {
    if (at.graph.nodes[node]?.kind === 'T') return;
    for (const hole of content.holes) {
      const deed = last(hole.standing, ...IN);
      if (!deed || hole.mark === 'left out') continue;
      drafts.push(...swapped(at, node, hole, deed, spec), ...reused(at, node, hole, deed));
    }
  });
  return drafts;
}

/** The first deed of the round says which piece went in. */
function putIn(hole: Hole): Row<'deed'> | undefined {
  return hole.standing.deeds.find((deed) => (IN as readonly string[]).includes(deed.what));
}

function swapped(
  at: Situation,
  node: number,
  hole: Hole,
  deed: Row<'deed'>,
  spec: ReadonlyMap<string, Row<'spec'>>,
): Draft[] {
  const used = deed.withSpecId ?? putIn(hole)?.withSpecId ?? null;
  const wanted = spec.get(hole.position.specId ?? hole.set.specId);
  const got = used === null ? undefined : spec.get(used);
  if (!wanted || !got || got.id === wanted.id) return [];
  if (got.poolKey !== null && got.poolKey === wanted.poolKey) return [];
  if (got.lengthUm === wanted.lengthUm && got.thread === wanted.thread && got.grade === wanted.grade)
    return [];
  return [
    {
      code: 'fastener.look-alike',
      severity: 'stop',
      subjects: [hole.position.id],
      sentence: `${hole.set.name || stepName(at, node)}: hole ${hole.position.n} takes ${describeSpec(wanted)}, and ${describeSpec(got)} is in it. Too long bottoms out, too short strips.`,
      clears: 'Change them over.',
      node,
      facts: [got.id],
    },
  ];
}

function reused(at: Situation, node: number, hole: Hole, deed: Row<'deed'>): Draft[] {
  const fresh = deed.fresh || putIn(hole)?.fresh === true;
  if (fresh || hole.set.how === 'slackened') return [];
  const advice = hole.set.renew === 'must';
  const damaged =
    hole.position.condition !== '' &&
    hole.mark !== 'blocked' &&
    damagesPiece(hole.position.condition) &&
    !hole.position.condition.includes('(one of the set)');
  if (!advice && !damaged) return [];
  return [
    {
      code: advice ? 'renew.not-in-hand' : 'fastener.damaged',
      severity: 'stop',
      subjects: [hole.position.id],
      sentence: advice
        ? `${hole.set.name || stepName(at, node)}: hole ${hole.position.n} must have a new one, and an old one went back. ${hole.set.renewWhy}`.trim()
        : `${hole.set.name || stepName(at, node)}: hole ${hole.position.n} had a ${hole.position.condition} one, and an old one went back.`,
      clears: 'Fit a new one, or say why the old one may stay.',
      node,
      facts: [deed.round],
    },
  ];
}

/** A hole that was found empty is filled or stays empty because somebody says so, not because nobody did. */
export function emptyFindings(at: Situation): Draft[] {
  const { log } = at.graph;
  return at.state.position.flatMap((position): Draft[] => {
    if (position.fate !== 'fill' || !staysEmpty(log, position)) return [];
    const set = log.set.get(position.setId);
    const node = at.graph.stepOfThing(position.setId);
    const mark = holeMark(log, position, standingOfHole(log, position));
    if (!set || node < 0 || mark !== 'out') return [];
    return [
      {
        code: 'hole.empty',
        severity: 'warn',
        subjects: [position.id],
        sentence: `${set.name || stepName(at, node)}: hole ${position.n} was empty as found, and nobody has said what becomes of it.`,
        clears: 'Say that it is filled, or that it is left empty.',
        node,
      },
    ];
  });
}

/** Said on the day it comes off, so that a new one is ordered while there is time. */
export function damageFindings(at: Situation): Draft[] {
  return linesOf(at)
    .filter((line) => line.setId !== null && line.damaged > 0)
    .map((line) => {
      const node = at.graph.stepOfThing(line.setId ?? '');
      const spec = at.graph.log.spec.get(line.specId ?? '');
      const covered = (line.short ?? 0) === 0;
      return {
        code: 'fastener.damaged' as const,
        severity: covered ? ('note' as const) : ('warn' as const),
        subjects: [line.setId ?? '', 'damaged'],
        sentence: `${spec ? describeSpec(spec) : line.what}: ${line.damaged} damaged at removal.`,
        clears: covered
          ? 'Scrap it, so that it does not go back by mistake.'
          : 'Put one on the list to get, and scrap it.',
        node,
      };
    });
}

/** Standing of a part in its removal. */
export function partDeed(
  at: Situation,
  part: Row<'part'>,
  ...what: Row<'deed'>['what'][]
): Row<'deed'> | undefined {
  return last(standing(at.graph.log, part.id, part.removalId), ...what);
}
