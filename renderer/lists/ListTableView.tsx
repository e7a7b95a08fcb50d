import { Plus } from 'lucide-react';
import { type ClipboardEvent, type KeyboardEvent, useCallback, useMemo, useRef, useState } from 'react';
import { editWords } from '../../engine/messages/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { chosenId, type ListTable, valueAt } from '../edit/inspected.ts';
import { typedText } from '../edit/readValue.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { ListRow } from './ListRow.tsx';
import { type Column, columnKey, columnsOf, rowsOf } from './listColumns.ts';
import { pasteCells, splitCopied } from './pasteCells.ts';

const words = editWords.lists;

/** One table of the lists. Arrows up and down and Enter go from row to row; copied cells are pasted as one step. */
export function ListTableView({ table }: { readonly table: ListTable }) {
  const { store, dispatch, announce } = useWindow();
  const cabinet = useApp((state) => state.cabinet);
  const topology = useApp((state) => state.checked.topology);
  const chosen = useApp((state) => state.draw.chosen);
  const [trouble, setTrouble] = useState<string | null>(null);
  const body = useRef<HTMLTableElement>(null);
  const listColumns = useApp((state) => state.listColumns);
  const columns = useMemo(() => columnsOf(table, listColumns), [table, listColumns]);
  const rows = rowsOf(topology, cabinet, table);
  const onTrouble = useCallback((text: string | null) => setTrouble(text), []);

  const cellAt = (row: number, column: number) => body.current?.querySelector<HTMLElement>(`#cell-${table}-${row}-${column}`);
  const move = (event: KeyboardEvent) => {
    const place = placeOf(event.target);
    if (place === null || event.altKey || event.ctrlKey || event.metaKey) return;
    const isSelect = event.target instanceof HTMLSelectElement;
    const step = event.key === 'ArrowUp' && !isSelect ? -1 : (event.key === 'ArrowDown' && !isSelect) || event.key === 'Enter' ? 1 : 0;
    if (step === 0) return;
    const next = cellAt(place.row + (event.shiftKey ? -step : step), place.column);
    if (!next) return;
    event.preventDefault();
    next.focus();
    if (next instanceof HTMLInputElement) next.select();
  };
  const paste = (event: ClipboardEvent) => {
    const place = placeOf(event.target);
    const copied = splitCopied(event.clipboardData.getData('text/plain'));
    if (place === null || copied === null) return;
    event.preventDefault();
    const answer = pasteCells(store.getState().cabinet, table, rows, columns, place, copied);
    setTrouble(answer.ok ? null : answer.trouble);
    if (!answer.ok || answer.edits.length === 0) return;
    dispatch('set-fields', { edits: answer.edits });
    announce(words.pasted(answer.edits.length));
  };

  return (
    <div className="list-panel">
      {rows.length === 0 ? (
        <p className="list-empty">{words.empty[table]}</p>
      ) : (
        <table ref={body} className="list-table" onKeyDown={move} onPaste={paste}>
          <caption className="screen-reader">{words.tabs[table]}</caption>
          <colgroup>
            <col style={{ width: 40 }} />
            {columns.map((column) => (
              <col key={columnKey(column)} style={{ width: `${widthOf(column, rows, topology)}ch` }} />
            ))}
            <col style={{ width: 32 }} />
          </colgroup>
          <thead>
            <tr>
              <th scope="col">
                <span className="screen-reader">{words.chooseHead}</span>
              </th>
              {columns.map((column) => (
                <th key={columnKey(column)} scope="col">
                  {column.head}
                  {column.kind === 'field' && column.unit !== undefined && <small> {column.unit}</small>}
                </th>
              ))}
              <th scope="col">
                <span className="screen-reader">{words.removeHead}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((record, at) => (
              <ListRow
                key={record.id}
                table={table}
                record={record}
                columns={columns}
                at={at}
                chosen={chosen.includes(chosenId(table, record.id))}
                onTrouble={onTrouble}
              />
            ))}
          </tbody>
        </table>
      )}
      <div className="list-foot">
        {trouble !== null && (
          <p className="field-trouble" role="alert">
            {trouble}
          </p>
        )}
        <AddLine table={table} />
        {rows.length > 0 && <p className="quiet-text">{words.hint}</p>}
      </div>
    </div>
  );
}

/** What is not put in from the shelf gets its lines here. */
function AddLine({ table }: { readonly table: ListTable }) {
  const dispatch = useDispatch();
  const units = useApp((state) => state.cabinet.units) ?? [];
  if (table === 'spares' || table === 'fibres' || table === 'types') {
    return (
      <button type="button" className="button small" onClick={() => dispatch('add-record', { list: table })}>
        <Plus size={14} aria-hidden="true" />
        {words.add[table]}
      </button>
    );
  }
  if (table !== 'feedbacks') return null;
  return (
    <select
      className="list-add"
      value=""
      aria-label={words.add.feedbacks}
      onChange={(event) => event.target.value !== '' && dispatch('add-feedback', { unit: event.target.value })}
    >
      <option value="">{`${words.add.feedbacks} …`}</option>
      {units
        .filter(({ kind }) => kind !== 'supply')
        .map(({ id, designation }) => (
          <option key={id} value={id}>
            {designation || id}
          </option>
        ))}
    </select>
  );
}

const narrowest = 8;
const widest = 28;

/** Signs for which a column has room: its longest value, within bounds. */
function widthOf(column: Column, rows: readonly { readonly id: string }[], topology: Topology): number {
  if (column.kind === 'end') return 20;
  if (column.kind === 'derived') return column.what === 'units' ? narrowest : longest(rows.map(({ id }) => namesOf(topology).place(id)));
  if (typeof column.form === 'object' || column.form === 'flag') return 21;
  return Math.max(longest([column.head]) - 2, longest(rows.map((record) => typedText(valueAt(record, column.path)))));
}

function longest(texts: readonly string[]): number {
  return texts.reduce((most, text) => Math.max(most, Math.min(text.length + 3, widest)), narrowest);
}

/** The cell in which an element stands, by its id. */
function placeOf(target: EventTarget): { readonly row: number; readonly column: number } | null {
  const found = target instanceof HTMLElement ? /^cell-[a-z]+-(\d+)-(\d+)$/.exec(target.id) : null;
  return found === null ? null : { row: Number(found[1]), column: Number(found[2]) };
}

/** How many lines a table has, for its tab. */
export function useCount(table: ListTable): number {
  return useApp((state) => state.cabinet[table]?.length ?? 0);
}
