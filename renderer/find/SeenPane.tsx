import { useRef } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { windowTexts } from '../../engine/messages/index.ts';
import { type Provocation, provocations } from '../../engine/schema/index.ts';
import { commands } from '../state/commands.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { SeenCircumstances } from './SeenCircumstances.tsx';
import { StoppedAgain } from './StoppedAgain.tsx';
import { SubjectsField } from './SubjectsField.tsx';
import './seen.css';

const words = windowTexts.seenPane;
const onsetChoices = ['while-running', 'at-power-up', 'unknown'] as const;
const provokeChoices = ['none', ...provocations] as const;
const haltChoices = ['yes', 'no', 'not-observed'] as const;

/** What is to be said of the moment itself, besides displays and reports. */
export function SeenPane() {
  const dispatch = useDispatch();
  const onset = useApp((state) => {
    const snapshot = currentSnapshot(state.caseRecord);
    return snapshot.onset ?? (snapshot.restarted ? 'at-power-up' : 'unknown');
  });
  const restarted = useApp((state) => currentSnapshot(state.caseRecord).restarted ?? false);
  const untouched = useApp((state) => (currentSnapshot(state.caseRecord).interventions?.length ?? 0) === 0);
  const halted = useApp((state) => currentSnapshot(state.caseRecord).halted);
  const canRestart = useApp(commands['enter-restart'].isEnabled);
  const canCheck = useApp(commands['open-check'].isEnabled);
  const section = useRef<HTMLElement>(null);
  const restart = () => {
    dispatch('enter-restart');
    dispatch('announce', { text: words.restarted });
    // The button rests until something of the new look is known, and a resting button holds no focus.
    section.current?.focus();
  };
  return (
    <section ref={section} id="seen" className="pane seen-pane" aria-label={words.region} tabIndex={-1}>
      <div className="section-head">
        <h2>{words.region}</h2>
        <button type="button" className="button small" disabled={!canCheck} onClick={() => dispatch('open-check')}>
          {words.check}
        </button>
        <button type="button" className="button small" disabled={!canRestart} title={words.restartMeans} onClick={restart}>
          {words.restart}
        </button>
        <StoppedAgain />
      </div>
      <Choice
        label={words.onset}
        choices={onsetChoices}
        labels={words.onsets}
        value={onset}
        onChange={(chosen) => dispatch('set-onset', { onset: chosen })}
      />
      {restarted && untouched && <Provoked />}
      <Choice
        label={words.halted}
        choices={haltChoices}
        labels={words.halts}
        value={halted === undefined ? 'not-observed' : halted ? 'yes' : 'no'}
        onChange={(chosen) => dispatch('set-halted', { halted: chosen === 'not-observed' ? null : chosen === 'yes' })}
      />
      <SeenCircumstances />
    </section>
  );
}

/** After a restart with nothing touched: whether it was waited, cables were moved or it got warm, and which; that provokes what comes and goes. */
function Provoked() {
  const dispatch = useDispatch();
  const provoked = useApp((state) => currentSnapshot(state.caseRecord).provoked);
  const how = provoked?.how ?? 'none';
  const set = (chosen: Provocation | null, subjects: readonly string[]) => dispatch('set-provoked', { how: chosen, subjects });
  return (
    <>
      <Choice
        label={words.provoked}
        choices={provokeChoices}
        labels={words.provocations}
        value={how}
        onChange={(chosen) => set(chosen === 'none' ? null : chosen, [])}
      />
      {(how === 'flex' || how === 'warm') && (
        <SubjectsField
          label={words.addProvoked[how]}
          lead={words.provokedSubjects[how]}
          subjects={provoked?.subjects ?? []}
          onChange={(subjects) => set(how, subjects)}
        />
      )}
    </>
  );
}

function Choice<const T extends string>({
  label,
  choices,
  labels,
  value,
  onChange,
}: {
  readonly label: string;
  readonly choices: readonly T[];
  readonly labels: Readonly<Record<T, string>>;
  readonly value: T;
  readonly onChange: (value: T) => void;
}) {
  return (
    <RadioGroup
      className="choice"
      value={value}
      orientation="horizontal"
      onChange={(text) => {
        const chosen = choices.find((choice) => choice === text);
        if (chosen !== undefined) onChange(chosen);
      }}
    >
      <Label>{label}</Label>
      <div className="segments">
        {choices.map((choice) => (
          <Radio key={choice} value={choice} className="segment">
            {labels[choice]}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
