import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { appVersion } from '../../engine/base/index.ts';
import { fileWords, windowTexts, wordProblem } from '../../engine/messages/index.ts';
import { wordTime } from '../files/wordTime.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './dialogs.css';

const mostProblems = 20;

function Sheet({
  title,
  onClose,
  close,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  readonly close: string;
  readonly children: React.ReactNode;
}) {
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && onClose()} className="overlay">
      <Modal className="modal">
        <Dialog className="sheet">
          <Heading slot="title">{title}</Heading>
          {children}
          <div className="sheet-end">
            <button type="button" className="button primary" onClick={onClose}>
              {close}
            </button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** A file that was not taken: what is wrong, where, and what to do. */
export function RefusedDialog() {
  const refused = useApp((state) => state.refused);
  const dispatch = useDispatch();
  if (!refused) return null;
  return (
    <Sheet
      title={fileWords.refusedTitle[refused.deed](refused.name)}
      close={windowTexts.refused.close}
      onClose={() => dispatch('close-refused')}
    >
      <ul className="refused">
        {refused.problems.slice(0, mostProblems).map((problem) => {
          const { title, explanation, whatToDo } = wordProblem(problem);
          return (
            <li key={`${problem.code} ${problem.where} ${JSON.stringify(problem.facts)}`}>
              <b>{title}</b>
              <p>
                {explanation} {whatToDo}
              </p>
              {problem.where !== '' && <p className="code quiet-text">{problem.where}</p>}
            </li>
          );
        })}
        {refused.problems.length > mostProblems && <li>{windowTexts.moreProblems(refused.problems.length - mostProblems)}</li>}
      </ul>
      {refused.deed === 'kept' && <p>{fileWords.nothingKept(refused.name ?? '')}</p>}
      {refused.deed === 'open' && <p className="quiet-text">{windowTexts.refused.untouched}</p>}
      {refused.kept && (
        <p className="kept-copy">
          {fileWords.keptThere(wordTime(refused.kept.keptAt))}
          <button type="button" className="button" onClick={() => dispatch('open-refused-kept')}>
            {fileWords.openKept}
          </button>
        </p>
      )}
    </Sheet>
  );
}

/** What the program is, and what it never replaces. */
export function AboutDialog() {
  const shown = useApp((state) => state.aboutShown);
  const dispatch = useDispatch();
  if (!shown) return null;
  const words = windowTexts.about;
  return (
    <Sheet title={words.title} close={words.close} onClose={() => dispatch('about', { shown: false })}>
      <div className="about">
        <p className="quiet-text">{words.version(appVersion)}</p>
        <p>{words.what}</p>
        <p>{words.offline}</p>
        <p>{words.figures}</p>
        <p className="about-care">{words.care}</p>
        <p className="quiet-text">{words.licence}</p>
      </div>
    </Sheet>
  );
}
