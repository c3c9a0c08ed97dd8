import type { JobView } from '../../core/contract/views.ts';
import type { Row } from '../../core/model/tables.ts';
import type { MarkKind, MarkState, PhotoMark } from '../photo/types.ts';
import { marks as say } from '../texts/marks.ts';

/** Something of a job that a mark on a photo can stand for. */
export interface Markable {
  readonly thingId: string;
  readonly kind: MarkKind;
  readonly state: MarkState;
  /** What stands in the mark; empty where only the marker's own number can. */
  readonly text: string;
  /** "hole 3 of cover" */
  readonly name: string;
  readonly group: string;
  readonly removalId: string | null;
}

/** How each hole stands on the way back, where that was computed. */
function holeStates(view: JobView): Map<string, MarkState> {
  const states = new Map<string, MarkState>();
  for (const step of view.plan.steps)
    for (const set of step.fasteners)
      for (const hole of set.holes) {
        const known = states.get(hole.positionId);
        // A hole stands in its fitting step and, where it is tightened later, in that step too: the further one counts.
        if (known === undefined || known === 'out') states.set(hole.positionId, hole.mark);
      }
  return states;
}

function holeState(
  hole: Row<'position'>,
  set: Row<'fset'>,
  back: MarkState | undefined,
  planned: boolean,
): MarkState {
  if (back !== undefined && back !== 'out') return back;
  if (hole.fate === 'blocked') return 'blocked';
  if (hole.fate === 'leave out') return 'left out';
  if (hole.found === 'empty') return 'missing';
  if (planned) return 'in';
  return set.how === 'slackened' ? 'slackened' : 'out';
}

function holesOf(view: JobView, planned: ReadonlySet<string>): Markable[] {
  const sets = new Map(view.state.fset.map((set) => [set.id, set]));
  const back = holeStates(view);
  return view.state.position.flatMap((hole) => {
    const set = sets.get(hole.setId);
    if (!set) return [];
    return {
      thingId: hole.id,
      kind: 'position' as const,
      state: holeState(hole, set, back.get(hole.id), planned.has(set.removalId)),
      text: String(hole.n),
      name: say.hole(set.name, hole.n),
      group: set.id,
      removalId: set.removalId,
    };
  });
}

/** Latest deed of a thing, as far as a mark shows it. */
function lastDeeds(view: JobView): Map<string, Row<'deed'>['what']> {
  const last = new Map<string, Row<'deed'>>();
  for (const deed of view.state.deed) {
    const known = last.get(deed.thingId);
    if (!known || known.at <= deed.at) last.set(deed.thingId, deed);
  }
  return new Map([...last].map(([id, deed]) => [id, deed.what]));
}

function thingState(deed: Row<'deed'>['what'] | undefined, before: MarkState): MarkState {
  switch (deed) {
    case 'fitted':
    case 'joined':
    case 'done':
    case 'tightened':
      return 'tightened';
    case 'started':
      return 'started';
    case 'taken out':
      return 'out';
    case 'left out':
      return 'left out';
    default:
      return before;
  }
}

function othersOf(view: JobView, planned: ReadonlySet<string>): Markable[] {
  const deeds = lastDeeds(view);
  const thing = (
    row: { readonly id: string; readonly removalId: string | null },
    kind: MarkKind,
    name: string,
    before: MarkState,
  ): Markable => ({
    thingId: row.id,
    kind,
    state: thingState(
      deeds.get(row.id),
      row.removalId !== null && planned.has(row.removalId) ? 'in' : before,
    ),
    text: '',
    name,
    group: row.id,
    removalId: row.removalId,
  });
  const { part, connection, temporary, mark } = view.state;
  return [
    ...part.map((row) =>
      thing(row, 'part', row.name || say.unnamed.part, row.how === 'off' ? 'out' : 'slackened'),
    ),
    ...connection.map((row) => thing(row, 'connection', row.name || say.unnamed.connection, 'out')),
    ...temporary.map((row) => thing(row, 'temporary', row.name || say.unnamed.temporary, 'in')),
    ...mark.map((row) => thing(row, 'match', row.body.split('\n')[0] || say.unnamed.match, 'in')),
  ];
}

/** All that marks can stand for, by its id: holes first, in the order of their numbers. */
export function markables(view: JobView): Map<string, Markable> {
  const planned = new Set(
    view.state.removal.filter((removal) => removal.phase === 'planned').map((removal) => removal.id),
  );
  const all = [...holesOf(view, planned), ...othersOf(view, planned)];
  return new Map(all.map((one) => [one.thingId, one]));
}

/** A marker as it is drawn: the record's, or one on its way there. */
export type MarkerAt = Pick<Row<'marker'>, 'id' | 'photoId' | 'n' | 'x' | 'y' | 'thingId' | 'togetherId'>;

/** The marks of one photo. What a mark stands for gives its outline, state and number. */
export function marksOn(
  photoId: string,
  markers: readonly MarkerAt[],
  things: ReadonlyMap<string, Markable>,
): PhotoMark[] {
  return markers
    .filter((marker) => marker.photoId === photoId)
    .map((marker) => {
      const thing = marker.thingId === null ? undefined : things.get(marker.thingId);
      return {
        id: marker.id,
        text: thing?.text || String(Math.abs(marker.n)),
        kind: thing?.kind ?? 'match',
        state: thing?.state ?? 'missing',
        x: marker.x,
        y: marker.y,
        name: thing?.name ?? say.unbound(marker.n),
        group: thing?.group ?? 'unbound',
        together: marker.togetherId,
      };
    });
}

/**
 * What the next mark on a photo stands for: the first hole of the removal that no photo of the job shows yet; then the
 * first that this photo does not show; then its parts and connections alike. Null: nothing is left.
 */
export function nextToMark(
  removalId: string | null,
  photoId: string,
  markers: readonly MarkerAt[],
  things: ReadonlyMap<string, Markable>,
): Markable | null {
  const own = [...things.values()].filter((thing) => thing.removalId === removalId);
  const holes = own
    .filter((thing) => thing.kind === 'position')
    .sort((a, b) => (a.group === b.group ? Number(a.text) - Number(b.text) : 0));
  const shown = new Set(markers.map((marker) => marker.thingId));
  const here = new Set(markers.filter((one) => one.photoId === photoId).map((marker) => marker.thingId));
  const others = own.filter((thing) => thing.kind !== 'position');
  return (
    holes.find((thing) => !shown.has(thing.thingId)) ??
    holes.find((thing) => !here.has(thing.thingId)) ??
    others.find((thing) => !shown.has(thing.thingId)) ??
    null
  );
}
