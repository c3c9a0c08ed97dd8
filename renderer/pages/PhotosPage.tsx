import { type DragEvent, useEffect, useMemo, useRef, useState } from 'react';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { keyIsTaken } from '../data/keys.ts';
import { usePhotoTray } from '../data/queries.ts';
import { addPhotos, uploads } from '../data/upload.ts';
import { filterCounts, sectionsOf, shotsOf, type Shot, type Tray } from '../model/gallery.ts';
import { logOf } from '../model/line.ts';
import { PHOTO_DRAG } from '../photo/drag.ts';
import { shownIds } from '../screens/photos/layout.ts';
import { PhotosScreen, type Role } from '../screens/photos/PhotosScreen.tsx';
import type { FilterRow, PhotoFilter } from '../screens/photos/types.ts';
import { gallery as say } from '../texts/gallery.ts';
import { paneOf, useStatus } from './pane.ts';
import { RollsPage } from './RollsPage.tsx';
import { useDrop } from './use-drop.ts';
import { useSelection } from './use-selection.ts';
import { ViewerPage } from './ViewerPage.tsx';

/** The same each time, or the store would take it for news. */
const NOTHING: readonly string[] = [];
const NO_TRAY: Tray = { groups: [], dark: [] };

/** What may become of photos; each is one command, so one undo. */
function deedsOf(job: OpenJob) {
  const { id: jobId } = job;
  return {
    file: (photoIds: string[], removalId: string | null) =>
      void send(jobId, (command) => client.photo.file({ command, jobId, photoIds, removalId })),
    remove: (photoIds: string[]) =>
      void send(jobId, (command) => client.photo.remove({ command, jobId, photoIds })),
    role: (photoIds: string[], role: Role) =>
      void send(jobId, (command) => client.photo.role({ command, jobId, photoIds, role })),
  };
}

interface Keys {
  readonly onType: (digit: string) => void;
  readonly onErase: () => void;
  readonly byKey: Readonly<Record<string, (() => void) | undefined>>;
}

/** Keys of the whole screen; not while something is typed or a photo is looked at. */
function usePhotoKeys(keys: Keys): void {
  const now = useRef(keys);
  useEffect(() => {
    now.current = keys;
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { onType, onErase, byKey } = now.current;
      const ctrlA = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a';
      if (ctrlA && !(event.target instanceof HTMLInputElement)) {
        event.preventDefault();
        byKey['all']?.();
        return;
      }
      const onTile = event.target instanceof Element && event.target.closest('[data-photo]') !== null;
      // Enter on a photo means what is selected, not one more touch of it.
      if (keyIsTaken(event) && !(onTile && event.key === 'Enter')) return;
      if (/^\d$/.test(event.key)) onType(event.key);
      else if (event.key === 'Backspace') onErase();
      else {
        const act = byKey[event.key.length === 1 ? event.key.toLowerCase() : event.key];
        if (!act) return;
        act();
      }
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}

function filterRows(job: OpenJob, shots: readonly Shot[], tray: Tray, removalId: string | null): FilterRow[] {
  const counts = filterCounts(shots, tray.groups);
  const rows: FilterRow[] = (
    ['all', 'unfiled', 'found', 'refitted', 'poor', 'alike', 'unbound'] as const
  ).map((id) => ({ id, label: say.filters[id], count: counts[id] }));
  const log = logOf(job.view);
  const at = log.findIndex((removal) => removal.id === removalId);
  const removal = log[at];
  if (!removal) return rows;
  const count = shots.filter((shot) => shot.photo.removalId === removal.id).length;
  return [...rows, { id: 'removal', label: say.ofRemoval(at + 1, removal.title), count }];
}

const roleOf = (shots: readonly Shot[], selected: ReadonlySet<string>): Role | null => {
  const roles = new Set(shots.filter((shot) => selected.has(shot.photo.id)).map((shot) => shot.photo.role));
  return roles.size === 1 ? ([...roles][0] ?? null) : null;
};

/** All photos of a job. */
export function PhotosPage({ job }: { readonly job: OpenJob }) {
  const tray: Tray = usePhotoTray(job.id).data?.value ?? NO_TRAY;
  const [filter, setFilter] = useState<PhotoFilter>('all');
  const [removalId, setRemovalId] = useState<string | null>(null);
  const [rolling, setRolling] = useState<readonly string[] | null>(null);
  const [viewId, setViewId] = useState<string | null>(null);
  const shots = useMemo(() => shotsOf(job.view, tray), [job.view, tray]);
  const sections = useMemo(
    () => sectionsOf(job.view, shots, { filter, removalId, groups: tray.groups }, job.now),
    // The time of day only chooses words.
    [job.view, shots, filter, removalId, tray.groups],
  );
  const order = useMemo(() => shownIds(sections), [sections]);
  if (rolling !== null)
    return <RollsPage job={job} photoIds={rolling} shots={shots} onEnd={() => setRolling(null)} />;
  return (
    <>
      <GalleryPage
        job={job}
        tray={tray}
        shots={shots}
        sections={sections}
        order={order}
        filter={filter}
        removalId={removalId}
        onFilter={(to, ofRemoval) => {
          setFilter(to);
          if (ofRemoval !== undefined) setRemovalId(ofRemoval);
        }}
        onRoll={setRolling}
        onView={setViewId}
      />
      {viewId !== null && (
        <ViewerPage
          job={job}
          shots={shots}
          groups={tray.groups}
          order={order}
          photoId={viewId}
          onShow={setViewId}
          onClose={() => setViewId(null)}
        />
      )}
    </>
  );
}

interface GalleryPageProps {
  readonly job: OpenJob;
  readonly tray: Tray;
  readonly shots: readonly Shot[];
  readonly sections: ReturnType<typeof sectionsOf>;
  readonly order: readonly string[];
  readonly filter: PhotoFilter;
  readonly removalId: string | null;
  readonly onFilter: (filter: PhotoFilter, removalId?: string) => void;
  readonly onRoll: (photoIds: readonly string[]) => void;
  readonly onView: (photoId: string) => void;
}

/** What is selected and typed, and what the keys of the screen do with it. */
function useWork({ job, shots, order, onRoll, onView }: GalleryPageProps) {
  const select = useSelection(order);
  const [typed, setTyped] = useState('');
  const deeds = deedsOf(job);
  const ids = [...select.selected];
  const some = ids.length > 0;
  const log = logOf(job.view);
  const unfiled = shots.filter((shot) => shot.photo.removalId === null).map((shot) => shot.photo.id);
  const file = () => {
    if (!some || typed === '') return;
    const removal = log[Number(typed) - 1];
    if (!removal) journal.getState().refuse(say.noRemoval(typed, log.length));
    else deeds.file(ids, removal.id);
    setTyped('');
  };
  const look = () => {
    const here = select.atId !== null && (!some || select.selected.has(select.atId));
    const id = here ? select.atId : ids[0];
    if (id !== null && id !== undefined) onView(id);
  };
  const onSelectNone = () => {
    select.none();
    setTyped('');
  };
  const act = {
    onFile: file,
    onUnfile: () => some && deeds.file(ids, null),
    onAway: () => some && deeds.remove(ids),
    onMake: () => onRoll(some ? ids : unfiled),
    onLook: look,
    onSelectAll: select.all,
    onSelectNone,
    onRole: (role: Role) => deeds.role(ids, role),
    onKeepBest: (group: readonly string[]) => deeds.remove(group.slice(1)),
  };
  usePhotoKeys({
    onType: (digit) => some && setTyped((now) => (now + digit).slice(0, 4)),
    onErase: () => setTyped((now) => now.slice(0, -1)),
    byKey: {
      all: select.all,
      Enter: typed === '' ? look : file,
      u: act.onUnfile,
      m: some || unfiled.length > 0 ? act.onMake : undefined,
      l: look,
      Delete: act.onAway,
      Escape: onSelectNone,
    },
  });
  return { select, typed, setTyped, deeds, ids, unfiled: unfiled.length, act };
}

function GalleryPage(props: GalleryPageProps) {
  const { job, tray, shots, order, filter, removalId, onFilter, onView } = props;
  const status = useStatus(job);
  const { select, typed, setTyped, deeds, ids, unfiled, act } = useWork(props);
  const said = uploads((now) => (now.said?.jobId === job.id ? now.said.sentences : NOTHING));
  const add = (files: readonly File[]) => addPhotos(job.id, files);
  const dropping = useDrop(add);
  const dragged = useRef<readonly string[]>([]);
  const onDrag = (id: string, event: DragEvent) => {
    dragged.current = select.selected.has(id) ? ids : [id];
    event.dataTransfer.setData(PHOTO_DRAG, '');
    event.dataTransfer.effectAllowed = 'move';
  };
  const at = filter === 'removal' ? removalId : null;
  const pane = paneOf(job, 'photos', 'apart', at, (id) => onFilter('removal', id));
  return (
    <PhotosScreen
      pane={{ ...pane, onDropPhotos: (id) => deeds.file([...dragged.current], id) }}
      status={status}
      sections={props.sections}
      selected={select.selected}
      atId={select.atId}
      filters={filterRows(job, shots, tray, removalId)}
      filter={filter}
      shown={order.length}
      unfiled={unfiled}
      typed={typed}
      role={roleOf(shots, select.selected)}
      said={said}
      dropping={dropping}
      onTouch={select.touch}
      onAt={select.goTo}
      onOpen={onView}
      onDrag={onDrag}
      onFilter={(to) => onFilter(to)}
      onType={(text) => setTyped(text.replace(/\D/g, '').slice(0, 4))}
      {...act}
      onMakeAll={act.onMake}
      onSaidAway={() => uploads.getState().read()}
      onAddPhotos={add}
    />
  );
}
