import { useState } from 'react';
import { windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import { type CodeReading, findLegend, readCode } from '../state/legend.ts';
import { useApp } from '../state/useWorkbench.ts';

interface EntryCodeProps {
  readonly unit: string;
  readonly code: string;
  readonly onTake: (reading: CodeReading) => void;
}

/** The raw code that the equipment shows, read through the legend as it is typed. */
export function EntryCode({ unit, code, onTake }: EntryCodeProps) {
  const cabinet = useApp((state) => state.cabinet);
  const [typed, setTyped] = useState(code);
  const legend = findLegend(cabinet, unit);
  const reading = readCode(legend, typed);
  const hint = !reading
    ? ''
    : !legend
      ? windowTexts.entry.noLegend
      : reading.known
        ? windowTexts.entry.byLegend(wordMeanings(reading.meanings), legend.name)
        : windowTexts.entry.notInLegend(legend.name);
  return (
    <form
      className={`code-field${reading ? ' open' : ''}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (reading) onTake(reading);
      }}
    >
      <label>
        {windowTexts.entry.codeShown}{' '}
        <input
          className="code"
          value={typed}
          maxLength={40}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            // Taken back to nothing: the next key is an answer again, or goes back on the walk.
            if (event.key !== 'Backspace' || typed !== '') return;
            event.preventDefault();
            event.stopPropagation();
            event.currentTarget.closest<HTMLElement>('[role="dialog"]')?.focus({ preventScroll: true });
          }}
        />
      </label>
      <output className="code-hint">{hint}</output>
      {reading && (
        <button type="submit" className="button small">
          {windowTexts.entry.takeCode} <kbd>⏎</kbd>
        </button>
      )}
    </form>
  );
}
