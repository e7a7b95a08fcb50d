import { useState } from 'react';
import type { UnitId } from '../../engine/base/index.ts';
import { legendWords, windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { entryChoices } from '../find/entryChoices.ts';
import { DisplayMark, markOf, toneOf } from '../marks/DisplayMark.tsx';
import { findLegend, readCode } from '../state/legend.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import type { StagedEntry } from './equipmentState.ts';
import { chainOf } from './stagedDraft.ts';

const words = legendWords.staged;

/** The displays of the chain, entered with the same digits and answers as in Find: a digit enters and goes on to the next unit. */
export function StagedDisplays({
  cabinet,
  entry,
  onChange,
}: {
  readonly cabinet: Cabinet;
  readonly entry: StagedEntry;
  readonly onChange: (entry: StagedEntry) => void;
}) {
  const content = useApp((state) => state.cabinet);
  const units = chainOf(cabinet, entry.link)?.units ?? [];
  const [open, setOpen] = useState(0);
  const names = namesOf(cabinet);
  const unit = units[Math.min(open, units.length - 1)];
  if (unit === undefined) return null;
  const seenAt = (id: string) => entry.displays.find((display) => display.unit === id)?.meanings ?? [];
  const choices = entryChoices(cabinet.units.get(unit)?.kind ?? 'servo-drive');
  const goTo = (index: number) => {
    setOpen(index);
    document.getElementById(`staged-${units[index]}`)?.focus();
  };
  const enter = (id: UnitId, meanings: StagedEntry['displays'][number]['meanings']) => {
    const others = entry.displays.filter((display) => display.unit !== id);
    onChange({ ...entry, displays: meanings.length === 0 ? others : [...others, { unit: id, meanings }] });
    goTo(Math.min(units.indexOf(id) + 1, units.length - 1));
  };
  return (
    <section className="staged-displays" aria-label={words.read}>
      <h4>
        {words.read} <small className="quiet-text">{words.readHow}</small>
      </h4>
      <div className="staged-row" role="toolbar" aria-label={words.read}>
        {units.map((id, index) => {
          const mark = markOf(seenAt(id));
          return (
            <button
              key={id}
              id={`staged-${id}`}
              type="button"
              className="staged-unit"
              aria-pressed={id === unit}
              tabIndex={id === unit ? 0 : -1}
              aria-label={`${names.unit(id)}: ${wordMeanings(seenAt(id))}`}
              onFocus={() => setOpen(index)}
              onClick={() => setOpen(index)}
              onKeyDown={(event) => {
                const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
                if (step !== 0) goTo(Math.max(0, Math.min(units.length - 1, index + step)));
                const choice = entryChoices(cabinet.units.get(id)?.kind ?? 'servo-drive').find(({ key }) => key === event.key);
                if (choice && !event.ctrlKey && !event.metaKey && !event.altKey) enter(id, choice.meanings);
              }}
            >
              <b className="designation">{names.unit(id)}</b>
              <span className={`window seen tone-${toneOf(mark)}`}>
                <DisplayMark name={mark} size={20} />
              </span>
            </button>
          );
        })}
      </div>
      <div className="staged-answers">
        {choices.map((choice) => (
          <button
            key={choice.key}
            type="button"
            className="button small"
            aria-pressed={choice.meanings.length > 0 && seenAt(unit).join() === choice.meanings.join()}
            onClick={() => enter(unit, choice.meanings)}
          >
            <DisplayMark name={choice.mark} size={16} /> {choice.words} <kbd>{choice.key}</kbd>
          </button>
        ))}
        <CodeEntry key={unit} onTake={(code) => enter(unit, readCode(findLegend(content, unit), code)?.meanings ?? [])} />
      </div>
    </section>
  );
}

function CodeEntry({ onTake }: { readonly onTake: (code: string) => void }) {
  const [code, setCode] = useState('');
  return (
    <label className="staged-code">
      {windowTexts.entry.codeShown}
      <input
        className="code"
        value={code}
        maxLength={40}
        autoComplete="off"
        onChange={(event) => setCode(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && code.trim() !== '') onTake(code);
        }}
      />
    </label>
  );
}
