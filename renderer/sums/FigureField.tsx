import { useId, useState } from 'react';
import { figureUnits, figureWords, startSentence, sumsPageWords } from '../../engine/messages/index.ts';
import { longestLine } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { type EnteredFigure, entryKindOf } from './enterFigure.ts';
import { readName, readNumber } from './readNumber.ts';

interface Props {
  readonly missing: EnteredFigure;
  /** Where it is written, for a screen reader. */
  readonly owner: string;
}

/** A field for one missing figure; Enter or the button writes it into the cabinet. */
export function FigureField({ missing, owner }: Props) {
  const dispatch = useDispatch();
  const id = useId();
  const choices = useApp((state) => state.checked.topology.content);
  const [text, setText] = useState('');
  const [refused, setRefused] = useState(false);
  const kind = entryKindOf(missing.figure);
  const label = sumsPageWords.writeLabel(figureWords[missing.figure], owner);
  if (kind === null) {
    return (
      <p className="missing-figure">
        <span>{startSentence(figureWords[missing.figure])}</span> <small>{sumsPageWords.atFibreOnly}</small>
      </p>
    );
  }
  const options = optionsOf(missing, choices);
  const write = () => {
    const value = kind === 'text' ? readName(text) : readNumber(text, kind);
    setRefused(value === null);
    if (value !== null) dispatch('write-figure', { entered: { figure: missing.figure, of: missing.of }, value });
  };
  return (
    <form
      className="missing-figure"
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <label htmlFor={id}>{startSentence(figureWords[missing.figure])}</label>
      {options === null ? (
        <input
          id={id}
          type="text"
          inputMode={kind === 'text' ? 'text' : 'decimal'}
          aria-label={label}
          aria-invalid={refused}
          {...(refused ? { 'aria-describedby': `${id}-wrong` } : {})}
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setRefused(false);
          }}
        />
      ) : (
        <select id={id} aria-label={label} value={text} onChange={(event) => setText(event.target.value)}>
          <option value="">{sumsPageWords.choose}</option>
          {options.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      )}
      <span className="sum-unit">{figureUnits[missing.figure]}</span>
      <button type="submit" className="button small" aria-label={`${sumsPageWords.write}: ${label}`} disabled={text.trim() === ''}>
        {sumsPageWords.write}
      </button>
      {refused && (
        <span id={`${id}-wrong`} className="sum-wrong" role="alert">
          {kind === 'text' ? sumsPageWords.notAName(longestLine) : sumsPageWords.wrongNumber[kind]}
        </span>
      )}
    </form>
  );
}

type Content = Parameters<Parameters<typeof useApp>[0]>[0]['cabinet'];

/** What can be chosen, where a figure is one of a list that the cabinet knows. */
function optionsOf({ figure }: EnteredFigure, content: Content): readonly (readonly [value: string, words: string])[] | null {
  if (figure === 'conductor-class') return Object.entries(sumsPageWords.conductorClasses);
  if (figure === 'dc-link-supply') {
    return (content.units ?? []).flatMap(({ id, supply, designation }) =>
      supply?.dcLink === undefined ? [] : [[id, designation || id] as const],
    );
  }
  if (figure === 'cycle-class' && content.axisLimits !== undefined && content.axisLimits.length > 0) {
    return [...new Set(content.axisLimits.map(({ cycleClass }) => cycleClass))].map((name) => [name, name] as const);
  }
  return null;
}
