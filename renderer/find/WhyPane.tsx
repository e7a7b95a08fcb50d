import { stepTexts, windowTexts, wordBehaviourBelief, wordNote, wordStep, wordTimeSpan } from '../../engine/messages/index.ts';
import { Words } from '../marks/Words.tsx';
import { hasObservations } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { stepKey } from '../state/stepCommands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { selectFindModel } from './findModel.ts';
import { useReasons } from './reasons.ts';
import { selectBestStep, selectPartingStep, selectPlan } from './stepModel.ts';

/** Why the chosen suspect, what tells it from those that look the same, and what the figures rest on. */
export function WhyPane() {
  const wanted = useApp((state) => state.checked.cabinet !== null && hasObservations(state.caseRecord));
  if (!wanted) return null;
  return (
    <section id="why" className="pane why-pane" aria-label={windowTexts.suspects.why} tabIndex={-1}>
      <div className="section-head">
        <h2>{windowTexts.suspects.why}</h2>
      </div>
      <Reasons />
      <Parting />
      <Notes />
    </section>
  );
}

function Reasons() {
  const reasons = useReasons();
  return reasons.map(({ head, sentences }) => (
    <p key={head} className="why">
      <b>
        <Words>{head}</Words>
      </b>{' '}
      <Words>{sentences.join(' ')}</Words>
    </p>
  ));
}

/** What would tell the members of the first group apart; and where that is not the next step, why not. */
function Parting() {
  const dispatch = useDispatch();
  const isGroup = useApp((state) => selectFindModel(state).rows[0]?.letter != null);
  const parting = useApp(selectPartingStep);
  const best = useApp(selectBestStep);
  const planned = useApp((state) =>
    selectPlan(state)?.steps.find(({ step }) => parting !== null && stepKey(step) === stepKey(parting.step)),
  );
  const names = useApp((state) => namesOf(state.checked.topology));
  if (!isGroup || !parting) return null;
  if (best && stepKey(best.step) === stepKey(parting.step)) return <p className="parting">{stepTexts.partsNow}</p>;
  return (
    <p className="parting">
      {stepTexts.partsGroup}{' '}
      <button type="button" className="text-button" onClick={() => dispatch('show-step', { step: parting.step })}>
        <Words>{wordStep(names, parting.step)}</Words>
      </button>
      {'. '}
      {best && planned && stepTexts.partsLater(wordTimeSpan(best.expectedCost), wordTimeSpan(planned.expectedCost))}
    </p>
  );
}

function Notes() {
  const notes = useApp((state) => selectFindModel(state).diagnosis?.notes);
  const names = useApp((state) => namesOf(state.checked.topology));
  const beliefs = useApp((state) => selectFindModel(state).diagnosis?.behaviours);
  const told = (notes ?? []).filter(({ code }) => code !== 'nothing-observed');
  const sentences = [...(beliefs ?? []).map((belief) => wordBehaviourBelief(names, belief)), ...told.map((note) => wordNote(names, note))];
  return (
    <ul className="notes">
      {sentences.map((sentence) => (
        <li key={sentence}>
          <Words>{sentence}</Words>
        </li>
      ))}
    </ul>
  );
}
