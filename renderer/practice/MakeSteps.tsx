import { useStore } from 'zustand';
import { type Names, wordExerciseStep, makeWords as words } from '../../engine/messages/index.ts';
import { type DecidedStep, decideSteps, type StepDecision } from './makeDraft.ts';
import { changeDraft, makeStore } from './makeStore.ts';
import { NumberField } from './NumberField.tsx';

const changes = ['openMinutes', 'isolateMinutes', 'bootMinutes'] as const;

/** Which looks and acts are allowed, what each costs, how often, and which spare it uses up. */
export function MakeSteps({ names }: { readonly names: Names }) {
  const draft = useStore(makeStore, (state) => state.draft);
  const proposal = useStore(makeStore, (state) => state.proposal);
  const steps = decideSteps(proposal?.steps ?? [], draft.steps);
  const decide = (key: string, decision: StepDecision) =>
    changeDraft({ steps: { ...draft.steps, [key]: { ...draft.steps[key], ...decision } } });
  return (
    <section aria-label={words.steps}>
      <div className="section-head">
        <h2>{words.steps}</h2>
        {proposal !== null && <small>{words.allowed(steps.filter(({ allowed }) => allowed).length, steps.length)}</small>}
        {Object.keys(draft.steps).length > 0 && (
          <button type="button" className="text-button" onClick={() => changeDraft({ steps: {} })}>
            {words.asProposed}
          </button>
        )}
      </div>
      {proposal === null ? (
        <p className="practice-small">{words.stepsWaiting}</p>
      ) : (
        <>
          <table className="make-steps">
            <thead>
              <tr>
                <th scope="col">{words.stepHeads.step}</th>
                <th scope="col">{words.stepHeads.minutes}</th>
                <th scope="col">{words.stepHeads.most}</th>
                {draft.spares.length > 0 && <th scope="col">{words.stepHeads.spare}</th>}
              </tr>
            </thead>
            <tbody>
              {steps.map((step) => (
                <StepRow key={step.key} step={step} names={names} onDecide={(decision) => decide(step.key, decision)} />
              ))}
            </tbody>
          </table>
          <fieldset className="make-row">
            <legend>{words.changes}</legend>
            {changes.map((change) => (
              <NumberField
                key={change}
                shown="before"
                label={words[change]}
                value={draft.times[change]}
                placeholder={String(proposal.times[change])}
                onChange={(minutes) => changeDraft({ times: { ...draft.times, [change]: minutes } })}
              />
            ))}
          </fieldset>
        </>
      )}
    </section>
  );
}

function StepRow({
  step,
  names,
  onDecide,
}: {
  readonly step: DecidedStep;
  readonly names: Names;
  readonly onDecide: (decision: StepDecision) => void;
}) {
  const spares = useStore(makeStore, ({ draft }) => draft.spares);
  const { allowed, minutes, most, spare } = step;
  const isAct = step.step.do === 'act';
  // Only its step is worded.
  const said = wordExerciseStep(names, { id: step.key, step: step.step, minutes } as Parameters<typeof wordExerciseStep>[1]);
  return (
    <tr data-allowed={allowed}>
      <th scope="row">
        <label>
          <input type="checkbox" checked={allowed} onChange={() => onDecide({ allowed: !allowed })} />
          {said}
        </label>
      </th>
      <td>
        {allowed && (
          <NumberField label={words.stepMinutes(said)} value={minutes} onChange={(next) => onDecide({ minutes: next ?? minutes })} />
        )}
      </td>
      <td>
        {allowed && (
          <NumberField
            label={words.stepMost(said)}
            value={most}
            placeholder={isAct ? '1' : words.freely}
            whole
            least={1}
            most={20}
            onChange={(next) => onDecide({ most: next })}
          />
        )}
      </td>
      {spares.length > 0 && (
        <td>
          {allowed && isAct && (
            <select aria-label={words.stepSpare(said)} value={spare ?? ''} onChange={({ target }) => onDecide({ spare: target.value })}>
              <option value="">{words.noSpare}</option>
              {spares.map(({ id, name }, index) => (
                <option key={id} value={id}>
                  {name.trim() === '' ? words.spare(index + 1) : name}
                </option>
              ))}
            </select>
          )}
        </td>
      )}
    </tr>
  );
}
