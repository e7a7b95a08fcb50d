import { Plus, X } from 'lucide-react';
import { injectWords, wordFault, wordItem, wordMode } from '../../engine/messages/index.ts';
import { type Fault, onsets } from '../../engine/schema/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { focusTarget } from './elements.ts';
import { isOnlySteady, isWiringMistake, listTargets } from './faultChoices.ts';
import type { Steadiness } from './injectCommands.ts';
import { selectInjectModel } from './injectModel.ts';

/** What was put in: each fault with how steadily it is there, and when they came. */
export function InjectPane() {
  const dispatch = useDispatch();
  const model = useApp(selectInjectModel);
  const onset = useApp((state) => state.inject.onset);
  const topology = useApp((state) => state.checked.topology);
  if (!model) return null;
  const { faults, assumedTypes } = model;
  const mistaken = onset === 'while-running' && faults.some(isWiringMistake);
  const choose = () => {
    const first = listTargets(topology).find(({ kind }) => kind === 'link') ?? listTargets(topology)[0];
    if (first) focusTarget(first);
  };
  return (
    <section id="suspects" className="pane inject-pane" aria-label={injectWords.injected} tabIndex={-1}>
      <div className="section-head">
        <h2>{injectWords.injected}</h2>
        {faults.length > 1 && (
          <button type="button" className="text-button" onClick={() => dispatch('clear-faults')}>
            {injectWords.clear}
          </button>
        )}
      </div>
      {faults.length === 0 ? (
        <p className="quiet-text">{injectWords.none}</p>
      ) : (
        <ul className="injected">
          {faults.map((fault) => (
            <Injected key={modeKey(fault)} fault={fault} />
          ))}
        </ul>
      )}
      <div className="inject-acts">
        <button type="button" className="button small" onClick={choose}>
          <Plus size={14} aria-hidden="true" /> {injectWords.another}
        </button>
        <label>
          {injectWords.onset}{' '}
          <select
            value={onset}
            onChange={(event) => {
              const chosen = onsets.find((one) => one === event.target.value);
              if (chosen) dispatch('set-inject-onset', { onset: chosen });
            }}
          >
            {onsets.map((one) => (
              <option key={one} value={one}>
                {injectWords.onsets[one]}
              </option>
            ))}
          </select>
        </label>
      </div>
      {mistaken && <p className="inject-note">{injectWords.mistakeWhileRunning}</p>}
      {assumedTypes.length > 0 && <p className="inject-note">{injectWords.assumedBehaviour(assumedTypes)}</p>}
    </section>
  );
}

const steadinesses = ['steady', 'intermittent', 'gone'] as const satisfies readonly Steadiness[];

function Injected({ fault }: { readonly fault: Fault }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const key = modeKey(fault);
  const words = wordFault(names, fault);
  const now: Steadiness = fault.presence !== 'intermittent' ? 'steady' : fault.absentNow ? 'gone' : 'intermittent';
  return (
    <li>
      <p className="injected-words">
        <b>
          <Words>{wordItem(names, fault)}</Words>
        </b>
        <span className="injected-mode">{wordMode(fault.item, fault.mode)}</span>
        {fault.item === 'cable' && fault.mode.endsWith('-dim') && <Loss fault={fault} words={words} />}
      </p>
      {isOnlySteady(fault) ? (
        <span className="quiet-text">{injectWords.onlySteady}</span>
      ) : (
        <select
          aria-label={`${injectWords.presence}: ${words}`}
          title={injectWords.presenceMeanings[now]}
          value={now}
          onChange={(event) => {
            const chosen = steadinesses.find((one) => one === event.target.value);
            if (chosen) dispatch('set-presence', { key, steadiness: chosen });
          }}
        >
          {steadinesses.map((one) => (
            <option key={one} value={one}>
              {injectWords.presences[one]}
            </option>
          ))}
        </select>
      )}
      <button
        type="button"
        className="icon-button"
        aria-label={injectWords.remove(words)}
        title={injectWords.remove(words)}
        onClick={() => {
          dispatch('remove-fault', { key });
          document.getElementById('suspects')?.focus();
        }}
      >
        <X size={16} aria-hidden="true" />
      </button>
    </li>
  );
}

/** How much a dim fibre loses, in dB. Left empty: too much for telegrams. */
function Loss({ fault, words }: { readonly fault: Fault; readonly words: string }) {
  const dispatch = useDispatch();
  const lossDb = 'lossDb' in fault ? fault.lossDb : undefined;
  return (
    <span className="loss" title={injectWords.lossHint}>
      {injectWords.lossDb}{' '}
      <input
        type="number"
        min={0}
        max={100}
        step={0.5}
        aria-label={injectWords.lossName(words)}
        value={lossDb ?? ''}
        placeholder="–"
        onChange={({ target }) => {
          const typed = target.valueAsNumber;
          dispatch('set-loss', { key: modeKey(fault), lossDb: Number.isFinite(typed) && typed >= 0 && typed <= 100 ? typed : null });
        }}
      />{' '}
      {injectWords.lossUnit}
    </span>
  );
}
