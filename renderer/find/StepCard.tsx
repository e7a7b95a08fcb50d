import { useEffect, useRef } from 'react';
import {
  healthyLooksDark,
  machineStateWords,
  stepTexts,
  wordCaution,
  wordCautionDetail,
  wordItemShort,
  wordProbability,
  wordStep,
  wordStepDone,
  wordStepHow,
  wordStepOutcome,
  wordStepPlace,
  wordStepTitle,
} from '../../engine/messages/index.ts';
import { listCautions, type RankedStep, type Step, type StepOutcome, stateNeeded } from '../../engine/steps/index.ts';
import { Sign, type SignName } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { hasObservations } from '../state/evidence.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { stepKey } from '../state/stepCommands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { isSettled, selectShownStep, settledInHundred, standsOut, suspectAfter } from './stepModel.ts';
import './step.css';

/** Outcomes less likely than this stand aside, small. */
const likely = 0.03;
/** Further steps listed at once. */
const mostOthers = 3;

const stateSigns: { readonly [S in ReturnType<typeof stateNeeded>]: SignName } = { closed: 'fits', open: 'danger', isolated: 'must' };

/** The act to do next, as a card to work with: what, where, what it needs, and a button for everything that may be found. */
export function StepCard() {
  const shown = useApp(selectShownStep);
  const list = useApp((state) => state.steps?.list);
  const stale = useApp((state) => state.steps?.revision !== state.revision);
  const asked = useApp((state) => state.chosenStep?.number ?? 0);
  const wanted = useApp((state) => state.checked.cabinet !== null && hasObservations(state.caseRecord));
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const section = useRef<HTMLElement>(null);
  // Whoever asked for the step wants to answer it: the focus goes to what may be found.
  useEffect(() => {
    if (asked > 0) section.current?.querySelector<HTMLElement>('.outcome')?.focus();
  }, [asked]);
  if (!wanted) return null;
  const index = shown && list ? list.indexOf(shown) : -1;
  return (
    <section ref={section} id="step" className="pane step" aria-label={stepTexts.region} tabIndex={-1} aria-busy={stale}>
      <div className="section-head">
        <h2>
          {stepTexts.region}{' '}
          <small>{shown && list ? (index === 0 ? stepTexts.bestOf(list.length) : stepTexts.other(list.length)) : ''}</small>
        </h2>
      </div>
      {shown && diagnosis && !diagnosis.impossible ? (
        <Card ranked={shown} onEntered={() => section.current?.focus()} />
      ) : (
        <p className="empty">{list || !diagnosis ? (stale ? stepTexts.working : stepTexts.none) : stepTexts.working}</p>
      )}
      {list && list.length > 1 && <Others list={list} shown={shown} />}
    </section>
  );
}

function Card({ ranked, onEntered }: { readonly ranked: RankedStep; readonly onEntered: () => void }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const topology = useApp((state) => state.checked.topology);
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const { step, mends } = ranked;
  const state = stateNeeded(step);
  return (
    <>
      <h3 className="step-title">
        <Words>{wordStepTitle(names, step)}</Words>
      </h3>
      <p className="step-marks">
        <span>
          <Words>{wordStepPlace(names, topology, step)}</Words>
        </span>
        <span className={`risk ${state}`} title={machineStateWords[state].meaning}>
          {state !== 'closed' && <Sign name={stateSigns[state]} size={15} />} {machineStateWords[state].label}
        </span>
        <Risks ranked={ranked} />
      </p>
      <p className="step-how">{wordStepHow(step)}</p>
      <NoteFirst ranked={ranked} />
      {diagnosis && (
        <p className="step-settles">
          {step.do === 'act' ? `${stepTexts.mends(Math.round(mends * 100))} ` : ''}
          {mends >= standsOut || isSettled(diagnosis) ? '' : stepTexts.settles(settledInHundred(ranked, diagnosis))}
        </p>
      )}
      <Outcomes ranked={ranked} onEntered={onEntered} />
      {ranked.darkIsNormal && <p className="step-note">{healthyLooksDark}</p>}
    </>
  );
}

/** Short marks of what the step endangers; the strip at the lower edge says how to meet it. */
function Risks({ ranked: { step } }: { readonly ranked: RankedStep }) {
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  if (!cabinet) return null;
  const marked = listCautions(cabinet, evidence, step).filter(
    ({ code }) => code === 'reference-position' || code === 'hanging-axes' || code === 'safety-check',
  );
  return marked.map((caution) => (
    <span key={caution.code} className="risk abnormal" title={wordCaution(caution).meaning}>
      <Sign name="abnormal" size={15} /> {wordCaution(caution).label.toLowerCase()}
    </span>
  ));
}

/** Before the first switching off: what would be erased, and a way to note it now. */
function NoteFirst({ ranked: { step } }: { readonly ranked: RankedStep }) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const names = useApp((state) => namesOf(state.checked.topology));
  const caution = cabinet && listCautions(cabinet, evidence, step).find(({ code }) => code === 'note-first');
  if (!caution) return null;
  return (
    <div className="note-first">
      <p>
        <b>{wordCaution(caution).label}.</b> <Words>{wordCautionDetail(names, caution)}</Words>
      </p>
      <button type="button" className="button small" onClick={() => dispatch('walk-displays')}>
        {stepTexts.noteNow}
      </button>
    </div>
  );
}

function Outcomes({ ranked, onEntered }: { readonly ranked: RankedStep; readonly onEntered: () => void }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const { step } = ranked;
  const outcomes = withBoth(ranked);
  const enter = ({ outcome }: StepOutcome) => {
    dispatch('enter-outcome', { step, outcome, at: new Date().toISOString() });
    dispatch('show-step', { step: null });
    dispatch('announce', { text: stepTexts.entered(wordStepDone(names, step, outcome)) });
    onEntered();
  };
  const main = step.do === 'act' ? outcomes : outcomes.filter(({ probability }) => probability >= likely);
  const rare = outcomes.filter((outcome) => !main.includes(outcome));
  const then = (outcome: StepOutcome) => {
    const first = diagnosis && suspectAfter(outcome, diagnosis);
    return first
      ? stepTexts.thenSuspect(wordItemShort(names, first.fault, linkOf(step)), wordProbability(first.share))
      : stepTexts.thenNothing;
  };
  const openEntry = () => {
    if (step.do === 'read-display') dispatch('open-entry', { entry: { kind: 'display', unit: step.unit, walking: false } });
    if (step.do === 'read-report') dispatch('open-entry', { entry: { kind: 'report', chain: step.chain, walking: false } });
  };
  return (
    <fieldset className="outcomes">
      <legend>{stepTexts.found}</legend>
      <div className="outcome-row">
        {main.map((outcome) => (
          <button key={outcome.outcome} type="button" className="outcome" onClick={() => enter(outcome)}>
            <b>{wordStepOutcome(names, step, outcome.outcome)}</b> <span>{then(outcome)}</span>
          </button>
        ))}
      </div>
      {(rare.length > 0 || step.do === 'read-display' || step.do === 'read-report') && (
        <p className="outcome-rare">
          {stepTexts.rare}{' '}
          {step.do === 'look' ? (
            rare.map((outcome) => (
              <button key={outcome.outcome} type="button" className="text-button" onClick={() => enter(outcome)}>
                {wordStepOutcome(names, step, outcome.outcome)}
              </button>
            ))
          ) : (
            <button type="button" className="text-button" onClick={openEntry}>
              {stepTexts.somethingElse}
            </button>
          )}
        </p>
      )}
    </fieldset>
  );
}

/** The cable that a step is about. */
function linkOf(step: Step): string | null {
  if (step.do === 'look') return 'link' in step.look ? step.look.link : null;
  const [act] = step.do === 'act' ? step.acts : [];
  return act && 'link' in act ? act.link : null;
}

/** A machine may run or not after an act, also where one of the two is not expected. */
function withBoth({ step, outcomes }: RankedStep): readonly StepOutcome[] {
  if (step.do !== 'act') return outcomes;
  return ['runs', 'halts'].map((outcome) => outcomes.find((one) => one.outcome === outcome) ?? { outcome, probability: 0, suspects: [] });
}

function Others({ list, shown }: { readonly list: readonly RankedStep[]; readonly shown: RankedStep | null }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const others = list.filter((one) => one !== shown).slice(0, mostOthers);
  return (
    <ul className="other-steps" aria-label={stepTexts.others}>
      {others.map(({ step, mends }) => (
        <li key={stepKey(step)}>
          <button type="button" onClick={() => dispatch('show-step', { step })}>
            <span className="name">
              <Words>{wordStep(names, step)}</Words>
            </span>
            {step.do === 'act' && <span className="figure">{stepTexts.mendsShort(Math.round(mends * 100))}</span>}
          </button>
        </li>
      ))}
    </ul>
  );
}
