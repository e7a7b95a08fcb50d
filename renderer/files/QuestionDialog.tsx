import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { fileWords } from '../../engine/messages/index.ts';
import type { Answer, Question } from '../state/sitting.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './files.css';
import { wordTime } from './wordTime.ts';

const words = fileWords.questions;

interface Choice {
  readonly answer: Answer;
  readonly label: string;
  readonly note?: string;
}

interface Asked {
  readonly title: string;
  readonly text: React.ReactNode;
  /** The first is the one that loses nothing. */
  readonly choices: readonly Choice[];
  /** What Escape means. */
  readonly onEscape: Answer;
}

/** A question that must be answered before anything else goes on. The safe answer has the focus; Escape changes nothing. */
export function QuestionDialog() {
  const question = useApp((state) => state.question);
  const dispatch = useDispatch();
  if (!question) return null;
  const { title, text, choices, onEscape } = wordQuestion(question);
  const answer = (given: Answer) => dispatch('answer-question', { answer: given });
  return (
    <ModalOverlay isOpen isDismissable={false} onOpenChange={(open) => !open && answer(onEscape)} className="overlay">
      <Modal className="modal question">
        <Dialog className="sheet" role="alertdialog">
          <Heading slot="title">{title}</Heading>
          {text}
          <div className="question-answers">
            {choices.map((choice, index) => (
              <button
                key={choice.answer}
                type="button"
                // biome-ignore lint/a11y/noAutofocus: a dialog must have the focus, and the safe answer is the place for it.
                autoFocus={index === 0}
                className={index === 0 ? 'button primary' : 'button'}
                onClick={() => answer(choice.answer)}
              >
                {choice.label}
              </button>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function wordQuestion(question: Question): Asked {
  switch (question.kind) {
    case 'unsaved': {
      const { title, what, lost, save, saveDesign, discard, cancel } = words.unsaved;
      // A machine that is based on what no file holds could be compared with nothing later: dropping the design is not offered.
      if (question.leavingFor === 'machine') {
        return {
          title: title(question.name),
          text: <p>{what.machine}</p>,
          choices: [
            { answer: 'save', label: saveDesign },
            { answer: 'cancel', label: cancel },
          ],
          onEscape: 'cancel',
        };
      }
      return {
        title: title(question.name),
        text: (
          <p>
            {what[question.leavingFor]} {lost}
          </p>
        ),
        choices: [
          { answer: 'save', label: save },
          { answer: 'discard', label: discard },
          { answer: 'cancel', label: cancel },
        ],
        onEscape: 'cancel',
      };
    }
    case 'revert': {
      const { title, what, discard, cancel } = words.revert;
      return {
        title: title(question.name),
        text: <p>{what(wordTime(question.modifiedAt))}</p>,
        choices: [
          { answer: 'cancel', label: cancel },
          { answer: 'discard', label: discard },
        ],
        onEscape: 'cancel',
      };
    }
    case 'recovery': {
      const { title, what, kept, file, unreadable, restore, restoreHow, discard, later } = words.recovery;
      return {
        title,
        text: (
          <>
            <p>{what(question.name)}</p>
            <dl className="two-dates">
              <dt>{kept}</dt>
              <dd>{wordTime(question.keptAt)}</dd>
              <dt>{file}</dt>
              <dd>{wordTime(question.modifiedAt)}</dd>
            </dl>
            <p>{question.differences ? fileWords.differences(question.differences) : unreadable}</p>
            <p className="quiet-text">{restoreHow}</p>
          </>
        ),
        choices: [
          { answer: 'restore', label: restore },
          { answer: 'discard', label: discard },
          { answer: 'later', label: later },
        ],
        onEscape: 'later',
      };
    }
  }
}
