import { useEffect } from 'react';
import { entryWords, unitKindWords, windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import { focusUnit, unitElementId } from '../canvas/unitElement.ts';
import { TypeLink } from '../legend/TypeLink.tsx';
import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';
import type { OpenEntry } from '../state/appState.ts';
import { currentSnapshot, findDisplay, seenMeanings } from '../state/evidence.ts';
import type { CodeReading } from '../state/legend.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { EntryCode } from './EntryCode.tsx';
import { EntryFrame } from './EntryFrame.tsx';
import { EntryNotes } from './EntryNotes.tsx';
import { EntryWalkBar } from './EntryWalkBar.tsx';
import { type EntryChoice, entryChoices } from './entryChoices.ts';
import { actOfKey } from './entryKeys.ts';
import { asksHalted, nextReport, stepWalk } from './entryWalk.ts';

type DisplayEntry = Extract<OpenEntry, { kind: 'display' }>;

/** Asks what one display shows: six marks, the answers for those who cannot read it, or the raw code. */
export function EntryPopover({ entry }: { readonly entry: DisplayEntry }) {
  const { store, dispatch } = useWindow();
  const topology = useApp((state) => state.checked.topology);
  const observation = useApp((state) => findDisplay(currentSnapshot(state.caseRecord), entry.unit));
  const names = namesOf(topology);
  const unit = [...topology.units.values()].find(({ id }) => id === entry.unit);
  const { unit: shown, walking } = entry;
  useEffect(() => {
    // The answers are drawn by now: the display must not lie under them.
    if (walking) dispatch('show-on-cabinet', { subject: shown });
  }, [dispatch, shown, walking]);
  if (!unit) return null;
  const choices = entryChoices(unit.kind, entry.walking);

  const close = () => {
    dispatch('close-entry');
    focusUnit(entry.unit);
  };
  const goTo = (next: string, said: string) => {
    const seen = seenMeanings(currentSnapshot(store.getState().caseRecord), next);
    dispatch('announce', { text: `${said} ${windowTexts.entry.next(names.unit(next), wordMeanings(seen))}`.trim() });
    dispatch('open-entry', { entry: { kind: 'display', unit: next, walking: true } });
  };
  /** The reports come last: the controller's screen stands elsewhere. */
  const goToReport = (said: string, anyway: boolean) => {
    const chain = nextReport(store.getState()) ?? (anyway ? topology.chains.find(({ units }) => units.length > 0)?.id : undefined);
    if (chain === undefined) {
      const asks = asksHalted(store.getState());
      dispatch('announce', { text: `${said} ${asks ? entryWords.walk.nowHalted : entryWords.walk.end}`.trim() });
      return asks ? dispatch('open-entry', { entry: { kind: 'halted', walking: true } }) : close();
    }
    dispatch('announce', { text: `${said} ${entryWords.walk.nowReport(names.chain(chain))}`.trim() });
    dispatch('open-entry', { entry: { kind: 'report', chain, walking: true } });
  };
  const goBack = () => {
    const before = stepWalk(topology, store.getState().walkOrder, entry.unit, -1);
    if (before) goTo(before, '');
    else dispatch('announce', { text: entryWords.walk.first });
  };
  const settle = (said: string) => {
    if (!entry.walking) {
      dispatch('announce', { text: said });
      return close();
    }
    const next = stepWalk(topology, store.getState().walkOrder, entry.unit, 1);
    if (next) goTo(next, said);
    else goToReport(said, false);
  };
  const takeBack = () => {
    if (!observation) return;
    dispatch('withdraw-display', { unit: entry.unit });
    dispatch('announce', { text: entryWords.walk.tookBack(names.unit(entry.unit)) });
  };
  const take = (choice: EntryChoice) => {
    const name = names.unit(entry.unit);
    if (choice.meanings.length > 0) {
      dispatch('enter-display', { unit: entry.unit, meanings: choice.meanings, at: new Date().toISOString() });
    } else if (entry.walking) {
      // Skipped: what was entered before stays.
      return settle(entryWords.walk.skipped(name));
    } else {
      dispatch('withdraw-display', { unit: entry.unit });
    }
    settle(windowTexts.entry.entered(name, choice.words));
  };
  const takeCode = (reading: CodeReading) => {
    dispatch('enter-display', { unit: entry.unit, meanings: reading.meanings, code: reading.code, at: new Date().toISOString() });
    settle(windowTexts.entry.entered(names.unit(entry.unit), wordMeanings(reading.meanings)));
  };
  const onKeyDown = (event: React.KeyboardEvent<HTMLElement>) => {
    const act = actOfKey(event, choices, entry.walking);
    if (!act) return;
    // A letter goes on into the field: it is the first of the code.
    if (act.kind !== 'code' || act.from === 'nothing') event.preventDefault();
    switch (act.kind) {
      case 'choice':
        return take(act.choice);
      case 'back':
        return goBack();
      case 'report':
        return goToReport('', true);
      case 'order':
        return dispatch('toggle-walk-order');
      case 'take-back':
        return takeBack();
      case 'code': {
        const field = event.currentTarget.querySelector<HTMLInputElement>('input.code');
        field?.focus();
        field?.select();
      }
    }
  };

  return (
    <EntryFrame
      key={entry.walking ? 'walk' : entry.unit}
      label={windowTexts.entry.title(names.unit(entry.unit))}
      head={
        <>
          <b className="designation">{names.unit(entry.unit)}</b> <span>{unitKindWords[unit.kind]}</span>
          <span className="quiet-text">{topology.placeOf.has(unit.id as never) ? names.place(unit.id) : ''}</span>
          <TypeLink unit={entry.unit} name={names.unit(entry.unit)} />
        </>
      }
      // On a walk the answers stay where they are, so that the hand does; else they open beside the display.
      anchor={document.getElementById(entry.walking ? 'caution' : unitElementId(entry.unit))}
      placement={entry.walking ? 'top start' : 'bottom start'}
      offset={entry.walking ? 8 : 10}
      first={(dialog) => dialog.querySelector<HTMLElement>('.answers [aria-pressed="true"]')}
      // On a walk a click on the picture goes to another unit; it does not end the walk.
      {...(entry.walking ? { staysOpenOn: '.cabinet' } : {})}
      onClose={close}
      onKeyDown={onKeyDown}
    >
      {entry.walking && (
        <EntryWalkBar
          unit={entry.unit}
          onBack={goBack}
          onReport={() => goToReport('', true)}
          onTakeBack={observation ? takeBack : null}
          onClose={close}
        />
      )}
      <Choices choices={choices} chosen={observation?.code === undefined ? (observation?.meanings ?? []) : []} onTake={take} />
      <div className="entry-more">
        <EntryCode key={`code ${entry.unit}`} unit={entry.unit} code={observation?.code ?? ''} onTake={takeCode} />
        <EntryNotes key={`notes ${entry.unit}`} seen={{ kind: 'display', unit: entry.unit }} name={names.unit(entry.unit)} />
      </div>
    </EntryFrame>
  );
}

interface ChoicesProps {
  readonly choices: readonly EntryChoice[];
  readonly chosen: readonly string[];
  readonly onTake: (choice: EntryChoice) => void;
}

function Choices({ choices, chosen, onTake }: ChoicesProps) {
  const isChosen = ({ meanings }: EntryChoice) =>
    meanings.length > 0 && meanings.length === chosen.length && meanings.every((one) => chosen.includes(one));
  const one = choices.filter(({ meanings }) => meanings.length === 1);
  const others = choices.filter(({ meanings }) => meanings.length !== 1);
  const button = (choice: EntryChoice, wide: boolean) => (
    <button
      key={choice.key}
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
