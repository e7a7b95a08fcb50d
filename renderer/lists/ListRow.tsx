import { X } from 'lucide-react';
import { memo, useState } from 'react';
import type { FieldValue } from '../../engine/edit/index.ts';
import { editWords } from '../../engine/messages/index.ts';
import type { CabinetContent, LeadRecord, LinkRecord } from '../../engine/schema/index.ts';
import { FieldControl } from '../edit/FieldControl.tsx';
import { chosenId, type ListTable, valueAt } from '../edit/inspected.ts';
import { optionsOf } from '../edit/options.ts';
import { useSetField } from '../edit/useSetField.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { EndCell } from './EndCell.tsx';
import { type Column, columnKey } from './listColumns.ts';

interface Props {
  readonly table: ListTable;
  readonly record: { readonly id: string };
  readonly columns: readonly Column[];
  readonly at: number;
  readonly chosen: boolean;
  readonly onTrouble: (trouble: string | null) => void;
}

const words = editWords.lists;

/** One line of a table. Its first cell chooses it too, for the inspector and the drawing. */
export const ListRow = memo(function ListRow({ table, record, columns, at, chosen, onTrouble }: Props) {
  const dispatch = useDispatch();
  const name = useRowName(table, record);
  const remove = () => {
    if (table === 'fibres' || table === 'types') dispatch('remove-record', { list: table, id: record.id, name });
    else dispatch('remove-things', { ids: [record.id] });
  };
  return (
    <tr className={chosen ? 'chosen-row' : ''}>
      <td className="row-choice">
        <button
          type="button"
          aria-pressed={chosen}
          aria-label={words.choose(at + 1, name)}
          onClick={(event) =>
            dispatch('choose', {
              ids: [chosenId(table, record.id)],
              how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only',
            })
          }
        >
          {at + 1}
        </button>
      </td>
      {columns.map((column, index) => (
        <td key={columnKey(column)} className={column.kind === 'derived' ? 'derived' : ''}>
          <Cell table={table} record={record} column={column} name={name} index={index} at={at} onTrouble={onTrouble} />
        </td>
      ))}
      <td>
        <button type="button" className="icon-button" aria-label={words.remove(name)} title={words.remove(name)} onClick={remove}>
          <X size={14} aria-hidden="true" />
        </button>
      </td>
    </tr>
  );
});

function useRowName(table: ListTable, record: { readonly id: string }): string {
  const topology = useApp((state) => state.checked.topology);
  if ('name' in record && (table === 'fibres' || table === 'types')) return String(record.name);
  if (table === 'spares') return 'designation' in record ? String(record.designation) : record.id;
  return namesOf(topology).thing(record.id);
}

interface CellProps extends Omit<Props, 'columns' | 'chosen'> {
  readonly column: Column;
  readonly name: string;
  readonly index: number;
}

function Cell({ table, record, column, name, index, at, onTrouble }: CellProps) {
  const label = words.cell(name, column.head);
  if (column.kind === 'field' && column.kinds !== undefined && 'kind' in record && !column.kinds.includes(String(record.kind))) return null;
  if (column.kind === 'derived') return <Derived record={record} what={column.what} />;
  // A column of an end stands in the tables of links and leads only.
  if (column.kind === 'end') return <EndCell record={record as LinkRecord | LeadRecord} end={column.end} label={label} />;
  return <FieldCell table={table} record={record} column={column} label={label} index={index} at={at} onTrouble={onTrouble} />;
}

function FieldCell({
  table,
  record,
  column,
  label,
  index,
  at,
  onTrouble,
}: Omit<CellProps, 'name' | 'column'> & { readonly column: Extract<Column, { kind: 'field' }>; readonly label: string }) {
  const set = useSetField();
  const options = useOptions(column);
  const [wrong, setWrong] = useState(false);
  return (
    <FieldControl
      id={`cell-${table}-${at}-${index}`}
      form={column.form === 'notes' ? 'line' : column.form}
      value={valueAt(record, column.path)}
      options={options}
      label={label}
      invalid={wrong}
      onSet={(value: FieldValue | null) => set([{ in: table, id: record.id }], column.path, value)}
      onTrouble={(trouble) => {
        setWrong(trouble !== null);
        onTrouble(trouble === null ? null : `${label}. ${trouble}`);
      }}
    />
  );
}

/** Options of a column; kept as long as what they are made of. */
function useOptions({ path, form }: Extract<Column, { kind: 'field' }>) {
  const cabinet: CabinetContent = useApp((state) => state.cabinet);
  return optionsOf(cabinet, path, form);
}

function Derived({ record, what }: { readonly record: { readonly id: string }; readonly what: 'place' | 'units' }) {
  const topology = useApp((state) => state.checked.topology);
  if (what === 'place') return <>{namesOf(topology).place(record.id)}</>;
  return <>{topology.chains.find(({ id }) => (id as string) === record.id)?.units.length ?? 0}</>;
}
