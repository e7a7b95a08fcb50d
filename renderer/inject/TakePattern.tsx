import { useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { haltedWords, injectWords, meaningWords, onsetWords, wordGaps, wordInjectedClause } from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { listPattern } from './injectCommands.ts';
import { selectInjectModel } from './injectModel.ts';
import './choose.css';

const words = injectWords.take;

/** Asks which displays and reports of the simulation go into the case, and says what they would replace. */
export function TakePattern() {
  const taking = useApp((state) => state.inject.on && state.inject.taking);
  return taking ? <Question /> : null;
}

function Question() {
  const { store, dispatch } = useWindow();
  const state = store.getState();
  const { topology } = state.checked;
  const names = namesOf(topology);
  const [pattern] = useState(() =>
    listPattern(
      store.getState(),
      inReadingOrder(topology),
      topology.chains.map(({ id }) => id),
    ),
  );
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [leftReports, setLeftReports] = useState<ReadonlySet<string>>(new Set());
  const displays = pattern.displays.filter(({ unit }) => !left.has(unit));
  const reports = pattern.reports.filter(({ chain }) => !leftReports.has(chain));
  const halted = pattern.reports.some(({ gap }) => gap !== 'none');
  const held = wordHeld(state.caseRecord.evidence.snapshots);
  const close = () => dispatch('close-take-pattern');
  const take = () => {
    const model = selectInjectModel(store.getState());
    const { onset } = store.getState().inject;
    const clauses = (model?.faults ?? []).map((fault) => wordInjectedClause(names, fault));
    const at = new Date().toISOString();
    dispatch('take-pattern', { displays, reports, onset, halted, note: words.simulated, wholeNote: words.note(clauses), at });
    dispatch('end-inject');
    dispatch('announce', { text: words.taken(displays.length, reports.length) });
  };
  const toggle = (set: ReadonlySet<string>, id: string) => {
    const next = new Set(set);
    if (!next.delete(id)) next.add(id);
    return next;
  };
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && close()} className="overlay">
      <Modal className="modal take-pattern">
        <Dialog className="sheet">
          <Heading slot="title">{words.title}</Heading>
          <p>{words.what}</p>
          {held !== '' && <p className="inject-note">{words.replaces(held)}</p>}
          <fieldset className="take-list">
            <legend>{words.displays}</legend>
            <p className="take-quick">
              <button type="button" className="button small" onClick={() => setLeft(new Set())}>
                {words.all}
              </button>
              <button
                type="button"
                className="button small"
                onClick={() => setLeft(new Set(pattern.displays.flatMap(({ unit, meaning }) => (meaning === 'quiet' ? [unit] : []))))}
              >
                {words.notQuiet}
              </button>
              <button type="button" className="button small" onClick={() => setLeft(new Set(pattern.displays.map(({ unit }) => unit)))}>
                {words.none}
              </button>
            </p>
            <div className="take-columns">
              {pattern.displays.map(({ unit, meaning }) => (
                <label key={unit}>
                  <input type="checkbox" checked={!left.has(unit)} onChange={() => setLeft(toggle(left, unit))} />
                  <b className="designation">{names.unit(unit)}</b>
                  <DisplayMark name={meaning} size={16} /> {meaningWords[meaning].label}
                </label>
              ))}
            </div>
          </fieldset>
          {pattern.reports.length > 0 && (
            <fieldset className="take-list">
              <legend>{words.reports}</legend>
              {pattern.reports.map(({ chain, gap }) => (
                <label key={chain}>
                  <input type="checkbox" checked={!leftReports.has(chain)} onChange={() => setLeftReports(toggle(leftReports, chain))} />
                  <b className="designation">{names.chain(chain)}</b> {wordGaps(names, chain, [gap])}
                </label>
              ))}
            </fieldset>
          )}
          <p className="quiet-text">{words.also(onsetWords[state.inject.onset].label, haltedWords[halted ? 'yes' : 'no'].label)}</p>
          <div className="sheet-end take-end">
            <span className="quiet-text">{words.count(displays.length, reports.length)}</span>
            <button type="button" className="button" onClick={close}>
              {words.cancel}
            </button>
            <button type="button" className="button primary" disabled={displays.length + reports.length === 0} onClick={take}>
              {words.take}
            </button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** What the case holds and would lose; empty when that is nothing. */
function wordHeld(snapshots: readonly Snapshot[]): string {
  const count = (list: (snapshot: Snapshot) => readonly unknown[] | undefined) =>
    snapshots.reduce((sum, snapshot) => sum + (list(snapshot)?.length ?? 0), 0);
  return words.holds(
    count(({ displays }) => displays),
    count(({ reports }) => reports),
    count(({ looks }) => looks),
    snapshots.length,
  );
}
