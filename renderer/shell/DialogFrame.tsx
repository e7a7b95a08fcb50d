import { X } from 'lucide-react';
import type { ReactNode } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import './dialogFrame.css';

interface Props {
  readonly title: string;
  /** Words of the button that closes it. */
  readonly close: string;
  readonly onClose: () => void;
  /** Class of what is worked on; the frame bears the same with `-modal`. */
  readonly name: string;
  /** Whether a click beside it closes it. */
  readonly isDismissable?: boolean;
  /** Between the title and the button that closes it. */
  readonly tools?: ReactNode;
  readonly children: ReactNode;
}

/** A large dialog to work in: its title, a button that closes it, and below what is worked on. */
export function DialogFrame({ title, close, onClose, name, isDismissable = true, tools, children }: Props) {
  return (
    <ModalOverlay isOpen isDismissable={isDismissable} onOpenChange={(open) => !open && onClose()} className="overlay">
      <Modal className={`modal work-modal ${name}-modal`}>
        <Dialog className="work-dialog">
          <header className="dialog-head">
            <Heading slot="title">{title}</Heading>
            {tools}
            <button type="button" className="icon-button" aria-label={close} title={close} onClick={onClose}>
              <X size={18} aria-hidden="true" />
            </button>
          </header>
          <div className={name}>{children}</div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
