import { useEffect, useRef, useState } from 'react';
import { Popover } from 'react-aria-components';
import { unitKindWords, windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import { nextUnit } from '../canvas/neighbours.ts';
import { focusUnit, unitElementId } from '../canvas/unitElement.ts';
import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';
import type { OpenEntry } from '../state/appState.ts';
import { currentSnapshot, findDisplay } from '../state/evidence.ts';
import { type CodeReading, findLegend, readCode } from '../state/legend.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { EntryDialog } from './EntryDialog.tsx';
import { type EntryChoice, entryChoices } from './entryChoices.ts';
import './entry.css';

type DisplayEntry = Extract<OpenEntry, { kind: 'display' }>;

/** Asks what one display shows: six marks, the answers for those who cannot read it, or the raw code. */
export function EntryPopover({ entry }: { readonly entry: DisplayEntry }) {
  const { store, dispatch } = useWindow();
  const topology = useApp((state) => state.checked.topology);
  const observation = useApp((state) => findDisplay(currentSnapshot(state.caseRecord), entry.unit));
  const names = namesOf(topology);
  const unit = [...topology.units.values()].find(({ id }) => id === entry.unit);
  // On a walk the answers stay where they are, so that the hand does; else they open beside the display.
  const anchor = useAnchor(entry.walking ? 'caution' : unitElementId(entry.unit));
  if (!unit) return null;
  const choices = entryChoices(unit.kind);

  const close = () => {
    dispatch('close-entry');
    focusUnit(entry.unit);
  };
  const settle = (words: string) => {
    const said = windowTexts.entry.entered(names.unit(entry.unit), words);
    const next = entry.walking ? nextUnit(topology, entry.unit as never, 'ArrowRight') : null; // the entry's unit is one of the cabinet
    if (next?.kind !== 'unit') {
      dispatch('announce', { text: entry.walking ? `${said} ${windowTexts.entry.walkEnd}` : said });
      return close();
    }
    const then = findDisplay(currentSnapshot(store.getState().caseRecord), next.unit);
    dispatch('announce', { text: `${said} ${windowTexts.entry.next(names.unit(next.unit), wordMeanings(then?.meanings ?? []))}` });
    dispatch('show-on-cabinet', { subject: next.unit });
    dispatch('open-entry', { entry: { kind: 'display', unit: next.unit, walking: true } });
  };
  const take = (choice: EntryChoice) => {
    if (choice.meanings.length === 0) dispatch('withdraw-display', { unit: entry.unit });
    else dispatch('enter-display', { unit: entry.unit, meanings: choice.meanings, at: new Date().toISOString() });
    settle(choice.words);
  };
  const takeCode = (reading: CodeReading) => {
    dispatch('enter-display', { unit: entry.unit, meanings: reading.meanings, code: reading.code, at: new Date().toISOString() });
    settle(wordMeanings(reading.meanings));
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    const choice = choices.find(({ key }) => key === event.key);
    if (choice) {
      event.preventDefault();
      take(choice);
    }
  };

  return (
    <Popover
      triggerRef={anchor}
      isOpen
      isNonModal
      onOpenChange={(open) => !open && close()}
      placement={entry.walking ? 'top start' : 'bottom start'}
      offset={entry.walking ? 8 : 10}
      className="entry-popover"
      key={entry.walking ? 'walk' : entry.unit}
    >
      <EntryDialog label={windowTexts.entry.title(names.unit(entry.unit))} onKeyDown={onKeyDown}>
        <p className="entry-head">
          <b className="designation">{names.unit(entry.unit)}</b> <span>{unitKindWords[unit.kind]}</span>
          <span className="quiet-text">{topology.placeOf.has(unit.id as never) ? names.place(unit.id) : ''}</span>
        </p>
        <Choices
          key={entry.unit}
          choices={choices}
          chosen={observation?.code === undefined ? (observation?.meanings ?? []) : []}
          onTake={take}
        />
        <CodeField key={`code ${entry.unit}`} unit={entry.unit} code={observation?.code ?? ''} onTake={takeCode} />
      </EntryDialog>
    </Popover>
  );
}

/** The element a pop-up hangs on. */
function useAnchor(id: string): React.RefObject<Element | null> {
  const anchor = useRef<Element | null>(null);
  anchor.current = document.getElementById(id);
  return anchor;
}

function Choices({
  choices,
  chosen,
  onTake,
}: {
  readonly choices: readonly EntryChoice[];
  readonly chosen: readonly string[];
  readonly onTake: (choice: EntryChoice) => void;
}) {
  const first = useRef<HTMLButtonElement>(null);
  const isChosen = ({ meanings }: EntryChoice) => meanings.length === chosen.length && meanings.every((one) => chosen.includes(one));
  const focused = choices.find((choice) => choice.meanings.length > 0 && isChosen(choice)) ?? choices[0];
  useEffect(() => first.current?.focus({ preventScroll: true }), []);
  const one = choices.filter(({ meanings }) => meanings.length === 1);
  const others = choices.filter(({ meanings }) => meanings.length !== 1);
  const button = (choice: EntryChoice, wide: boolean) => (
    <button
      key={choice.key}
      ref={choice === focused ? first : undefined}
      type="button"
      className={wide ? 'answer-wide' : 'answer-mark'}
      aria-pressed={isChosen(choice)}
      aria-keyshortcuts={choice.key}
      onClick={() => onTake(choice)}
    >
      <span className={`window seen tone-${toneOf(choice.mark)}`}>
        <DisplayMark name={choice.mark} size={wide ? 18 : 28} />
      </span>
      <span className="answer-words">{choice.words}</span>
      <kbd>{choice.key}</kbd>
    </button>
  );
  return (
    <fieldset className="answers">
      <legend className="screen-reader">{windowTexts.entry.marks}</legend>
      <div className="answer-marks">{one.map((choice) => button(choice, false))}</div>
      <div className="answer-others">{others.map((choice) => button(choice, true))}</div>
    </fieldset>
  );
}

function CodeField({
  unit,
  code,
  onTake,
}: {
  readonly unit: string;
  readonly code: string;
  readonly onTake: (reading: CodeReading) => void;
}) {
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
      className="code-field"
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
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <output className="code-hint">{hint}</output>
      <button type="submit" className="button small" disabled={!reading}>
        {windowTexts.entry.takeCode}
      </button>
    </form>
  );
}
