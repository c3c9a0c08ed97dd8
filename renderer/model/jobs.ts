import type { JobCard } from '../../core/contract/views.ts';
import type { LineData } from '../../core/drawing/line/types.ts';
import type { CarryOnData, Fact } from '../screens/jobs/CarryOn.tsx';
import type { JobData } from '../screens/jobs/JobItem.tsx';
import { jobs as say } from '../texts/jobs.ts';
import type { Rich } from '../ui/rich.tsx';
import { lastPhoto } from './photos.ts';
import { ago, clock, day, since } from './time.ts';

/** A job's silhouette: its notches without names. */
function stickOf(card: JobCard): LineData {
  return {
    direction: card.depth.back > 0 ? 'back' : 'apart',
    atId: null,
    items: card.notches.map((notch, i) => ({
      kind: 'removal' as const,
      id: String(i),
      number: i + 1,
      title: '',
      pieces: notch.pieces,
      did: notch.did,
      back: notch.back,
      place: '',
      note: '',
    })),
  };
}

function awayOf(card: JobCard, now: number): Rich {
  return card.away.flatMap((one, i) => {
    const gap = i === 0 ? '' : ' ';
    const where = one.toWhom === '' ? '' : `, ${one.toWhom}`;
    const base = `${gap}${one.what}${where}, ${say.since(day(one.since, now))}`;
    if (one.due === null) return [`${base}.`];
    const late = one.due < now;
    return [
      `${base}. ${say.due(day(one.due, now))}${late ? ', ' : '.'}`,
      ...(late ? [{ strong: `${say.late(ago(one.due, now))}.` }] : []),
    ];
  });
}

function factsOf(card: JobCard, now: number): Fact[] {
  const { facts } = say;
  const list: Fact[] = [];
  if (card.halt)
    list.push({
      term: facts.handover,
      say: [{ strong: card.halt.note || say.haltNoNote }, ` ${card.halt.by ?? ''} ${day(card.halt.at, now)}`],
    });
  const last = card.lastBack ?? card.last;
  if (last) {
    const when = last.at === null ? '' : `, ${day(last.at, now)}, ${clock(last.at)}`;
    list.push({
      term: card.lastBack ? facts.lastBack : facts.last,
      say: [{ strong: String(last.number) }, ` ${last.title}${when}`],
    });
  }
  if (card.loose.length > 0) list.push({ term: facts.loose, say: card.loose.join('. ') });
  if (card.away.length > 0) list.push({ term: facts.away, say: awayOf(card, now) });
  if (card.openToAir.length > 0 || card.inside.length > 0)
    list.push({
      term: facts.open,
      say: [
        card.openToAir.join(', '),
        ...(card.inside.length > 0 ? [{ strong: ` ${say.inside(card.inside.join(', '))}` }] : []),
      ],
    });
  if (card.notCounted.length > 0) list.push({ term: facts.uncounted, say: card.notCounted.join(', ') });
  return list;
}

/** The job touched last, with what must be known before going on. */
export function carryOn(card: JobCard, now: number): CarryOnData {
  const back = card.depth.back > 0;
  return {
    id: card.job.id,
    title: card.job.title,
    machine: card.job.machine,
    photo: lastPhoto(card.photo),
    away: since(card.changedAt, now),
    facts: factsOf(card, now),
    go:
      card.job.phase !== 'open'
        ? say.look
        : card.last === null
          ? say.begin
          : back
            ? say.goOnBack
            : say.goOn(card.last.number),
  };
}

/** In the list a small picture is enough. */
function small(card: JobCard): JobData['photo'] {
  const photo = lastPhoto(card.photo);
  return photo === null ? null : { ...photo, src: `/photo/${card.photo?.original.id}/320` };
}

/** Another job, by its silhouette. */
export function jobData(card: JobCard, now: number): JobData {
  const { stop, warn } = card.open;
  const open = stop + warn === 0 ? say.nothingOpen : say.openPoints(stop + warn);
  return {
    id: card.job.id,
    title: card.job.title,
    photo: small(card),
    line: stickOf(card),
    off: card.depth.off,
    back: card.depth.back,
    about: `${card.job.phase === 'open' ? open : say.closed(open)}, ${ago(card.changedAt, now)}`,
  };
}
