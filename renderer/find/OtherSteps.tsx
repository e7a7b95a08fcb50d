import { memo, useState } from 'react';
import { stepCardTexts, stepTexts, wordStep, wordTimeSpan, wordUseless } from '../../engine/messages/index.ts';
import type { Plan, PlannedStep } from '../../engine/plan/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { stepKey } from '../state/stepCommands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { minutesOf } from './stepModel.ts';

/** Further steps listed at once. */
const mostOthers = 3;

/** The rest of the one list, in its order; all of it on demand, and what would be of no use with the reason. */
export const OtherSteps = memo(OtherStepsView);

function OtherStepsView({ plan, shown }: { readonly plan: Plan; readonly shown: PlannedStep | null }) {
  const [all, setAll] = useState(false);
  const useful = plan.steps.filter((one) => one.useless === null && one !== shown);
  const useless = plan.steps.filter((one) => one.useless !== null);
  const listed = all ? useful : useful.slice(0, mostOthers);
  const more = useful.length - listed.length;
  return (
    <section id="others" className="pane" aria-label={stepTexts.others} tabIndex={-1}>
      <div className="section-head">
        <h2>
          {stepTexts.others} <small>{useful.length}</small>
        </h2>
      </div>
      {listed.length > 0 && (
        <ul className="other-steps" aria-label={stepTexts.others}>
          {listed.map((planned) => (
            <OtherStep key={stepKey(planned.step)} planned={planned} />
          ))}
        </ul>
      )}
      <div className="more-steps">
        {(more > 0 || all) && (
          <button type="button" className="text-button" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? stepCardTexts.showFewer : stepCardTexts.showAll(more)}
          </button>
        )}
        {useless.length > 0 && <Useless steps={useless} />}
      </div>
    </section>
  );
}

function OtherStep({ planned }: { readonly planned: PlannedStep }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  return (
    <li>
      <button type="button" onClick={() => dispatch('show-step', { step: planned.step })}>
        <span className="name">
          <Words>{wordStep(names, planned.step)}</Words>
        </span>
        <span className="own">{wordTimeSpan(minutesOf(planned))}</span>
        <span className="figure" title={stepCardTexts.inAllTitle}>
          {stepCardTexts.inAll(wordTimeSpan(planned.expectedCost))}
        </span>
      </button>
    </li>
  );
}

function Useless({ steps }: { readonly steps: readonly PlannedStep[] }) {
  const [open, setOpen] = useState(false);
  const names = useApp((state) => namesOf(state.checked.topology));
  return (
    <>
      <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {stepCardTexts.useless(steps.length)}
      </button>
      {open && (
        <ul className="useless-steps">
          {steps.map(({ step, useless }) => (
            <li key={stepKey(step)}>
              <Words>{stepCardTexts.worth(wordStep(names, step), useless ? wordUseless(names, step, useless) : '')}</Words>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
