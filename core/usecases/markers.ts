import { blank } from '../model/blank.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';

type Marker = Row<'marker'>;

function markersIn(decision: Decision, ids: readonly string[]): Result<Marker[]> {
  const found: Marker[] = [];
  for (const id of new Set(ids)) {
    const marker = rowIn(decision, 'marker', id, 'mark');
    if (!marker.ok) return marker;
    found.push(marker.value);
  }
  return ok(found);
}

/** The marks of a job as this command leaves them. */
const standing = ({ state, writer }: Decision): Marker[] => writer.list('marker', () => true, state.marker);

/** What has fewer than two marks left belongs together with nothing: its last mark is set free. */
function dissolve(decision: Decision, togetherIds: Iterable<string | null>): void {
  for (const id of new Set(togetherIds)) {
    if (id === null) continue;
    const left = standing(decision).filter((marker) => marker.togetherId === id);
    if (left.length > 1) continue;
    for (const marker of left) decision.writer.put('marker', { ...marker, togetherId: null });
    decision.writer.remove('together', id);
  }
}

/**
 * Takes marks away, and sets free what belonged together with them and what was carried over from them. Part of a
 * command, never one of its own.
 */
export function removeMarkers(
  decision: Decision,
  markers: readonly Pick<Marker, 'id' | 'togetherId'>[],
): void {
  const gone = new Set(markers.map((marker) => marker.id));
  for (const marker of standing(decision))
    if (marker.carriedFromId !== null && gone.has(marker.carriedFromId) && !gone.has(marker.id))
      decision.writer.put('marker', { ...marker, carriedFromId: null });
  for (const id of gone) decision.writer.remove('marker', id);
  dissolve(
    decision,
    markers.map((marker) => marker.togetherId),
  );
}

/**
 * Joins marks that belong together, on one photo or across several: this pin into that slot. What they belonged to
 * before goes with them, so that a third may be joined to two.
 */
export function markerJoin(
  context: Context,
  input: JobInput & { markerIds: readonly string[]; name?: string | undefined },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'marker.join', input, (decision) => {
    const markers = markersIn(decision, input.markerIds);
    if (!markers.ok) return markers;
    if (markers.value.length < 2)
      return refuse('input', 'Expected two marks or more that go together, got one.');
    const before = new Set(markers.value.flatMap((marker) => marker.togetherId ?? []));
    const kept = decision.state.together.find((one) => before.has(one.id));
    const id = kept?.id ?? decision.newId();
    const together = kept ?? blank('together', id, decision.jobId, {});
    decision.writer.put('together', { ...together, name: input.name ?? together.name });
    const asked = new Set(input.markerIds);
    const joined = standing(decision).filter(
      (one) => asked.has(one.id) || (one.togetherId !== null && before.has(one.togetherId)),
    );
    for (const marker of joined) decision.writer.put('marker', { ...marker, togetherId: id });
    dissolve(
      decision,
      [...before].filter((one) => one !== id),
    );
    return ok({ id, said: `${joined.length} marks go together.` });
  });
}

/** Marks that go together with nothing any more; what is left alone by it neither. */
export function markerPart(
  context: Context,
  input: JobInput & { markerIds: readonly string[] },
): Reply<{ said: string }> {
  return inJob(context, 'marker.part', input, (decision) => {
    const markers = markersIn(decision, input.markerIds);
    if (!markers.ok) return markers;
    for (const marker of markers.value) decision.writer.put('marker', { ...marker, togetherId: null });
    dissolve(
      decision,
      markers.value.map((marker) => marker.togetherId),
    );
    return ok({ said: 'Kept.' });
  });
}

/**
 * Gives a mark another number. A mark of a hole stands for the hole of that number in its set from then on; any other
 * takes the number itself. The mark of this photo that had it gets the other's: the two change places, in one command.
 */
export function markerNumber(
  context: Context,
  input: JobInput & { markerId: string; n: number },
): Reply<{ said: string }> {
  return inJob(context, 'marker.number', input, (decision) => {
    const found = rowIn(decision, 'marker', input.markerId, 'mark');
    if (!found.ok) return found;
    const marker = found.value;
    const hole = decision.state.position.find((one) => one.id === marker.thingId);
    const here = decision.state.marker.filter(
      (one) => one.photoId === marker.photoId && one.id !== marker.id,
    );
    if (!hole) {
      const other = here.find((one) => one.n === input.n);
      if (other) decision.writer.put('marker', { ...other, n: marker.n });
      decision.writer.put('marker', { ...marker, n: input.n });
      return ok({
        said: other ? `Marks ${marker.n} and ${input.n} changed numbers.` : `Now mark ${input.n}.`,
      });
    }
    const holes = decision.state.position.filter((one) => one.setId === hole.setId);
    const wanted = holes.find((one) => one.n === input.n);
    if (!wanted) {
      const numbers = holes.map((one) => one.n).sort((a, b) => a - b);
      return refuse(
        'refused',
        `Expected a hole of this set, ${numbers[0]} to ${numbers.at(-1)}, got ${input.n}.`,
      );
    }
    const other = here.find((one) => one.thingId === wanted.id);
    if (other) decision.writer.put('marker', { ...other, thingId: hole.id });
    decision.writer.put('marker', { ...marker, thingId: wanted.id });
    return ok({
      said: other ? `Holes ${hole.n} and ${wanted.n} changed numbers.` : `Now hole ${wanted.n}.`,
    });
  });
}
