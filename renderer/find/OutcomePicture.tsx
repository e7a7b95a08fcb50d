import { stepCardTexts, wordProbability } from '../../engine/messages/index.ts';
import type { StepOutcome } from '../../engine/steps/index.ts';
import { Words } from '../marks/Words.tsx';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { wordSpotShort } from './candidateWords.ts';
import { changesAfter } from './stepModel.ts';

/**
 * What an outcome would raise or clear: for each place that is suspected most a bar of how likely it would be then, and a stroke where
 * it stands now. The places are the same for every outcome, so that the pictures can be compared.
 */
export function OutcomePicture({ outcome }: { readonly outcome: StepOutcome }) {
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const names = useApp((state) => namesOf(state.checked.topology));
  if (!diagnosis || outcome.suspects.length === 0) return null;
  const changes = changesAfter(outcome, diagnosis).map(({ spot, before, after }) => ({ place: wordSpotShort(names, spot), before, after }));
  const words = stepCardTexts.picture(
    changes.map(({ place, before, after }) => ({ place, before: wordProbability(before), after: wordProbability(after) })),
  );
  return (
    <span className="outcome-picture" title={words} aria-hidden="true">
      {changes.map(({ place, before, after }) => (
        <span key={place} className={after > before ? 'raised' : 'cleared'}>
          <span className="place">
            <Words>{place}</Words>
          </span>
          <span className="track">
            <span className="bar" style={{ width: `${after * 100}%` }} />
            <span className="stroke" style={{ left: `${before * 100}%` }} />
          </span>
        </span>
      ))}
    </span>
  );
}
