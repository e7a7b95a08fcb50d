import { memo } from 'react';
import { sideTexts, stepCardTexts, stepTexts, wordPlainSteps, wordTimeSpan } from '../../engine/messages/index.ts';
import type { PlannedStep } from '../../engine/plan/index.ts';
import { Words } from '../marks/Words.tsx';
import { hasObservations } from '../state/evidence.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { OtherSteps } from './OtherSteps.tsx';
import { isSettled, selectPlan, selectShownStep, settledInHundred } from './stepModel.ts';

/** How the step that is shown is done, and what else could be done. */
export function StepMore() {
  const shown = useApp(selectShownStep);
  const plan = useApp(selectPlan);
  const wanted = useApp((state) => state.checked.cabinet !== null && hasObservations(state.caseRecord));
  const impossible = useApp((state) => lastDiagnosis(state.diagnosis)?.impossible !== false);
  if (!wanted) return null;
  return (
    <>
      {shown && !impossible && <How planned={shown} />}
      {plan && <OtherSteps plan={plan} shown={shown} />}
    </>
  );
}

/** Drawn again only for another step. */
const How = memo(HowView);

function HowView({ planned }: { readonly planned: PlannedStep }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  return (
    <section id="how" className="pane step-how" aria-label={sideTexts.how} tabIndex={-1}>
      <ol className="step-plain" aria-label={stepCardTexts.does}>
        {wordPlainSteps(names, planned).map((sentence) => (
          <li key={sentence}>
            <Words>{sentence}</Words>
          </li>
        ))}
      </ol>
      <Worth planned={planned} />
    </section>
  );
}

/** What the step is expected to bring, and to cost down to the repaired machine. */
function Worth({ planned }: { readonly planned: PlannedStep }) {
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  if (!diagnosis) return null;
  const { step, mends } = planned;
  const says = [
    step.do === 'act' ? stepTexts.mends(Math.round(mends * 100)) : '',
    step.do === 'act' || step.do === 'provoke' || isSettled(diagnosis) ? '' : stepTexts.settles(settledInHundred(planned, diagnosis)),
  ];
  return (
    <p className="step-settles">
      {says.filter((sentence) => sentence !== '').join(' ')}{' '}
      <span title={stepCardTexts.inAllTitle}>{stepCardTexts.inAllLong(wordTimeSpan(planned.expectedCost))}</span>
    </p>
  );
}
