import { entryWords, windowTexts, wordGaps } from '../../engine/messages/index.ts';
import { chainElementId } from '../canvas/unitElement.ts';
import type { OpenEntry } from '../state/appState.ts';
import { currentSnapshot, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { EntryFrame } from './EntryFrame.tsx';
import { EntryNotes } from './EntryNotes.tsx';
import { asksHalted, nextReport, walkUnits } from './entryWalk.ts';
import { GapForm } from './ReportGap.tsx';
import type { Gaps } from './reportPlaces.ts';

const words = windowTexts.report;
/** What the pop-up needs under the controller, pixels. */
const leastRoom = 420;
type ReportEntry = Extract<OpenEntry, { kind: 'report' }>;

/** Asks what the controller reports of one chain: nothing lost, or the gap by the ordinals it names. */
export function ReportPopover({ entry }: { readonly entry: ReportEntry }) {
  const { store, dispatch } = useWindow();
  const topology = useApp((state) => state.checked.topology);
  const gaps = useApp((state) => findReport(currentSnapshot(state.caseRecord), entry.chain)?.gaps);
  const controller = document.getElementById(chainElementId(entry.chain))?.closest('.controller') ?? null;
  const hasRoom = controller !== null && window.innerHeight - controller.getBoundingClientRect().bottom > leastRoom;
  const names = namesOf(topology);
  const chains = topology.chains.filter(({ units }) => units.length > 0);
  const chain = topology.chains.find(({ id }) => id === entry.chain);
  if (!chain) return null;

  const close = () => {
    dispatch('close-entry');
    document.getElementById(chainElementId(entry.chain))?.focus({ preventScroll: true });
  };
  const openChain = (id: string) => dispatch('open-entry', { entry: { ...entry, chain: id } });
  /** On a walk the next chain comes by itself; one whose report is not there to be read is passed over, the others are not. */
  const done = () => {
    const passed = [...(entry.passed ?? []), entry.chain];
    const next = entry.walking ? nextReport(store.getState(), passed) : null;
    if (next !== null) {
      dispatch('announce', { text: entryWords.walk.nowReport(names.chain(next)) });
      return dispatch('open-entry', { entry: { ...entry, chain: next, passed } });
    }
    if (!entry.walking) return close();
    const asks = asksHalted(store.getState());
    dispatch('announce', { text: asks ? entryWords.walk.nowHalted : entryWords.walk.end });
    if (asks) dispatch('open-entry', { entry: { kind: 'halted', walking: true } });
    else close();
  };
  const enter = (entered: Gaps) => {
    dispatch('enter-report', { chain: entry.chain, gaps: entered, at: new Date().toISOString() });
    dispatch('announce', { text: words.entered(`${names.chain(entry.chain)} ${wordGaps(names, entry.chain, entered)}`) });
  };
  const enterNone = () => {
    enter(['none']);
    done();
  };
  const back = () => {
    const units = walkUnits(topology, store.getState().walkOrder);
    const last = units[units.length - 1];
    if (entry.walking && last !== undefined) dispatch('open-entry', { entry: { kind: 'display', unit: last, walking: true } });
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || isNote(event.target)) return;
    const at = chains.findIndex(({ id }) => id === entry.chain);
    const other = event.key === 'ArrowDown' ? chains[at + 1] : event.key === 'ArrowUp' ? chains[at - 1] : undefined;
    if (event.key.toLowerCase() === 'n' || event.key === '*') {
      event.preventDefault();
      enterNone();
    } else if (other && !(event.target instanceof HTMLSelectElement)) {
      event.preventDefault();
      openChain(other.id);
    }
  };
  return (
    <EntryFrame
      label={words.title(names.chain(entry.chain))}
      // Under the controller; where that is too low, at the right: the units that light up must be seen.
      anchor={hasRoom ? controller : document.getElementById('caution')}
      placement={hasRoom ? 'bottom start' : 'top end'}
      offset={6}
      dialogClass="report"
      // The answer is one number: the pop-up opens to have it typed.
      first={(dialog) => dialog.querySelector<HTMLElement>('.place-field input')}
      // A click on a gap of the picture is an answer too.
      staysOpenOn=".cabinet"
      onClose={close}
      onKeyDown={onKeyDown}
    >
      {chains.length > 1 && (
        <fieldset className="chain-choice">
          <legend className="screen-reader">{entryWords.report.chains}</legend>
          {chains.map(({ id }) => (
            <button key={id} type="button" className="button small" aria-pressed={id === entry.chain} onClick={() => openChain(id)}>
              {names.chain(id)}
            </button>
          ))}
        </fieldset>
      )}
      <div className="report-answers">
        <button type="button" className="button" aria-pressed={gaps?.length === 1 && gaps[0] === 'none'} onClick={enterNone}>
          {words.none} <kbd>N</kbd>
        </button>
        <button
          type="button"
          className="button"
          aria-pressed={gaps === undefined}
          onClick={() => {
            dispatch('withdraw-report', { chain: entry.chain });
            done();
          }}
        >
          {words.notEntered}
        </button>
      </div>
      {chain.units.length > 0 && <GapForm chain={chain} gaps={gaps} onEnter={enter} onDone={done} onBack={back} />}
      <EntryNotes seen={{ kind: 'report', chain: entry.chain }} name={names.chain(entry.chain)} />
    </EntryFrame>
  );
}

const isNote = (target: EventTarget) => target instanceof HTMLElement && target.closest('.entry-notes') !== null;
