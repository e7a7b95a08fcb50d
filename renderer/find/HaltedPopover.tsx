import { useEffect, useRef } from 'react';
import { Popover } from 'react-aria-components';
import { entryWords, windowTexts } from '../../engine/messages/index.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { EntryDialog } from './EntryDialog.tsx';
import { meantKey } from './entryKeys.ts';
import './entry.css';

const words = entryWords.halted;
const answers = [
  { key: '1', halted: true, words: windowTexts.answer.haltedAnswers.yes },
  { key: '2', halted: false, words: windowTexts.answer.haltedAnswers.no },
  { key: '0', halted: null, words: words.notLookedAt },
] as const;

/** The last question of a walk, where nothing that was entered has answered it: whether the control is halted. */
export function HaltedPopover() {
  const { store, dispatch } = useWindow();
  const root = useRef<HTMLDivElement>(null);
  const anchor = useRef<Element | null>(null);
  anchor.current = document.getElementById('caution');
  useEffect(() => root.current?.closest<HTMLElement>('[role="dialog"]')?.focus({ preventScroll: true }), []);
  const close = () => {
    dispatch('close-entry');
    document.getElementById('answer')?.focus({ preventScroll: true });
  };
  const take = ({ halted, words: said }: (typeof answers)[number]) => {
    const before = currentSnapshot(store.getState().caseRecord).halted ?? null;
    if (halted !== before) dispatch('set-halted', { halted });
    dispatch('announce', { text: `${words.entered(said)} ${entryWords.walk.end}` });
    close();
  };
  const goBack = () => {
    const chain = [...store.getState().checked.topology.chains].reverse().find(({ units }) => units.length > 0);
    if (chain) dispatch('open-entry', { entry: { kind: 'report', chain: chain.id, walking: true } });
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.key === 'Backspace') {
      event.preventDefault();
      return goBack();
    }
    const answer = answers.find(({ key }) => key === meantKey(event));
    if (!answer || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    take(answer);
  };
  return (
    <Popover
      triggerRef={anchor}
      isOpen
      isNonModal
      onOpenChange={(open) => !open && close()}
      placement="top start"
      offset={8}
      className="entry-popover"
      shouldCloseOnInteractOutside={(element) => !element.closest('.cabinet')}
    >
      <EntryDialog className="halted" label={windowTexts.answer.isHalted} onKeyDown={onKeyDown}>
        <p className="entry-head">
          <b>{windowTexts.answer.isHalted}</b>
          <button type="button" className="button small" aria-keyshortcuts="Backspace" onClick={goBack}>
            {entryWords.walk.back} <kbd>⌫</kbd>
          </button>
        </p>
        <p className="entry-hint quiet-text">{windowTexts.answer.isHaltedWhy}</p>
        <div className="report-answers" ref={root}>
          {answers.map((answer) => (
            <button key={answer.key} type="button" className="button" aria-keyshortcuts={answer.key} onClick={() => take(answer)}>
              {answer.words} <kbd>{answer.key}</kbd>
            </button>
          ))}
        </div>
      </EntryDialog>
    </Popover>
  );
}
