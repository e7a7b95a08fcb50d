import { displayAgreement, reportAgreement } from '../../engine/diagnosis/index.ts';
import { injectWords, makeWords, meaningWords, windowTexts, wordGaps, wordMeanings } from '../../engine/messages/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import { Words } from '../marks/Words.tsx';
import { beginDraft } from '../practice/makeStore.ts';
import type { AppState } from '../state/appState.ts';
import { currentSnapshot, findDisplay, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { selectInjectModel } from './injectModel.ts';
import './light.css';

const mostContrary = 2;

/** How the simulated pattern compares with what was seen, and the way into the case. */
export function AgainstSeen() {
  const dispatch = useDispatch();
  const { fitting, contrary } = useApp(compare);
  const { faults, onset } = useApp((state) => state.inject);
  const nothing = faults.length === 0;
  const of = fitting + contrary.length;
  return (
    <section className="pane against-seen" aria-label={injectWords.against}>
      <div className="section-head">
        <h2>{injectWords.against}</h2>
      </div>
      <p>{of === 0 ? injectWords.nothingSeen : injectWords.fits(fitting, of, nothing)}</p>
      {(nothing ? [] : contrary).slice(0, mostContrary).map((sentence) => (
        <p key={sentence} className="contrary">
          <Words>{sentence}</Words>
        </p>
      ))}
      <p className="take-buttons">
        <button type="button" className="button small" onClick={() => dispatch('ask-take-pattern')}>
          {injectWords.take.button} <kbd>P</kbd>
        </button>
        <button
          type="button"
          className="button small"
          disabled={nothing}
          onClick={() => {
            beginDraft({ faults, onset });
            dispatch('practice-make');
          }}
        >
          {makeWords.ofInjected}
        </button>
      </p>
    </section>
  );
}

interface Comparison {
  readonly fitting: number;
  readonly contrary: readonly string[];
}

let last: { readonly model: unknown; readonly record: unknown; readonly comparison: Comparison } | null = null;

function compare(state: AppState): Comparison {
  const model = selectInjectModel(state);
  if (last && last.model === model && last.record === state.caseRecord) return last.comparison;
  const { topology } = state.checked;
  const names = namesOf(topology);
  const snapshot = currentSnapshot(state.caseRecord);
  const words = windowTexts.suspects;
  let fitting = 0;
  const contrary: string[] = [];
  for (const unit of model ? inReadingOrder(topology) : []) {
    const seen = findDisplay(snapshot, unit)?.meanings ?? [];
    const predicted = model?.pattern.displays.get(unit)?.meaning;
    if (predicted === undefined || seen.length === 0) continue;
    if (displayAgreement(seen, predicted) === 'fits') fitting += 1;
    else contrary.push(words.wouldShow(names.unit(unit), meaningWords[predicted].label, wordMeanings(seen)));
  }
  for (const [chain, report] of model?.pattern.reports ?? []) {
    const seen = findReport(snapshot, chain)?.gaps;
    if (!seen || !report.speaks) continue;
    if (reportAgreement(seen, report.gap) === 'fits') fitting += 1;
    else contrary.push(words.wouldReport(names.chain(chain), wordGaps(names, chain, [report.gap]), wordGaps(names, chain, seen)));
  }
  last = { model, record: state.caseRecord, comparison: { fitting, contrary } };
  return last.comparison;
}
