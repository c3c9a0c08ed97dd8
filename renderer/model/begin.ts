import type { JobView } from '../../core/contract/views.ts';
import type { FoundData } from '../screens/begin/AsFound.tsx';
import type { BeginFields } from '../screens/begin/BeginScreen.tsx';
import type { ListedItem } from '../screens/begin/ItemList.tsx';
import { begin as say } from '../texts/begin.ts';
import type { PointData } from '../ui/Point.tsx';
import { lastAmong } from './deeds.ts';
import { plannedIds } from './line.ts';

/** The words about the job as the record has them. */
export function keptFields({ state }: JobView): BeginFields {
  const { job, person } = state;
  return {
    job: job.title,
    machine: job.machine,
    complaint: job.complaint,
    owner: person.find((one) => one.id === job.ownerId)?.name ?? '',
    sides: job.sideNames.seenFrom,
  };
}

/** What was made safe, but for what was struck out; what was given back is listed with that. */
function safeItems(view: JobView): ListedItem[] {
  const { state } = view;
  const given = lastAmong(view, ['given back', 'came off again']);
  const people = new Map(state.person.map((person) => [person.id, person.name]));
  // What an earlier job made safe is not safe here before somebody says so.
  const struck = new Set([
    ...plannedIds(view),
    ...state.removal.filter((one) => one.phase === 'void').map((one) => one.id),
  ]);
  const made = state.isolation.filter((one) => !struck.has(one.removalId));
  return made.map(({ id, how, energy, lockOwner, byPersonId }) => ({
    id,
    text: how || say.energies[energy],
    about: [
      how === '' ? '' : say.energies[energy],
      lockOwner || people.get(byPersonId ?? '') || '',
      given.get(id) === 'given back' ? say.givenBack : '',
    ]
      .filter((word) => word !== '')
      .join(', '),
  }));
}

export interface BeginLists {
  readonly found: readonly FoundData[];
  readonly ready: readonly ListedItem[];
  readonly safe: readonly ListedItem[];
}

/** What was found, what must be at hand, what was made safe. */
export function beginLists(view: JobView): BeginLists {
  const { asFound, ready } = view.state;
  return {
    found: asFound.map(({ id, kind, text }) => ({ id, kind, text })),
    ready: ready.map(({ id, text, done }) => ({ id, text, done, about: '' })),
    safe: safeItems(view),
  };
}

/** Cautions before the first bolt. */
export const CAUTIONS: readonly PointData[] = [
  { id: 'isolate', grave: 'note', say: say.isolate },
  { id: 'manual', grave: 'note', say: say.manual },
];

/** The removal that only made this safe and nothing else: struck out, it goes with it. Null where more hangs on it. */
export function onlyMadeSafe({ state }: JobView, isolationId: string): string | null {
  const isolation = state.isolation.find((one) => one.id === isolationId);
  const removal = state.removal.find((one) => one.id === isolation?.removalId);
  if (removal?.did !== 'safe') return null;
  const hangs = [
    ...state.isolation.filter((one) => one.id !== isolationId),
    ...state.fset,
    ...state.part,
    ...state.connection,
    ...state.temporary,
    ...state.measure,
    ...state.photo,
  ].some((one) => one.removalId === removal.id);
  return hangs ? null : removal.id;
}
