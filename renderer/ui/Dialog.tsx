import type { ReactNode } from 'react';
import { Dialog as Trap, Heading, Modal, ModalOverlay } from 'react-aria-components';

export interface DialogProps {
  readonly open: boolean;
  readonly title: string;
  /** True when the answer cannot be undone: it does not close by a click beside it. */
  readonly grave?: boolean;
  /** A page rather than a question. */
  readonly wide?: boolean;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A question that must be answered before anything else. Keeps the focus inside and gives it back. */
export function Dialog({ open, title, grave = false, wide = false, onClose, children }: DialogProps) {
  return (
    <ModalOverlay
      className="veil"
      isOpen={open}
      isDismissable={!grave}
      onOpenChange={(now) => {
        if (!now) onClose();
      }}
    >
      <Modal className={wide ? 'dialog wide on-sheet' : 'dialog on-sheet'}>
        <Trap role={grave ? 'alertdialog' : 'dialog'}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </Trap>
      </Modal>
    </ModalOverlay>
  );
}
