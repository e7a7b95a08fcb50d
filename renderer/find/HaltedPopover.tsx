import { entryWords, windowTexts } from '../../engine/messages/index.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { EntryFrame } from './EntryFrame.tsx';
import { meantKey } from './entryKeys.ts';

const words = entryWords.halted;
const answers = [
  { key: '1', halted: true, words: windowTexts.answer.haltedAnswers.yes },
  { key: '2', halted: false, words: windowTexts.answer.haltedAnswers.no },
  { key: '0', halted: null, words: words.notLookedAt },
] as const;

/** The last question of a walk, where nothing that was entered has answered it: whether the control is halted. */
export function HaltedPopover() {
  const { store, dispatch } = useWindow();
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
    <EntryFrame
      label={windowTexts.answer.isHalted}
      head={
        <>
          <b>{windowTexts.answer.isHalted}</b>
          <button type="button" className="button small" aria-keyshortcuts="Backspace" onClick={goBack}>
            {entryWords.walk.back} <kbd>⌫</kbd>
          </button>
        </>
      }
      anchor={document.getElementById('caution')}
      placement="top start"
      dialogClass="halted"
      staysOpenOn=".cabinet"
      onClose={close}
      onKeyDown={onKeyDown}
    >
      <p className="entry-hint quiet-text">{windowTexts.answer.isHaltedWhy}</p>
      <div className="report-answers">
        {answers.map((answer) => (
          <button key={answer.key} type="button" className="button" aria-keyshortcuts={answer.key} onClick={() => take(answer)}>
            {answer.words} <kbd>{answer.key}</kbd>
          </button>
        ))}
      </div>
    </EntryFrame>
  );
}
