import { useEffect } from 'react';
import type { OpenJob } from '../data/job.ts';
import { factsOf, type Shot, type Tray } from '../model/gallery.ts';
import { photosOf } from '../model/photos.ts';
import { Viewer } from '../screens/photos/Viewer.tsx';
import { MarkPanel } from '../screens/removal/MarkPanel.tsx';
import { marks as say } from '../texts/marks.ts';
import { joiningSay, markAtHandOf, numberMark, partMark, useMarks } from './use-marks.ts';

interface ViewerPageProps {
  readonly job: OpenJob;
  readonly shots: readonly Shot[];
  readonly groups: Tray['groups'];
  /** Photos in the order of the grid. */
  readonly order: readonly string[];
  readonly photoId: string;
  readonly onShow: (photoId: string) => void;
  readonly onClose: () => void;
}

/** One photo of the gallery as large as the window. */
export function ViewerPage({ job, shots, groups, order, photoId, onShow, onClose }: ViewerPageProps) {
  const shot = shots.find((one) => one.photo.id === photoId);
  const photo = photosOf(job.view, null).find((one) => one.id === photoId);
  const removalId = shot?.photo.removalId ?? null;
  const marks = useMarks(job, removalId, photoId);
  const at = order.indexOf(photoId);
  const to = (id: string | undefined) => (id === undefined ? null : () => onShow(id));
  const [previous, next] = [to(order[at - 1]), to(order[at + 1])];
  usePageKeys(previous, next);
  if (!shot || !photo) return null;
  const mark = markAtHandOf(job, marks, removalId);
  return (
    <Viewer
      photo={photo}
      number={at + 1}
      total={order.length}
      facts={factsOf(job.view, shot, groups, job.now)}
      marks={{
        marks: marks.marks,
        atId: mark?.id ?? null,
        placing: marks.placing,
        placingSay: marks.next === null ? say.placing : say.placingFor(marks.next.name),
        onPick: marks.pick,
        onPlace: marks.place,
        onMove: (id, x, y) => marks.change(id, { x, y }),
        onRemove: marks.remove,
      }}
      joiningSay={joiningSay(marks)}
      markPanel={
        mark && (
          <MarkPanel
            mark={mark}
            onBind={(thingId) => marks.change(mark.id, { thingId })}
            onRemove={() => marks.remove(mark.id)}
            onLeave={() => {
              marks.setJoiningId(null);
              marks.pick(null);
            }}
            onNumber={(n) => numberMark(job, mark.id, n)}
            onJoin={() => marks.setJoiningId(marks.joining === null ? mark.id : null)}
            onPart={() => partMark(job, mark.id)}
            onShowPhoto={onShow}
          />
        )
      }
      onPlacing={marks.setPlacing}
      onPrevious={previous}
      onNext={next}
      onClose={onClose}
    />
  );
}

/** Left and right turn the page, unless the photo or a mark used the key. */
function usePageKeys(previous: (() => void) | null, next: (() => void) | null): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      const elsewhere = target instanceof Element && target.closest('input, select, .mark-key') !== null;
      if (event.defaultPrevented || elsewhere || event.ctrlKey || event.altKey) return;
      if (event.key === 'ArrowLeft' || event.key === 'PageUp') previous?.();
      else if (event.key === 'ArrowRight' || event.key === 'PageDown') next?.();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
}
