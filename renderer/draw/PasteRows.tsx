import { useMemo, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { Problem } from '../../engine/base/index.ts';
import { readRows } from '../../engine/edit/index.ts';
import { drawWords, wordProblem } from '../../engine/messages/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';

const mostTold = 4;

/** A whole cabinet from the rows of a spreadsheet: what would be made is said while it is typed. */
export function PasteRows() {
  const dispatch = useDispatch();
  const [text, setText] = useState('');
  const read = useMemo(() => readRows(text), [text]);
  const words = drawWords.rows;
  const close = () => dispatch('close-draw-dialog');
  const chains = read.ok ? new Set(read.value.rows.map(({ chain }) => chain).filter((chain) => chain !== null)).size : 0;
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && close()} className="overlay">
      <Modal className="modal">
        <Dialog className="sheet">
          <Heading slot="title">{words.title}</Heading>
          <form
            className="rows-form"
            onSubmit={(event) => {
              event.preventDefault();
              if (!read.ok) return;
              close();
              dispatch('paste-row-text', { text });
            }}
          >
            <label>
              <span className="quiet-text">{words.how}</span>
              <textarea autoFocus rows={9} spellCheck={false} value={text} onChange={(event) => setText(event.target.value)} />
            </label>
            <div aria-live="polite">
              {read.ok && <p>{words.makes(read.value.rows.length, chains, read.value.ignored)}</p>}
              {!read.ok && text.trim() !== '' && (
                <ul className="refused">
                  {told(read.problems).map(({ title, whatToDo }) => (
                    <li key={title}>
                      <b>{title}</b> {whatToDo}
                    </li>
                  ))}
                </ul>
              )}
            </div>
            <div className="sheet-end">
              <button type="button" className="button" onClick={close}>
                {words.cancel}
              </button>
              <button type="submit" className="button primary" disabled={!read.ok}>
                {words.build}
              </button>
            </div>
          </form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** The first problems in words; what is to be done is said once where the one before asks for the same. */
function told(problems: readonly Problem[]): readonly { readonly title: string; readonly whatToDo: string }[] {
  const words = problems.slice(0, mostTold).map(wordProblem);
  return words.map(({ title, whatToDo }, index) => ({ title, whatToDo: words[index - 1]?.whatToDo === whatToDo ? '' : whatToDo }));
}
