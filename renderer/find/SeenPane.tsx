import { useRef } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { windowTexts } from '../../engine/messages/index.ts';
import { commands } from '../state/commands.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { SeenCircumstances } from './SeenCircumstances.tsx';
import './seen.css';

const words = windowTexts.seenPane;
const onsetChoices = ['while-running', 'at-power-up', 'unknown'] as const;
const haltChoices = ['yes', 'no', 'not-observed'] as const;

/** What is to be said of the moment itself, besides displays and reports. */
export function SeenPane() {
  const dispatch = useDispatch();
  const onset = useApp((state) => {
    const snapshot = currentSnapshot(state.caseRecord);
    return snapshot.restarted ? 'at-power-up' : (snapshot.onset ?? 'unknown');
  });
  const restarted = useApp((state) => currentSnapshot(state.caseRecord).restarted ?? false);
  const halted = useApp((state) => currentSnapshot(state.caseRecord).halted);
  const canRestart = useApp(commands['enter-restart'].isEnabled);
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
        <button type="button" className="button small" disabled={!canRestart} title={words.restartMeans} onClick={restart}>
          {words.restart}
        </button>
      </div>
      <Choice
        label={words.onset}
        choices={onsetChoices}
        labels={words.onsets}
        value={onset}
        disabled={restarted}
        onChange={(chosen) => dispatch('set-onset', { onset: chosen })}
      />
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

function Choice<const T extends string>({
  label,
  choices,
  labels,
  value,
  onChange,
  disabled = false,
}: {
  readonly label: string;
  readonly choices: readonly T[];
  readonly labels: Readonly<Record<T, string>>;
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly disabled?: boolean;
}) {
  return (
    <RadioGroup
      className="choice"
      value={value}
      orientation="horizontal"
      isDisabled={disabled}
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
