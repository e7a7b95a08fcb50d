import { useRef, useState } from 'react';
import { circumstanceWords, entryWords } from '../../engine/messages/index.ts';
import { type Circumstance, type CircumstanceKind, circumstanceKinds } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { EntryFrame } from './EntryFrame.tsx';
import { SubjectsField } from './SubjectsField.tsx';

const words = entryWords.circumstances;
const nothing: readonly Circumstance[] = [];

/** What came before the fault and makes some faults likelier: one line in the pane, all of it in a pop-up. */
export function SeenCircumstances() {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const ticked = useApp((state) => state.caseRecord.evidence.circumstances ?? nothing);
  const days = useApp((state) => state.caseRecord.evidence.daysSinceWhole);
  const inOrder = circumstanceKinds.filter((kind) => ticked.some((one) => one.kind === kind));
  const summary = [...(inOrder.length > 0 ? [words.summary(inOrder)] : []), ...(days === undefined ? [] : [words.daysShort(days)])];
  const close = () => {
    setOpen(false);
    button.current?.focus({ preventScroll: true });
  };
  return (
    <div className="choice">
      <span>{words.label}</span>
      <button ref={button} type="button" className="button small circumstances-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        <span className="screen-reader">{words.button}: </span>
        <span className="circumstances-summary">{summary.length > 0 ? summary.join(' · ') : words.none}</span>
        <span aria-hidden="true">…</span>
      </button>
      {open && (
        <EntryFrame
          label={words.title}
          // At the window's edge: what hangs on a pane that scrolls would close when it does.
          anchor={document.getElementById('caution') ?? button.current}
          placement="top end"
          dialogClass="circumstances"
          first={(dialog) => dialog.querySelector<HTMLElement>('input')}
          onClose={close}
        >
          <ul>
            {circumstanceKinds.map((kind) => (
              <CircumstanceRow key={kind} kind={kind} entry={ticked.find((one) => one.kind === kind) ?? null} />
            ))}
          </ul>
          <Days days={days} />
          <button type="button" className="button small primary" onClick={close}>
            {words.done}
          </button>
        </EntryFrame>
      )}
    </div>
  );
}

interface RowProps {
  readonly kind: CircumstanceKind;
  /** Null: not ticked. */
  readonly entry: Circumstance | null;
}

function CircumstanceRow({ kind, entry }: RowProps) {
  const dispatch = useDispatch();
  const { label, meaning } = circumstanceWords[kind];
  // That nobody wired anything is said of the whole machine.
  const hasSubjects = kind !== 'not-reworked';
  return (
    <li className="circumstance">
      <label className="circumstance-tick">
        <input
          type="checkbox"
          checked={entry !== null}
          onChange={(event) => dispatch('set-circumstance', { kind, subjects: event.target.checked ? [] : null })}
        />
        <span>
          <b>{label}</b> <small className="quiet-text">{meaning}</small>
        </span>
      </label>
      {entry && hasSubjects && (
        <SubjectsField
          label={words.add(label)}
          lead={words.concerns}
          subjects={entry.subjects ?? []}
          onChange={(subjects) => dispatch('set-circumstance', { kind, subjects })}
        />
      )}
    </li>
  );
}

function Days({ days }: { readonly days: number | undefined }) {
  const dispatch = useDispatch();
  const [typed, setTyped] = useState(days === undefined ? '' : String(days));
  const value = readDays(typed);
  return (
    <label className="days">
      <span>
        {words.days} <small className="quiet-text">{value === 'wrong' ? words.daysWrong : words.daysHint}</small>
      </span>
      <input
        inputMode="decimal"
        maxLength={8}
        autoComplete="off"
        aria-invalid={value === 'wrong'}
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
          const read = readDays(event.target.value);
          if (read !== 'wrong') dispatch('set-days-since-whole', { days: read });
        }}
      />
    </label>
  );
}

/** A number with a decimal point or comma; null for an empty field. */
function readDays(typed: string): number | null | 'wrong' {
  const text = typed.trim().replace(',', '.');
  if (text === '') return null;
  return /^\d{1,6}(\.\d+)?$/.test(text) ? Number(text) : 'wrong';
}
