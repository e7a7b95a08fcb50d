import { EllipsisVertical, Plus } from 'lucide-react';
import { useId, useState } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
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

/** So many cells of a line stand beside one another and still show what is in them; more go on in the next row. */
const mostBeside = 3;

/** A field that holds several lines: axes, outputs, bends, limits. A line is kept once its first column says something. */
export function RowsField({ label, hint, path, columns, owners, mixed, value }: Props) {
  const id = useId();
  const set = useSetField();
  const cabinet = useApp((state) => state.cabinet);
  const [trouble, setTrouble] = useState<string | null>(null);
  /** Where the line stands that is not kept yet. */
  const [adding, setAdding] = useState<number | null>(null);
  const rows: readonly Row[] = Array.isArray(value) ? value : [];
  const needed = columns[0]?.path ?? '';
  const roomy = columns.length <= mostBeside;
  const write = (next: readonly Row[]) => set(owners, path, next.length === 0 ? null : next);
  const open = adding ?? (rows.length === 0 && !mixed ? 0 : null);
  const shown: readonly (Row | null)[] = open === null ? rows : [...rows.slice(0, open), null, ...rows.slice(open)];
  const setCell = (at: number, column: string, cell: FieldValue | null): string | null => {
    const row = shown[at] ?? newRow(path, rows);
    const { [column]: _before, ...others } = row;
    const changed = cell === null ? others : { ...row, [column]: cell };
    const isNew = at === open;
    const wrong = write(shown.flatMap((one, index) => (index === at ? [changed] : one === null ? [] : [one])));
    if (wrong === null && isNew) setAdding(null);
    return wrong;
  };
  /** `at` counts the lines that are kept. */
  const act = (deed: RowDeed, at: number) => {
    if (deed === 'insert') return setAdding(at);
    setAdding(null);
    const others = rows.filter((_one, index) => index !== at);
    const row = rows[at];
    const to = deed === 'up' ? at - 1 : at + 1;
    setTrouble(write(deed === 'remove' || row === undefined ? others : [...others.slice(0, to), row, ...others.slice(to)]));
  };
  return (
    <fieldset className="rows-field">
      <legend title={hint}>
        {label} {mixed && <small>{editWords.inspector.mixed}</small>}
      </legend>
      <div
        className={roomy ? 'rows-table' : 'rows-table stacked'}
        style={{ '--columns': columns.map(({ form }) => (form === 'flag' ? '86px' : 'minmax(0, 1fr)')).join(' ') } as React.CSSProperties}
      >
        {roomy && shown.length > 0 && (
          <>
            {columns.map(({ path: column }) => (
              <ColumnHead key={column} path={column} />
            ))}
            <span />
          </>
        )}
        {shown.map((row, at) => (
          // Lines have no ids of their own; their place is what they are.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <span className="rows-line" key={at}>
            {columns.map((column) => (
              <span className="rows-cell" key={column.path}>
                {!roomy && <ColumnHead path={column.path} />}
                <FieldControl
                  id={`${id}-${at}-${column.path}`}
                  form={column.form}
                  value={row?.[column.path]}
                  options={optionsOf(cabinet, column.path, column.form)}
                  label={`${editWords.inspector.rowOf(label, at + 1)}: ${wordField(column.path).label}`}
                  onSet={(cell) => (row === null && cell === null ? null : setCell(at, column.path, cell))}
                  onTrouble={setTrouble}
                />
              </span>
            ))}
            {row === null ? (
              <span />
            ) : (
              <RowMenu
                name={String(row[needed] ?? editWords.inspector.rowOf(label, at + 1))}
                at={open !== null && at > open ? at - 1 : at}
                count={rows.length}
                onAct={act}
              />
            )}
          </span>
        ))}
      </div>
      {trouble !== null && (
        <span className="field-trouble" role="alert">
          {trouble}
        </span>
      )}
      {rows.length > 0 && adding === null && (
        <button type="button" className="button small" onClick={() => setAdding(rows.length)}>
          <Plus size={14} aria-hidden="true" />
          {editWords.inspector.addRow}
          <span className="screen-reader">: {label}</span>
        </button>
      )}
    </fieldset>
  );
}

function ColumnHead({ path }: { readonly path: string }) {
  const { label, unit } = wordField(path);
  return (
    <span className="rows-head" aria-hidden="true">
      {label}
      {unit && <i> {unit}</i>}
    </span>
  );
}

type RowDeed = 'insert' | 'up' | 'down' | 'remove';

/** What can be done with one line. */
function RowMenu({
  name,
  at,
  count,
  onAct,
}: {
  readonly name: string;
  readonly at: number;
  readonly count: number;
  readonly onAct: (deed: RowDeed, at: number) => void;
}) {
  const { insertRow, removeRow, rowDown, rowMenu, rowUp } = editWords.inspector;
  const deeds: readonly (readonly [RowDeed, string, boolean])[] = [
    ['insert', insertRow, true],
    ['up', rowUp, at > 0],
    ['down', rowDown, at < count - 1],
    ['remove', removeRow, true],
  ];
  return (
    <MenuTrigger>
      <Button className="icon-button" aria-label={rowMenu(name)}>
        <EllipsisVertical size={14} aria-hidden="true" />
      </Button>
      <Popover className="menu-popover" placement="bottom end">
        <Menu
          className="menu"
          aria-label={rowMenu(name)}
          disabledKeys={deeds.flatMap(([deed, , can]) => (can ? [] : [deed]))}
          onAction={(key) => {
            const deed = deeds.find(([one]) => one === key)?.[0];
            if (deed !== undefined) onAct(deed, at);
          }}
        >
          {deeds.map(([deed, words]) => (
            <MenuItem key={deed} id={deed} className="menu-item">
              <span className="menu-check" />
              <span className="menu-text">{words}</span>
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
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
