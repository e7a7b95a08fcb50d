import { type FormEvent, useId, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { comparisonWords } from '../../engine/messages/index.ts';
import { longestLine } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './compare.css';

const words = comparisonWords.machine;

/** Asks how the new machine is called that is made from the cabinet in the window. */
export function NewMachineDialog() {
  const asked = useApp((state) => state.machineAsked);
  return asked ? <AskMachine /> : null;
}

function AskMachine() {
  const dispatch = useDispatch();
  const design = useApp((state) => state.cabinet.name);
  const [name, setName] = useState(design);
  const [machineNumber, setNumber] = useState('');
  const id = useId();
  const close = () => dispatch('ask-new-machine', { asked: false });
  const make = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') return;
    close();
    dispatch('make-machine', { name: name.trim(), machineNumber: machineNumber.trim() });
  };
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && close()} className="overlay">
      <Modal className="modal">
        <Dialog className="sheet">
          <Heading slot="title">{words.title}</Heading>
          <form className="machine-form" onSubmit={make}>
            <p>{words.about(design)}</p>
            <label htmlFor={`${id}-name`}>{words.name}</label>
            <input
              id={`${id}-name`}
              autoFocus
              required
              maxLength={longestLine}
              value={name}
              onChange={(event) => setName(event.target.value)}
            />
            <label htmlFor={`${id}-number`}>{words.number}</label>
            <input id={`${id}-number`} maxLength={longestLine} value={machineNumber} onChange={(event) => setNumber(event.target.value)} />
            <div className="sheet-end">
              <button type="button" className="button" onClick={close}>
                {words.cancel}
              </button>
              <button type="submit" className="button primary">
                {words.make}
              </button>
            </div>
          </form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
