import { memo, useCallback, useEffect, useRef } from 'react';
import {
  endTexts,
  healthyLooksDark,
  machineStateWords,
  riskWords,
  stepCardTexts,
  stepTexts,
  wordCaution,
  wordCautionDetail,
  wordMethod,
  wordMethodShort,
  wordPart,
  wordStep,
  wordStepPlace,
  wordStepTitle,
  wordTimeSpan,
} from '../../engine/messages/index.ts';
import type { Plan, PlannedStep } from '../../engine/plan/index.ts';
import { listCautions, type stateNeeded } from '../../engine/steps/index.ts';
import { Sign, type SignName } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import type { AppState } from '../state/appState.ts';
import { hasObservations, runsSinceHandled } from '../state/evidence.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { BusyPane } from './BusyPane.tsx';
import { StepOutcomes } from './StepOutcomes.tsx';
import { StoppedAgain } from './StoppedAgain.tsx';
import { minutesOf, selectBestStep, selectPlan, selectShownStep } from './stepModel.ts';
import './step.css';

const stateSigns: { readonly [S in ReturnType<typeof stateNeeded>]: SignName } = { closed: 'fits', open: 'danger', isolated: 'must' };

/** What to do next, as a card to work with: what, where, what it costs and endangers, and a button for everything that may be found. */
export function StepCard() {
  const shown = useApp(selectShownStep);
  const plan = useApp(selectPlan);
  const asked = useApp((state) => state.chosenStep?.number ?? 0);
  const wanted = useApp((state) => state.checked.cabinet !== null && hasObservations(state.caseRecord));
  const diagnosed = useApp((state) => lastDiagnosis(state.diagnosis)?.impossible === false);
  const hasEnded = useApp((state) => state.chosenStep === null && runsSinceHandled(state.caseRecord) && isSettledEnd(selectPlan(state)));
  const section = useRef<HTMLElement>(null);
  const focus = useCallback(() => section.current?.focus(), []);
  // Whoever asked for the step reads it first: a focus on an outcome would record it with the next press of Enter, unseen.
  useEffect(() => {
    if (asked > 0) section.current?.querySelector<HTMLElement>('.step-title')?.focus();
  }, [asked]);
  if (!wanted) return null;
  return (
    <BusyPane ref={section} id="step" className="pane step" aria-label={stepTexts.region} busy={isPlanOld}>
      <div className="section-head">
        <h2>
          {stepTexts.region} {plan && shown && !hasEnded && <small>{wordRank(plan, shown)}</small>}
        </h2>
        {plan && <Planning plan={plan} />}
      </div>
      {hasEnded && plan ? <EndCard plan={plan} /> : shown && diagnosed ? <Card planned={shown} onEntered={focus} /> : <NoCard />}
      {!hasEnded && (
        <p className="step-stopped">
          <StoppedAgain />
        </p>
      )}
    </BusyPane>
  );
}

const isPlanOld = ({ planned, revision }: AppState) => planned?.revision !== revision;

/** The machine runs for a known reason: what is left is to hand it back. */
const isSettledEnd = (plan: Plan | null) => plan?.end.end === 'proved' || plan?.end.end === 'running-provisionally';

/** After the end: hand the machine back. What would make it surer stays offered. */
function EndCard({ plan: { end } }: { readonly plan: Plan }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const surer = useApp(selectBestStep);
  return (
    <>
      <h3 className="step-title" tabIndex={-1}>
        {endTexts.last}
      </h3>
      <p>{end.end === 'proved' ? endTexts.nothingLeft : endTexts.putRight}</p>
      <p className="step-ended">
        <button type="button" className="button small" onClick={() => dispatch('hand-back')}>
          {endTexts.open}
        </button>{' '}
        <StoppedAgain />{' '}
        {surer && (
          <button type="button" className="text-button" onClick={() => dispatch('show-step', { step: surer.step })}>
            <Words>{endTexts.surer(wordStep(names, surer.step))}</Words>
          </button>
        )}
      </p>
    </>
  );
}

function NoCard() {
  const plan = useApp(selectPlan);
  const old = useApp(isPlanOld);
  const more = plan?.steps.some(({ useless }) => useless === null) ?? false;
  return (
    <p className="empty">
      {old || !plan ? stepTexts.working : plan.exhausted ? stepCardTexts.exhausted[plan.stopping](more) : stepTexts.none}
    </p>
  );
}

function wordRank({ steps }: Plan, shown: PlannedStep): string {
  const count = steps.filter(({ useless }) => useless === null).length;
  return steps[0] === shown ? stepCardTexts.bestOf(count) : stepCardTexts.other(count);
}

/** How good the order is; as long as it may get better it says so, and can be left at that. */
function Planning({ plan }: { readonly plan: Plan }) {
  const state = useApp(({ planned }) => planned?.state);
  const { cancelDiagnosis } = useWindow();
  return (
    <span className="planning">
      {state === 'working' ? (
        <>
          <span className="improving">{stepCardTexts.improving}</span>
          <button type="button" className="text-button improving" onClick={cancelDiagnosis}>
            {stepCardTexts.stop}
          </button>
        </>
      ) : (
        <span title={wordMethod(plan)}>{state === 'stopped' ? stepCardTexts.stopped : wordMethodShort(plan)}</span>
      )}
    </span>
  );
}

/** Drawn again only for another step, not for each answer that leaves the step as it was. */
const Card = memo(CardView);

function CardView({ planned, onEntered }: { readonly planned: PlannedStep; readonly onEntered: () => void }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const topology = useApp((state) => state.checked.topology);
  const { step, stateNeeded: state, parts, useless } = planned;
  const place = wordStepPlace(names, topology, step);
  return (
    <>
      <div className="step-head">
        <h3 className="step-title" tabIndex={-1}>
          <Words>{wordStepTitle(names, step)}</Words>
        </h3>
        <span className="step-minutes" title={stepCardTexts.minutesTitle}>
          <Sign name="clock" size={15} /> {wordTimeSpan(minutesOf(planned))}
        </span>
      </div>
      <p className="step-marks">
        {place !== '' && (
          <span>
            <Words>{place}</Words>
          </span>
        )}
        <span className="step-parts">{parts.length === 0 ? stepCardTexts.noParts : parts.map(wordPart).join(', ')}</span>
        <span className={`risk ${state}`} title={machineStateWords[state].meaning}>
          {state !== 'closed' && <Sign name={stateSigns[state]} size={15} />} {machineStateWords[state].label}
        </span>
        <Risks planned={planned} />
      </p>
      <NoteFirst planned={planned} />
      {useless === null || step.do !== 'act' ? (
        <StepOutcomes key={wordStepTitle(names, step)} planned={planned} onEntered={onEntered} />
      ) : null}
      {planned.darkIsNormal && <p className="step-note">{healthyLooksDark}</p>}
    </>
  );
}

/** Short marks of what the step endangers; the strip at the lower edge says how to meet it. */
function Risks({ planned: { step, risks } }: { readonly planned: PlannedStep }) {
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  if (!cabinet) return null;
  const marked = listCautions(cabinet, evidence, step)
    .filter(({ code }) => code === 'reference-position' || code === 'hanging-axes' || code === 'safety-check')
    .map((caution) => ({ code: caution.code, ...wordCaution(caution) }));
  const spoiled = risks.filter(({ code }) => code === 'spoiled-part').map(({ code }) => ({ code, ...riskWords[code] }));
  return [...marked, ...spoiled].map(({ code, label, meaning }) => (
    <span key={code} className="risk abnormal" title={meaning}>
      <Sign name="abnormal" size={15} /> {label.toLowerCase()}
    </span>
  ));
}

/** Before the first switching off: what would be erased, and a way to note it now. */
function NoteFirst({ planned: { step, changes } }: { readonly planned: PlannedStep }) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const names = useApp((state) => namesOf(state.checked.topology));
  const erases = changes.some(({ effects }) => effects.includes('erases-displays'));
  const caution = cabinet && erases ? listCautions(cabinet, evidence, step).find(({ code }) => code === 'note-first') : undefined;
  if (!caution) return null;
  return (
    <div className="note-first">
      <p>
        <b>{wordCaution(caution).label}.</b>{' '}
        <span className="detail">
          <Words>{wordCautionDetail(names, caution)}</Words>
        </span>
      </p>
      <button type="button" className="button small" onClick={() => dispatch('walk-displays')}>
        {stepTexts.noteNow}
      </button>
    </div>
  );
}
