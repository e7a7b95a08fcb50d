import { Keyboard, Syringe, X } from 'lucide-react';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { useCandidateWords } from '../find/candidateWords.ts';
import { selectFindModel } from '../find/findModel.ts';
import { Words } from '../marks/Words.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { Zoomer } from './Zoomer.tsx';

/** What the drawing shows, and the few things to do with it. */
export function CanvasHead() {
  const dispatch = useDispatch();
  const chosen = useApp((state) => selectFindModel(state).chosen);
  const snapshots = useApp((state) => state.caseRecord.evidence.snapshots.length);
  const restarted = useApp(
    (state) => state.caseRecord.evidence.snapshots[state.caseRecord.evidence.snapshots.length - 1]?.restarted ?? false,
  );
  const words = useCandidateWords();
  const assumed = chosen?.prediction?.assumedOnset ?? null;
  return (
    <div className="canvas-head">
      <p className="canvas-title">
        <b>{windowTexts.cabinet.region}</b>{' '}
        {chosen ? (
          <>
            <span className="quiet-text">{windowTexts.cabinet.seenAbove}</span>{' '}
            <span className="tag big">
              <span>
                <Words>{words.title(chosen.candidate).text}</Words>
              </span>
              <button
                type="button"
                aria-label={windowTexts.cabinet.stopPredicting}
                title={windowTexts.cabinet.stopPredicting}
                onClick={() => dispatch('choose-candidate', { chosen: { by: 'nobody' }, subject: null })}
              >
                <X size={13} aria-hidden="true" />
              </button>
            </span>
            {assumed && <span className="quiet-text"> {windowTexts.cabinet.assumed(assumed)}</span>}
          </>
        ) : (
          <span className="quiet-text">{windowTexts.cabinet.seenOnly}</span>
        )}
        {snapshots > 1 && <span className="quiet-text"> · {windowTexts.cabinet.snapshot(snapshots, restarted)}</span>}
      </p>
      <div className="canvas-tools">
        <button type="button" className="button small" onClick={() => dispatch('walk-displays')}>
          <Keyboard size={16} aria-hidden="true" />
          {windowTexts.cabinet.walk} <kbd>E</kbd>
        </button>
        <button type="button" className="button small" onClick={() => dispatch('toggle-inject')}>
          <Syringe size={16} aria-hidden="true" />
          {injectWords.button} <kbd>I</kbd>
        </button>
        <Zoomer />
      </div>
    </div>
  );
}
