import { Plus, X } from 'lucide-react';
import { useId, useState } from 'react';
import type { FieldOwner, FieldSpec, FieldValue } from '../../engine/edit/index.ts';
import { editWords, wordField } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';
import { FieldControl } from './FieldControl.tsx';
import { optionsOf } from './options.ts';
import { useSetField } from './useSetField.ts';

interface Props {
  readonly label: string;
  readonly hint?: string;
  readonly path: string;
  readonly columns: readonly FieldSpec[];
  readonly owners: readonly FieldOwner[];
  readonly mixed: boolean;
  readonly value: unknown;
}

type Row = Readonly<Record<string, unknown>>;

/** A field that holds several lines: axes, outputs, bends, limits. A line is kept once its first column says something. */
export function RowsField({ label, hint, path, columns, owners, mixed, value }: Props) {
  const id = useId();
  const set = useSetField();
  const cabinet = useApp((state) => state.cabinet);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [adding, setAdding] = useState(false);
  const rows: readonly Row[] = Array.isArray(value) ? value : [];
  const needed = columns[0]?.path ?? '';
  const write = (next: readonly Row[]) => set(owners, path, next.length === 0 ? null : next);
  const setCell = (at: number, column: string, cell: FieldValue | null): string | null => {
    const row = rows[at] ?? newRow(path, rows);
    const { [column]: _before, ...others } = row;
    const changed = cell === null ? others : { ...row, [column]: cell };
    const next = at < rows.length ? rows.map((one, index) => (index === at ? changed : one)) : [...rows, changed];
    const wrong = write(next);
    if (wrong === null && at >= rows.length) setAdding(false);
    return wrong;
  };
  const shown = adding || (rows.length === 0 && !mixed) ? [...rows, null] : rows;
  return (
    <fieldset className="rows-field">
      <legend title={hint}>
        {label} {mixed && <small>{editWords.inspector.mixed}</small>}
      </legend>
      <div className="rows-table" style={{ '--columns': columns.length } as React.CSSProperties}>
        {shown.length > 0 &&
          columns.map((column) => (
            <span key={column.path} className="rows-head" aria-hidden="true">
              {wordField(column.path).label}
              {wordField(column.path).unit && <i> {wordField(column.path).unit}</i>}
            </span>
          ))}
        {shown.length > 0 && <span />}
        {shown.map((row, at) => (
          // Lines have no ids of their own; their place is what they are.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <span className="rows-line" key={at}>
            {columns.map((column) => (
              <FieldControl
                key={column.path}
                id={`${id}-${at}-${column.path}`}
                form={column.form}
                value={row?.[column.path]}
                options={optionsOf(cabinet, column.path, column.form)}
                label={`${editWords.inspector.rowOf(label, at + 1)}: ${wordField(column.path).label}`}
                onSet={(cell) => (row === null && cell === null ? null : setCell(at, column.path, cell))}
                onTrouble={setTrouble}
              />
            ))}
            {row !== null && (
              <button
                type="button"
                className="icon-button"
                aria-label={editWords.inspector.removeRow(String(row[needed] ?? editWords.inspector.rowOf(label, at + 1)))}
                onClick={() => setTrouble(write(rows.filter((_one, index) => index !== at)))}
              >
                <X size={14} aria-hidden="true" />
              </button>
            )}
          </span>
        ))}
      </div>
      {trouble !== null && (
        <span className="field-trouble" role="alert">
          {trouble}
        </span>
      )}
      {rows.length > 0 && !adding && (
        <button type="button" className="button small" onClick={() => setAdding(true)}>
          <Plus size={14} aria-hidden="true" />
          {editWords.inspector.addRow}
          <span className="screen-reader">: {label}</span>
        </button>
      )}
    </fieldset>
  );
}

/** Outputs have ids, by which leads name them. */
function newRow(path: string, rows: readonly Row[]): Row {
  if (path !== 'supply.outputs') return {};
  const taken = new Set(rows.map(({ id }) => id));
  let number = 1;
  while (taken.has(`x${number}`)) number += 1;
  return { id: `x${number}` };
}
