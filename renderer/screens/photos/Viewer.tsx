import { type ReactNode, useEffect } from 'react';
import { Dialog, Modal, ModalOverlay } from 'react-aria-components';
import { PhotoView, type PhotoViewProps } from '../../photo/PhotoView.tsx';
import type { PhotoData } from '../../photo/types.ts';
import { gallery as say } from '../../texts/gallery.ts';
import { Key } from '../../ui/Key.tsx';
import type { ShotFact } from './types.ts';

export interface ViewerProps {
  readonly photo: PhotoData;
  /** Which of those in the grid it is, from 1. */
  readonly number: number;
  readonly total: number;
  readonly facts: readonly ShotFact[];
  readonly marks: Pick<
    PhotoViewProps,
    'marks' | 'atId' | 'placing' | 'placingSay' | 'onPick' | 'onPlace' | 'onMove' | 'onRemove'
  >;
  /** Said while the mate of a mark is looked for. */
  readonly joiningSay: string | null;
  /** The mark at hand and what may become of it. */
  readonly markPanel: ReactNode;
  readonly onPlacing: (placing: boolean) => void;
  readonly onPrevious: (() => void) | null;
  readonly onNext: (() => void) | null;
  readonly onClose: () => void;
}

/** One photo as large as the window, with its marks and all that is known of it. */
export function Viewer(props: ViewerProps) {
  const { marks, onPlacing, onClose } = props;
  const placing = marks.placing === true;
  // A touch on a mark that leads to another photo leaves the focus nowhere for a moment; Escape closes all the same.
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && document.activeElement === document.body) onClose();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onClose]);
  return (
    <ModalOverlay
      className="viewer-ground"
      isOpen
      onOpenChange={(open) => {
        if (!open) props.onClose();
      }}
    >
      <Modal className="viewer-window">
        <Dialog aria-label={say.viewer(props.number, props.total)} className="viewer">
          <div className="viewer-photo">
            <PhotoView key={props.photo.id} photo={props.photo} fit="whole" zoomKeys {...marks}>
              {props.joiningSay !== null && <p className="plate">{props.joiningSay}</p>}
              <button
                type="button"
                className="plate"
                onClick={() => onPlacing(!placing)}
                aria-pressed={placing}
              >
                {placing ? say.markDone : say.mark}
              </button>
            </PhotoView>
          </div>
          <ViewerHand {...props} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function ViewerHand(props: ViewerProps) {
  return (
    <section className="hand viewer-hand">
      <p className="cap num">{say.viewer(props.number, props.total)}</p>
      {props.markPanel}
      <dl className="shot-facts">
        {props.facts.map((fact) => (
          <div key={fact.label}>
            <dt>{fact.label}</dt>
            <dd className={fact.said ? 'said' : undefined}>{fact.value}</dd>
          </div>
        ))}
      </dl>
      <div className="foot keys">
        <Key
          onPress={() => props.onPrevious?.()}
          off={props.onPrevious === null}
          hint="←"
          shortcut="ArrowLeft"
        >
          {say.previous}
        </Key>
        <Key onPress={() => props.onNext?.()} off={props.onNext === null} hint="→" shortcut="ArrowRight">
          {say.next}
        </Key>
        <Key onPress={props.onClose} hint="Esc" shortcut="Escape">
          {say.close}
        </Key>
      </div>
    </section>
  );
}
