import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { useStore } from 'zustand';
import { injectWords, type Names, startSentence, wordFault, wordItem, wordMode, makeWords as words } from '../../engine/messages/index.ts';
import { type Fault, onsets } from '../../engine/schema/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { addFault, isOnlySteady, listChoices, listTargets } from '../inject/faultChoices.ts';
import type { InjectTarget } from '../inject/injectState.ts';
import { targetName } from '../inject/targetName.ts';
import { mostFaults } from './makeDraft.ts';
import { changeDraft, makeStore } from './makeStore.ts';
import { SeedField } from './SeedField.tsx';

/** What is wrong, how steadily, and when it came. */
export function MakeHidden({ topology, names }: { readonly topology: Topology; readonly names: Names }) {
  const { faults, onset, seed } = useStore(makeStore, ({ draft }) => draft);
  const comesAndGoes = faults.some(({ presence }) => presence === 'intermittent');
  return (
    <section aria-label={words.hidden}>
      <div className="section-head">
        <h2>{words.hidden}</h2>
      </div>
      {faults.length === 0 && <p className="practice-small">{words.nothingHidden}</p>}
      <ul className="make-faults">
        {faults.map((fault) => (
          <Hidden key={modeKey(fault)} fault={fault} names={names} />
        ))}
      </ul>
      {faults.length < mostFaults && <AddFault topology={topology} names={names} />}
      <div className="make-row">
        <label>
          {words.onset}{' '}
          <select value={onset} onChange={({ target }) => changeDraft({ onset: onsets.find((one) => one === target.value) ?? onset })}>
            {onsets.map((one) => (
              <option key={one} value={one}>
                {injectWords.onsets[one]}
              </option>
            ))}
          </select>
        </label>
        {comesAndGoes && (
          <>
            <SeedField seed={seed} onChange={(next) => changeDraft({ seed: next })} />
            <span className="practice-small">{words.seedWhy}</span>
          </>
        )}
      </div>
    </section>
  );
}

function Hidden({ fault, names }: { readonly fault: Fault; readonly names: Names }) {
  const { faults } = makeStore.getState().draft;
  const key = modeKey(fault);
  const said = wordFault(names, fault);
  const replace = (make: (one: Fault) => Fault | null) =>
    changeDraft({ faults: faults.flatMap((one) => (modeKey(one) === key ? (make(one) ?? []) : one)) });
  return (
    <li>
      <span>
        <b>{startSentence(wordItem(names, fault))}</b> {wordMode(fault.item, fault.mode)}
      </span>
      {isOnlySteady(fault) ? (
        <span className="practice-small">{injectWords.onlySteady}</span>
      ) : (
        <select
          aria-label={words.presence(said)}
          value={fault.presence ?? 'steady'}
          onChange={({ target }) =>
            replace(
              ({ absentNow: _absent, ...one }) =>
                ({ ...one, presence: target.value === 'intermittent' ? 'intermittent' : 'steady' }) as Fault,
            )
          }
        >
          {(['steady', 'intermittent'] as const).map((presence) => (
            <option key={presence} value={presence}>
              {words.presences[presence]}
            </option>
          ))}
        </select>
      )}
      <button
        type="button"
        className="icon-button"
        aria-label={words.remove(said)}
        title={words.remove(said)}
        onClick={() => replace(() => null)}
      >
        <X size={16} aria-hidden="true" />
      </button>
    </li>
  );
}

const targetKey = (target: InjectTarget) => JSON.stringify(target);

function AddFault({ topology, names }: { readonly topology: Topology; readonly names: Names }) {
  const targets = listTargets(topology);
  const hidden = useStore(makeStore, ({ draft }) => draft.faults);
  const [at, setAt] = useState('');
  const [mode, setMode] = useState('');
  const target = targets.find((one) => targetKey(one) === at) ?? targets.find(({ kind }) => kind === 'link') ?? targets[0];
  const groups = target === undefined ? [] : listChoices(topology, target);
  const fault = groups.flatMap((group) => group.faults).find((one) => modeKey(one) === mode) ?? groups[0]?.faults[0];
  if (target === undefined || fault === undefined) return null;
  return (
    <form
      className="make-row"
      onSubmit={(event) => {
        event.preventDefault();
        changeDraft({ faults: addFault(hidden, fault) });
      }}
    >
      <label>
        {words.thing}{' '}
        <select
          value={targetKey(target)}
          onChange={(event) => {
            setAt(event.target.value);
            setMode('');
          }}
        >
          {(['link', 'unit', 'lead', 'chain'] as const).map((kind) => (
            <optgroup key={kind} label={words.things[kind]}>
              {targets
                .filter((one) => one.kind === kind)
                .map((one) => (
                  <option key={targetKey(one)} value={targetKey(one)}>
                    {nameOf(names, one)}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      </label>
      <label>
        {words.fault}{' '}
        <select value={modeKey(fault)} onChange={(event) => setMode(event.target.value)}>
          {groups.map((group) => (
            <optgroup key={group.key} label={group.faults[0] === undefined ? '' : startSentence(wordItem(names, group.faults[0]))}>
              {group.faults.map((one) => (
                <option key={modeKey(one)} value={modeKey(one)}>
                  {wordMode(one.item, one.mode)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <button type="submit" className="button small" disabled={hidden.some((one) => modeKey(one) === modeKey(fault))}>
        <Plus size={14} aria-hidden="true" /> {words.hide}
      </button>
    </form>
  );
}

/** In a list of all things the ports of the controller are told apart by their chains. */
function nameOf(names: Names, target: InjectTarget): string {
  const name = targetName(names, target);
  return target.kind === 'chain' ? `${name}, ${names.chain(target.chain)}` : name;
}
