import { endStateWords, endTexts, windowTexts, wordProbability } from '../../engine/messages/index.ts';
import { useCandidateWords } from '../find/candidateWords.ts';
import { selectFindModel } from '../find/findModel.ts';
import { selectPlan } from '../find/stepModel.ts';
import type { AppState } from '../state/appState.ts';
import { runsSinceHandled } from '../state/evidence.ts';
import { useApp } from '../state/useWorkbench.ts';

/** What a screen reader is told: what was just done, and who is now the first suspect, or that the machine runs. */
export function LiveRegion() {
  const announcement = useApp((state) => state.announcement);
  const top = useApp((state) => selectFindModel(state).rows[0]?.candidate);
  const stale = useApp((state) => selectFindModel(state).stale);
  const ended = useApp(wordEnd);
  const candidateWords = useCandidateWords();
  const answer = top ? `${windowTexts.answer.lookFirst(candidateWords.object(top))} ${wordProbability(top.probability)}` : '';
  return (
    <>
      <div className="screen-reader" role="status" data-announcement={announcement.number}>
        {announcement.text}
      </div>
      <div className="screen-reader" aria-live="polite">
        {stale ? '' : (ended ?? answer)}
      </div>
    </>
  );
}

/** How far the cause of a machine that runs again is proved; null before. */
function wordEnd(state: AppState): string | null {
  if (!runsSinceHandled(state.caseRecord)) return null;
  const end = selectPlan(state)?.end.end ?? 'open';
  return end === 'open' ? endTexts.runs : endTexts.runsAs(endStateWords[end].label);
}
