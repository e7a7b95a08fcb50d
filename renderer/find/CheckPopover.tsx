import { useEffect, useState } from 'react';
import {
  entryWords,
  lookWords,
  startSentence,
  stepTexts,
  windowTexts,
  wordFound,
  wordLookHere,
  wordLookPlace,
  wordStepPlace,
} from '../../engine/messages/index.ts';
import type { Look } from '../../engine/simulation/index.ts';
import type { OpenEntry } from '../state/appState.ts';
import { findLook } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { type CheckChoice, checkChoices, looksAt, thingOf, thingsToCheck } from './checkChoices.ts';
import { EntryFrame } from './EntryFrame.tsx';
import { meantKey } from './entryKeys.ts';
import { ThingGroups } from './ThingGroups.tsx';

const words = entryWords.check;

/** Asks what a look at neither display nor report showed: where, at which look at the machine, and every outcome that such a look can have. */
export function CheckPopover({ entry }: { readonly entry: Extract<OpenEntry, { kind: 'check' }> }) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const snapshots = useApp((state) => state.caseRecord.evidence.snapshots);
  const [look, setLook] = useState<Look>(entry.look);
  const [moment, setMoment] = useState<number | null>(null);
  const names = namesOf(topology);
  const thing = thingOf(look);
  useEffect(() => dispatch('show-on-cabinet', { subject: thing }), [dispatch, thing]);
  const looks = looksAt(topology, thing);
  const key = JSON.stringify(look);
  const at = moment ?? Math.max(0, snapshots.length - 1);
  const seen = findLook(snapshots[at] ?? {}, look)?.outcomes ?? [];
  const choices = checkChoices(look, words.notLookedAt);

  const close = () => {
    dispatch('close-entry');
    (document.getElementById('step') ?? document.getElementById('answer'))?.focus({ preventScroll: true });
  };
  const take = ({ outcomes }: CheckChoice) => {
    if (outcomes.length > 0 || seen.length > 0) {
      dispatch('enter-check', { look, outcomes, snapshot: at, at: new Date().toISOString() });
      dispatch('announce', { text: stepTexts.entered(wordFound(names, look, outcomes)) });
    }
    close();
  };
  const onKeyDown = (event: React.KeyboardEvent<HTMLElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target instanceof HTMLSelectElement) return;
    const choice = choices.find((one) => one.key === meantKey(event));
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const next = looks[(looks.findIndex((one) => JSON.stringify(one) === key) + by + looks.length) % looks.length];
    if (!choice && (by === 0 || !next)) return;
    event.preventDefault();
    if (choice) take(choice);
    else if (next) setLook(next);
  };
  return (
    <EntryFrame
      label={words.title}
      anchor={document.getElementById('caution')}
      placement="top end"
      dialogClass="check"
      staysOpenOn=".cabinet"
      onClose={close}
      onKeyDown={onKeyDown}
    >
      <div className="check-where">
        <ThingChoice thing={thing} onChoose={(chosen) => setLook(looksAt(topology, chosen)[0] ?? look)} />
        {snapshots.length > 1 && (
          <label>
            {words.when}{' '}
            <select value={at} onChange={(event) => setMoment(Number(event.target.value))}>
              {snapshots.map(({ id, restarted }, index) => (
                <option key={id ?? index} value={index}>
                  {startSentence(windowTexts.cabinet.snapshot(index + 1, restarted === true))}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <fieldset className="check-kinds">
        <legend className="screen-reader">{words.kind}</legend>
        {[...new Set(looks.map((one) => one.look))].map((kind) => (
          <div key={kind}>
            <span aria-hidden="true">{startSentence(lookWords[kind].short)}</span>
            {looks
              .filter((one) => one.look === kind)
              .map((one) => (
                <button
                  key={JSON.stringify(one)}
                  type="button"
                  className="button small"
                  aria-label={startSentence(wordLookHere(one))}
                  aria-pressed={JSON.stringify(one) === key}
                  onClick={() => setLook(one)}
                >
                  {wordLookPlace(one)}
                </button>
              ))}
          </div>
        ))}
      </fieldset>
      <p className="entry-hint quiet-text" aria-live="polite">
        <b>{startSentence(wordStepPlace(names, topology, { do: 'look', look }))}</b>: {lookWords[look.look].meaning}.
      </p>
      <fieldset className="check-answers">
        <legend className="screen-reader">{words.found}</legend>
        {choices.map((choice) => (
          <button
            key={choice.words}
            type="button"
            className="button"
            aria-pressed={seen.length > 0 && choice.outcomes.join() === seen.join()}
            aria-keyshortcuts={choice.key}
            onClick={() => take(choice)}
          >
            {choice.words} <kbd>{choice.key}</kbd>
          </button>
        ))}
      </fieldset>
      <p className="entry-hint quiet-text">{words.hint}</p>
    </EntryFrame>
  );
}

function ThingChoice({ thing, onChoose }: { readonly thing: string; readonly onChoose: (thing: string) => void }) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const { links, units } = thingsToCheck(topology);
  return (
    <label>
      {words.at}{' '}
      <select value={thing} onChange={(event) => onChoose(event.target.value)}>
        <ThingGroups
          names={names}
          groups={[
            [words.links, links],
            [words.units, units],
          ]}
        />
      </select>
    </label>
  );
}
