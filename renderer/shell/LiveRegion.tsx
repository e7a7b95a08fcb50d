import { windowTexts, wordProbability } from '../../engine/messages/index.ts';
import { useCandidateWords } from '../find/candidateWords.ts';
import { selectFindModel } from '../find/findModel.ts';
import { useApp } from '../state/useWorkbench.ts';

/** What a screen reader is told: what was just done, and who is now the first suspect. */
export function LiveRegion() {
  const announcement = useApp((state) => state.announcement);
  const top = useApp((state) => selectFindModel(state).rows[0]?.candidate);
  const stale = useApp((state) => selectFindModel(state).stale);
  const candidateWords = useCandidateWords();
  const answer = top ? `${windowTexts.answer.lookFirst(candidateWords.object(top))} ${wordProbability(top.probability)}` : '';
  return (
    <>
      <div className="screen-reader" role="status" data-announcement={announcement.number}>
        {announcement.text}
      </div>
      <div className="screen-reader" aria-live="polite">
        {stale ? '' : answer}
      </div>
    </>
  );
}
