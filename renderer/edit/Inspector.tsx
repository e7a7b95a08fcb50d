import { useId, useState } from 'react';
import type { FieldTable } from '../../engine/edit/index.ts';
import {
  drawWords,
  editWords,
  fieldGroups,
  fieldGroupWords,
  fieldTableWords,
  groupOfField,
  startSentence,
  unitKindWords,
} from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { OwnFigures } from '../repair/OwnFigures.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { Connections } from './Connections.tsx';
import { FieldRow } from './FieldRow.tsx';
import { fieldsOf, type Inspected, inspect } from './inspected.ts';
import { ProblemLine } from './ProblemLine.tsx';
import { allProblems } from './problems.ts';
import './edit.css';

/** Every field of what is chosen; of several things of one kind at once. Nothing chosen: the cabinet itself. */
export function Inspector() {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const chosen = useApp((state) => state.draw.chosen);
  const [wanted, setWanted] = useState<FieldTable | null>(null);
  const groups = inspect(cabinet, chosen);
  const shown = groups.find(({ table }) => table === wanted) ?? groups[0];
  if (shown === undefined) return null;
  const key = `${shown.table} ${shown.owners.map((owner) => ('id' in owner ? owner.id : '')).join(' ')}`;
  const [only] = shown.owners.length === 1 ? shown.owners : [];
  const onlyId = only !== undefined && 'id' in only ? only.id : null;
  const count = groups.reduce((sum, { owners }) => sum + owners.length, 0);
  return (
    <div className="inspector">
      <header className="inspector-head">
        <h2 className="section-head">
          {editWords.inspector.title}{' '}
          <small>{shown.table === 'cabinet' ? editWords.inspector.cabinet : editWords.inspector.chosen(count)}</small>
        </h2>
        {groups.length > 1 && (
          <fieldset className="segments inspector-tables">
            <legend className="screen-reader">{editWords.inspector.which}</legend>
            {groups.map(({ table, owners }) => (
              <button key={table} type="button" aria-pressed={table === shown.table} onClick={() => setWanted(table)}>
                {owners.length} {owners.length === 1 ? fieldTableWords[table].one : fieldTableWords[table].many}
              </button>
            ))}
          </fieldset>
        )}
        <Title inspected={shown} />
      </header>
      <NumberAnew inspected={shown} />
      <Fields key={key} inspected={shown} />
      <Connections inspected={shown} />
      {onlyId !== null && <OwnFigures key={onlyId} id={onlyId} />}
      {shown.table === 'units' && (
        <p className="inspector-note">
          {editWords.inspector.equipmentHint}{' '}
          <button type="button" className="link-button" onClick={() => dispatch('equipment-types')}>
            {editWords.inspector.equipment}
          </button>
        </p>
      )}
    </div>
  );
}

const numbered: readonly FieldTable[] = ['units', 'links', 'leads', 'feedbacks'];

/** Several things that bear designations can be numbered one after another. */
function NumberAnew({ inspected: { table, owners } }: { readonly inspected: Inspected }) {
  const dispatch = useDispatch();
  const id = useId();
  const [prefix, setPrefix] = useState('-');
  const [first, setFirst] = useState('1');
  if (!numbered.includes(table) || owners.length < 2) return null;
  const words = editWords.inspector;
  const ids = owners.flatMap((owner) => ('id' in owner ? [owner.id] : []));
  const prefixWrong = !/^([=+-][^\s=+-]*)*-$/.test(prefix.trim()) || prefix.length > 100;
  const firstWrong = !/^\d{1,5}$/.test(first.trim());
  return (
    <form
      className="number-anew"
      onSubmit={(event) => {
        event.preventDefault();
        if (!prefixWrong && !firstWrong) dispatch('renumber', { ids, numbering: { prefix: prefix.trim(), first: Number(first) } });
      }}
    >
      <label>
        {words.numberPrefix}
        <input
          value={prefix}
          aria-invalid={prefixWrong}
          aria-describedby={`${id}-said`}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setPrefix(event.target.value)}
        />
      </label>
      <label>
        {words.numberFirst}
        <input
          value={first}
          inputMode="numeric"
          aria-invalid={firstWrong}
          aria-describedby={`${id}-said`}
          autoComplete="off"
          onChange={(event) => setFirst(event.target.value)}
        />
      </label>
      <button type="submit" className="button small" disabled={prefixWrong || firstWrong}>
        {words.numberAnew}
      </button>
      <span className={prefixWrong || firstWrong ? 'field-trouble' : 'quiet-text'} id={`${id}-said`}>
        {prefixWrong ? words.numberPrefixWrong : firstWrong ? words.numberFirstWrong : words.numberHint}
      </span>
    </form>
  );
}

function Title({ inspected: { table, owners, records } }: { readonly inspected: Inspected }) {
  const topology = useApp((state) => state.checked.topology);
  const [record] = records;
  const [owner] = owners;
  if (record === undefined || owner === undefined) return null;
  if (records.length > 1) return <p className="inspector-title">{`${records.length} ${fieldTableWords[table].many}`}</p>;
  const names = namesOf(topology);
  const name =
    'in' in owner && owner.in === 'cabinet'
      ? topology.content.name
      : 'id' in owner
        ? owner.in === 'types' || owner.in === 'fibres'
          ? String('name' in record ? record.name : owner.id)
          : startSentence(names.thing(owner.id))
        : names.controller();
  const kind = table === 'units' && 'kind' in record ? (record.kind as keyof typeof unitKindWords) : null; // a unit's kind is one
  const place = kind !== null && 'id' in owner ? names.place(owner.id) : '';
  return (
    <p className="inspector-title">
      {kind !== null && <Sign name={kind} size={22} />}
      <span>
        <b className="designation">{name}</b>
        <small>{kind === null ? fieldTableWords[table].one : [...new Set([unitKindWords[kind], place])].join(', ')}</small>
      </span>
    </p>
  );
}

function Fields({ inspected }: { readonly inspected: Inspected }) {
  const state = useApp((one) => one.checked);
  const fields = fieldsOf(inspected);
  const ids = new Set(inspected.owners.flatMap((owner) => ('id' in owner ? [owner.id] : [])));
  const here = ids.size === 0 ? [] : allProblems(state).filter(({ subjects }) => subjects.length > 0 && ids.has(subjects[0] ?? ''));
  return (
    <>
      {here.length > 0 && (
        <ul className="inspector-problems" aria-label={editWords.inspector.problems}>
          {here.map((problem) => (
            <ProblemLine key={`${problem.code} ${problem.where}`} problem={problem} short />
          ))}
        </ul>
      )}
      {fieldGroups.map((group) => {
        const own = fields.filter(({ path }) => groupOfField(inspected.table, path) === group);
        if (own.length === 0) return null;
        return (
          <section key={group} className="inspector-group" aria-label={fieldGroupWords[group] || drawWords.inspector}>
            {fieldGroupWords[group] !== '' && <h3 className="section-head">{fieldGroupWords[group]}</h3>}
            {own.map((spec) => (
              <FieldRow key={spec.path} table={inspected.table} spec={spec} owners={inspected.owners} records={inspected.records} />
            ))}
          </section>
        );
      })}
    </>
  );
}
