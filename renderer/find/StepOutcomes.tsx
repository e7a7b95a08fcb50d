import {
  isAboutPower,
  stepCardTexts,
  stepTexts,
  wordItemShort,
  wordProbability,
  wordStepDone,
  wordStepOutcome,
} from '../../engine/messages/index.ts';
import type { PlannedStep } from '../../engine/plan/index.ts';
import type { Step, StepOutcome } from '../../engine/steps/index.ts';
import { Words } from '../marks/Words.tsx';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { OutcomePicture } from './OutcomePicture.tsx';
import { suspectAfter } from './stepModel.ts';

/** Outcomes less likely than this stand aside, small. */
const likely = 0.03;

/** A button for everything that may be found, with a small picture of what it would raise or clear; and a way out for what nobody expected. */
export function StepOutcomes({ planned, onEntered }: { readonly planned: PlannedStep; readonly onEntered: () => void }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const { step } = planned;
  const outcomes = withBoth(planned);
  const enter = ({ outcome }: StepOutcome) => {
    dispatch('enter-outcome', { step, outcome, at: new Date().toISOString() });
    dispatch('show-step', { step: null });
    dispatch('announce', { text: stepTexts.entered(wordStepDone(names, step, outcome)) });
    onEntered();
  };
  const main = restarts(step) ? outcomes : outcomes.filter(({ probability }) => probability >= likely);
  const rare = step.do === 'look' ? outcomes.filter((outcome) => !main.includes(outcome)) : [];
  return (
    <fieldset className="outcomes">
      <legend>{stepTexts.found}</legend>
      <div className="outcome-row">
        {main.map((outcome) => (
          <button key={outcome.outcome} type="button" className="outcome" onClick={() => enter(outcome)}>
            <b>
              <Words>{wordStepOutcome(names, step, outcome.outcome)}</Words>
            </b>{' '}
            <Then step={step} outcome={outcome} />
            <OutcomePicture outcome={outcome} />
          </button>
        ))}
      </div>
      <p className="outcome-rare">
        {rare.length > 0 && stepTexts.rare}{' '}
        {rare.map((outcome) => (
          <button key={outcome.outcome} type="button" className="text-button" onClick={() => enter(outcome)}>
            {wordStepOutcome(names, step, outcome.outcome)}
          </button>
        ))}
        {isAboutPower(step) && <FeedWasOff />}
        <SawElse step={step} />
      </p>
    </fieldset>
  );
}

/** What an outcome would make the likeliest. */
function Then({ step, outcome }: { readonly step: Step; readonly outcome: StepOutcome }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const first = diagnosis && suspectAfter(outcome, diagnosis);
  return (
    <span>
      {first ? (
        <Words>{stepTexts.thenSuspect(wordItemShort(names, first.fault, linkOf(step)), wordProbability(first.share))}</Words>
      ) : (
        stepTexts.thenNothing
      )}
    </span>
  );
}

/** Checking came first, and the feed was found off: nothing was exchanged, and a restart is all that was done. */
function FeedWasOff() {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const enter = () => {
    dispatch('enter-outcome', { step: restart, outcome: 'runs', at: new Date().toISOString() });
    dispatch('show-step', { step: null });
    dispatch('announce', { text: stepTexts.entered(wordStepDone(names, restart, 'runs')) });
  };
  return (
    <button type="button" className="text-button" onClick={enter}>
      {stepCardTexts.feedWasOff}
    </button>
  );
}

const restart: Step = { do: 'provoke', how: 'wait', subjects: [] };

/** What was done and showed something that no button says: it stays done, and what was really seen is entered. */
function SawElse({ step }: { readonly step: Step }) {
  const dispatch = useDispatch();
  const open = () => {
    if (step.do === 'read-display') return dispatch('open-entry', { entry: { kind: 'display', unit: step.unit, walking: false } });
    if (step.do === 'read-report') return dispatch('open-entry', { entry: { kind: 'report', chain: step.chain, walking: false } });
    if (step.do === 'look') return dispatch('open-entry', { entry: { kind: 'check', look: step.look, walking: false } });
    dispatch('enter-unforeseen', { step });
    dispatch('show-step', { step: null });
    dispatch('walk-displays');
  };
  return (
    <button type="button" className="text-button" onClick={open}>
      {restarts(step) || step.do === 'look' ? stepCardTexts.sawElse : stepTexts.somethingElse}
    </button>
  );
}

const restarts = (step: Step): step is Extract<Step, { do: 'act' | 'provoke' }> => step.do === 'act' || step.do === 'provoke';

/** The cable that a step is about. */
function linkOf(step: Step): string | null {
  if (step.do === 'look') return 'link' in step.look ? step.look.link : null;
  const [act] = step.do === 'act' ? step.acts : [];
  return act && 'link' in act ? act.link : null;
}

/** A machine may run or not after a restart, also where one of the two is not expected. */
function withBoth({ step, outcomes }: PlannedStep): readonly StepOutcome[] {
  if (!restarts(step)) return outcomes;
  return ['runs', 'halts'].map((outcome) => outcomes.find((one) => one.outcome === outcome) ?? { outcome, probability: 0, suspects: [] });
}
