import { type Dispatch, type SetStateAction, useEffect, useMemo, useState } from 'react';
import { v7 } from 'uuid';
import { client, type Reply } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import type { MarkAtHand } from '../screens/removal/MarkPanel.tsx';
import { marks as say } from '../texts/marks.ts';
import { type Markable, type MarkerAt, markables, marksOn, nextToMark } from '../model/marks.ts';

interface Ahead {
  readonly marker: MarkerAt;
  readonly gone: boolean;
  /** The journal number by which the record has it; null while it is on its way. */
  readonly seq: number | null;
}

/** The record's markers with what this window has done to them since: a touch is shown before the reply comes. */
function overlaid(rows: readonly MarkerAt[], ahead: ReadonlyMap<string, Ahead>): MarkerAt[] {
  const known = new Set(rows.map((row) => row.id));
  return [
    ...rows.flatMap((row) => {
      const own = ahead.get(row.id);
      if (!own) return row;
      return own.gone ? [] : own.marker;
    }),
    ...[...ahead.values()].filter((one) => !one.gone && !known.has(one.marker.id)).map((one) => one.marker),
  ];
}

/** A reading that is as new as the reply says it all, also where the mark was undone meanwhile and looks otherwise. */
const caughtUp = (read: number, { seq }: Ahead): boolean => seq !== null && seq <= read;

/** Marks of the photo at hand, and what can be done to them. Every deed is one command, so one undo. */
export function useMarks(job: OpenJob, removalId: string | null, photoId: string | null) {
  const [ahead, setAhead] = useState<ReadonlyMap<string, Ahead>>(new Map());
  const [atId, setAtId] = useState<string | null>(null);
  const [placing, setPlacing] = useState(false);
  // Stays while another photo is looked for: what goes together is often on two.
  const [joiningId, setJoiningId] = useState<string | null>(null);
  const rows = job.view.state.marker;
  useEffect(() => {
    setAhead((now) => {
      const left = [...now].filter(([, one]) => !caughtUp(job.seq, one));
      return left.length === now.size ? now : new Map(left);
    });
  }, [job.seq, ahead]);
  useEffect(() => {
    setAtId(null);
  }, [photoId, removalId]);
  useEffect(() => setPlacing(false), [removalId]);

  const things = useMemo(() => markables(job.view), [job.view]);
  const markers = useMemo(() => overlaid(rows, ahead), [rows, ahead]);
  const marks = useMemo(
    () => (photoId === null ? [] : marksOn(photoId, markers, things)),
    [photoId, markers, things],
  );
  const next = photoId === null ? null : nextToMark(removalId, photoId, markers, things);

  const at = markers.find((marker) => marker.id === atId) ?? null;
  const deeds = markDeeds({ job, photoId, markers, thingId: next?.thingId ?? null, setAhead, setAtId });
  const joining = markers.find((marker) => marker.id === joiningId) ?? null;
  const pick = (id: string | null) => {
    if (joining !== null && id !== null && id !== joining.id) {
      joinMarks(job, [joining.id, id]);
      setJoiningId(null);
    }
    setAtId(id);
  };
  // The last mark set is not at hand any more: what is said of the removal comes back into sight.
  const place = (on: boolean) => {
    setPlacing(on);
    if (!on) setAtId(null);
  };
  return {
    marks,
    markers,
    things,
    at,
    next,
    placing,
    setPlacing: place,
    joining,
    setJoiningId,
    pick,
    ...deeds,
  };
}

function joinMarks(job: OpenJob, markerIds: string[]): void {
  void send(job.id, (command) => client.marker.join({ command, jobId: job.id, markerIds }));
}

/** Sets a mark apart from what it goes together with. */
export function partMark(job: OpenJob, markerId: string): void {
  void send(job.id, (command) => client.marker.part({ command, jobId: job.id, markerIds: [markerId] }));
}

/** Gives a mark another number; the mark of this photo that had it gets the other one. */
export function numberMark(job: OpenJob, markerId: string, n: number): void {
  void send(job.id, (command) => client.marker.number({ command, jobId: job.id, markerId, n }));
}

interface Deeds {
  readonly job: OpenJob;
  readonly photoId: string | null;
  readonly markers: readonly MarkerAt[];
  /** What the next mark stands for. */
  readonly thingId: string | null;
  readonly setAhead: Dispatch<SetStateAction<ReadonlyMap<string, Ahead>>>;
  readonly setAtId: Dispatch<SetStateAction<string | null>>;
}

/** Places, changes and takes away marks: shown at once, taken back where the record refuses. */
function markDeeds({ job, photoId, markers, thingId, setAhead, setAtId }: Deeds) {
  /** Shown until a reading that holds it has come; taken back where the record refuses. */
  const show = (marker: MarkerAt, gone: boolean, call: (command: string) => Promise<Reply<unknown>>) => {
    setAhead((now) => new Map(now).set(marker.id, { marker, gone, seq: null }));
    void send(job.id, call).then((done) => {
      const { seq } = journal.getState();
      setAhead((now) => {
        const own = now.get(marker.id);
        // A later change of the same mark stands in its place.
        if (own?.marker !== marker || own.gone !== gone) return now;
        const left = new Map(now);
        if (done === null) left.delete(marker.id);
        else left.set(marker.id, { marker, gone, seq });
        return left;
      });
    });
  };
  const change = (id: string, values: Partial<Pick<MarkerAt, 'x' | 'y' | 'thingId'>>) => {
    const marker = markers.find((one) => one.id === id);
    if (!marker) return;
    show({ ...marker, ...values }, false, (command) =>
      client.record.change({ command, jobId: job.id, table: 'marker', id, values }),
    );
  };
  const place = (x: number, y: number) => {
    if (photoId === null) return;
    const id = v7();
    const n = Math.max(0, ...markers.filter((one) => one.photoId === photoId).map((one) => one.n)) + 1;
    const values = { photoId, n, x, y, thingId };
    show({ id, ...values, togetherId: null }, false, (command) =>
      client.record.make({ command, jobId: job.id, table: 'marker', id, values }),
    );
    setAtId(id);
  };
  const remove = (id: string) => {
    const marker = markers.find((one) => one.id === id);
    if (!marker) return;
    show(marker, true, (command) => client.record.remove({ command, jobId: job.id, table: 'marker', id }));
    setAtId((at) => (at === id ? null : at));
  };
  return { place, change, remove };
}

/** What a mark of this removal may stand for: its own things first, then those of the others. */
function choicesFor(
  removalId: string | null,
  things: ReadonlyMap<string, Markable>,
): { readonly own: Markable[]; readonly others: Markable[] } {
  const all = [...things.values()];
  return {
    own: all.filter((thing) => thing.removalId === removalId),
    others: all.filter((thing) => thing.removalId !== removalId),
  };
}

const named = (one: Markable) => ({ id: one.thingId, name: one.name });

/** The mark at hand in words: what it stands for, what else it could, what it goes together with. */
export function markAtHandOf(
  job: OpenJob,
  marks: ReturnType<typeof useMarks>,
  removalId: string | null,
): MarkAtHand | null {
  const { at, markers, things } = marks;
  const shown = marks.marks.find((mark) => mark.id === at?.id);
  if (!at || !shown) return null;
  const choices = choicesFor(removalId, things);
  const photos = new Map(job.view.state.photo.map((photo) => [photo.id, photo.fileName]));
  const mates = markers.filter(
    (one) => at.togetherId !== null && one.togetherId === at.togetherId && one.id !== at.id,
  );
  return {
    id: at.id,
    name: say.heard(shown.name, say.state(shown.kind, shown.state)),
    number: Number(shown.text),
    thingId: at.thingId,
    own: choices.own.map(named),
    others: choices.others.map(named),
    mates: mates.map((one) => ({
      id: one.id,
      name: things.get(one.thingId ?? '')?.name ?? say.unbound(one.n),
      photo: one.photoId === at.photoId ? null : (photos.get(one.photoId) ?? ''),
      photoId: one.photoId,
    })),
    joining: marks.joining?.id === at.id,
  };
}

/** Said while a mate is looked for: what it shall go together with; null otherwise. */
export function joiningSay({ joining, things }: ReturnType<typeof useMarks>): string | null {
  if (joining === null) return null;
  return say.joining(things.get(joining.thingId ?? '')?.name ?? say.unbound(joining.n));
}
