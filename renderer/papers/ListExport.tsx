import { useState } from 'react';
import { makeFileName } from '../../engine/base/index.ts';
import { type ExportedList, exportedLists, writeList } from '../../engine/documents/index.ts';
import { paperKindWords, startSentence, tableKindWords, papersWords as words } from '../../engine/messages/index.ts';
import type { CsvForm } from '../../engine/tables/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

const separators = [';', ',', '\t'] as const;
const decimals = ['.', ','] as const;

const wordList = (list: ExportedList) =>
  list === 'graph' ? words.graph : list === 'sums' ? paperKindWords.sums.label : tableKindWords[list];

/** A list as CSV in the form that a spreadsheet wants, or everything as a graph. */
export function ListExport() {
  const topology = useApp((state) => state.checked.topology);
  const name = useApp((state) => state.cabinet.name);
  const dispatch = useDispatch();
  const [what, setWhat] = useState<ExportedList>('units');
  const [form, setForm] = useState<CsvForm>({ separator: ';', decimal: '.', byteOrderMark: true, designations: 'guarded' });
  const save = () => {
    const isGraph = what === 'graph';
    dispatch('export-file', {
      name: makeFileName(`${name}.${isGraph ? 'graph' : wordList(what)}`, isGraph ? '.graphml' : '.csv', 'list'),
      content: new TextEncoder().encode(writeList(topology, what, form)),
      kind: isGraph ? 'graphml' : 'csv',
    });
  };
  return (
    <fieldset className="papers-lists">
      <legend>{words.lists}</legend>
      <label className="papers-field">
        {words.list}
        <select value={what} onChange={(event) => setWhat(exportedLists.find((one) => one === event.target.value) ?? what)}>
          {exportedLists.map((one) => (
            <option key={one} value={one}>
              {startSentence(wordList(one))}
            </option>
          ))}
        </select>
      </label>
      {what !== 'graph' && (
        <>
          <label className="papers-field">
            {words.separator}
            <select
              value={form.separator}
              onChange={(event) => setForm({ ...form, separator: separators.find((one) => one === event.target.value) ?? form.separator })}
            >
              {separators.map((one) => (
                <option key={one} value={one}>
                  {words.separators[one]}
                </option>
              ))}
            </select>
          </label>
          <label className="papers-field">
            {words.decimal}
            <select
              value={form.decimal}
              onChange={(event) => setForm({ ...form, decimal: decimals.find((one) => one === event.target.value) ?? form.decimal })}
            >
              {decimals.map((one) => (
                <option key={one} value={one}>
                  {words.decimals[one]}
                </option>
              ))}
            </select>
          </label>
          <label className="papers-check">
            <input
              type="checkbox"
              checked={form.byteOrderMark}
              onChange={(event) => setForm({ ...form, byteOrderMark: event.target.checked })}
            />
            {words.byteOrderMark}
          </label>
          <label className="papers-check">
            <input
              type="checkbox"
              checked={form.designations === 'guarded'}
              onChange={(event) => setForm({ ...form, designations: event.target.checked ? 'guarded' : 'plain' })}
            />
            {words.guarded}
          </label>
          <p className="papers-note">{form.designations === 'guarded' ? words.guard : words.unguarded}</p>
        </>
      )}
      <button type="button" className="button" onClick={save}>
        {words.saveList}
      </button>
    </fieldset>
  );
}
