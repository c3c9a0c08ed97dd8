import type { JobView } from '../../core/contract/views.ts';
import type { Row } from '../../core/model/tables.ts';
import type { RemovalData } from '../screens/removal/RemovalScreen.tsx';
import { removal as say } from '../texts/removal.ts';
import type { Count } from '../ui/Numbers.tsx';
import type { PointData } from '../ui/Point.tsx';
import { begunBefore, logOf } from './line.ts';
import { differencesOf } from './pattern.ts';
import { placesOf } from './place.ts';
import { clock } from './time.ts';
import { pausedSay } from './times.ts';

function holesOf(view: JobView, removalId: string): Row<'position'>[] {
  const sets = new Set(view.state.fset.filter((set) => set.removalId === removalId).map((set) => set.id));
  return view.state.position.filter((hole) => sets.has(hole.setId));
}

/** Out, slackened, blocked, empty as found: only what is there. */
function countsOf(view: JobView, removalId: string): Count[] {
  const slackened = new Set(view.state.fset.filter((set) => set.how === 'slackened').map((set) => set.id));
  const counts = { out: 0, loose: 0, blocked: 0, empty: 0 };
  for (const hole of holesOf(view, removalId)) {
    if (hole.fate === 'blocked') counts.blocked += 1;
    else if (hole.found === 'empty') counts.empty += 1;
    else if (slackened.has(hole.setId)) counts.loose += 1;
    else counts.out += 1;
  }
  const parts = view.state.part.filter((part) => part.removalId === removalId);
  const all: Count[] = [
    { label: say.counts.out, value: counts.out },
    { label: say.counts.loose, value: counts.loose },
    { label: say.counts.blocked, value: counts.blocked },
    { label: say.counts.empty, value: counts.empty },
    { label: say.counts.parts, value: parts.reduce((sum, part) => sum + part.qty, 0) },
  ];
  return all.filter((count) => count.value !== 0);
}

/** What the hand takes for each other: in a bag that this removal's pieces went into, or among its own holes. */
function alikeOf(view: JobView, removalId: string): PointData[] {
  const sets = view.state.fset.filter((set) => set.removalId === removalId);
  const holes = holesOf(view, removalId);
  const bags = new Set([...sets, ...holes].map((row) => row.stowId));
  const specs = new Set([...sets, ...holes].map((row) => row.specId));
  const shown = new Map<string, PointData>();
  for (const pair of view.lookAlikes) {
    const own = pair.specIds.some((id) => specs.has(id));
    if (pair.removalId !== removalId && !(own && pair.stowId !== null && bags.has(pair.stowId))) continue;
    const stow = view.state.stow.find((one) => one.id === pair.stowId);
    const where = stow ? say.alikeIn(`${stow.kind} ${stow.label}`) : say.alikeHere;
    if (!shown.has(pair.sentence))
      shown.set(pair.sentence, {
        id: `alike ${pair.specIds.join(' ')}`,
        grave: 'warn',
        say: [{ strong: `${where} ${pair.sentence}` }, ` ${say.alikeDo}`],
      });
  }
  return [...shown.values()];
}

/** The open points that stand on this removal, gravest first. */
function pointsOf(view: JobView, removalId: string): PointData[] {
  const things = new Set([removalId, ...holesOf(view, removalId).map((hole) => hole.id)]);
  for (const table of ['fset', 'part', 'connection', 'temporary', 'measure'] as const)
    for (const row of view.state[table] as readonly { id: string; removalId: string | null }[])
      if (row.removalId === removalId) things.add(row.id);
  return view.plan.findings
    .filter((one) => one.accepted === null && one.severity !== 'note')
    .filter((one) => one.subjects.some((id) => things.has(id)))
    .map((one) => ({
      id: one.key,
      grave: one.severity,
      say: [{ strong: one.sentence }, ` ${one.clears}`],
    }));
}

/** "since 10:42", or "10:42 to 11:20" once it has ended. */
function sinceOf(view: JobView, removal: Row<'removal'>): string | null {
  const times = view.times[removal.id];
  if (times && times.end !== null) return say.fromTo(clock(times.start), clock(times.end));
  return removal.startedAt === null ? null : say.since(clock(removal.startedAt));
}

const whoOf = (view: JobView, personId: string | null): string => {
  const person = view.state.person.find((one) => one.id === personId);
  return person ? say.by(person.name) : '';
};

/** Left and right as this job names them. */
function sidesOf(view: JobView): RemovalData['sides'] {
  const { left, right } = view.state.job.sideNames;
  return [
    { value: 'left', label: left || say.sides.left },
    { value: 'right', label: right || say.sides.right },
    { value: 'both', label: say.sides.both },
  ];
}

/** The removal at hand; `removalId` null is the next one, not begun. `ahead` counts what is not in the record yet. */
export function removalData(
  view: JobView,
  removalId: string | null,
  ahead: number,
  now: number,
): Omit<RemovalData, 'planned'> {
  const log = logOf(view);
  const sides = sidesOf(view);
  const at = log.findIndex((removal) => removal.id === removalId);
  const removal = log[at];
  if (!removal)
    return {
      number: begunBefore(log) + 1 + ahead,
      title: '',
      since: null,
      place: '',
      side: null,
      places: placesOf(view, ''),
      sides,
      about: [],
      did: 'off',
      counts: [],
      shown: null,
      points: [],
      noteBack: '',
    };
  const holes = holesOf(view, removal.id);
  const marked = new Set(view.state.marker.map((marker) => marker.thingId));
  return {
    number: at + 1,
    title: removal.title,
    since: sinceOf(view, removal),
    place: removal.place,
    side: removal.side,
    places: placesOf(view, removal.place),
    sides,
    about: [pausedSay(view.times[removal.id], now), whoOf(view, removal.personId)].filter(
      (word) => word !== '',
    ),
    did: removal.did,
    counts: removal.phase === 'planned' ? [] : countsOf(view, removal.id),
    shown:
      holes.length > 0 && view.state.marker.length > 0
        ? { marked: holes.filter((hole) => marked.has(hole.id)).length, total: holes.length }
        : null,
    points: [...pointsOf(view, removal.id), ...differencesOf(view, removal.id), ...alikeOf(view, removal.id)],
    noteBack: removal.noteBack,
  };
}
