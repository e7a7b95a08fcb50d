import { Check, Columns3 } from 'lucide-react';
import { Button, Header, Menu, MenuItem, MenuSection, MenuTrigger, Popover, Separator } from 'react-aria-components';
import { editWords } from '../../engine/messages/index.ts';
import type { ListTable } from '../edit/inspected.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { allColumns, columnKey, columnsOf, usualKeys } from './listColumns.ts';
import { columnsButtonId } from './listCommands.ts';

const words = editWords.lists.columns;

/** Which columns a table shows. It stays open while one chooses; the choice is kept for the user, not in the cabinet. */
export function ColumnChooser({ table }: { readonly table: ListTable }) {
  const dispatch = useDispatch();
  const chosen = useApp((state) => state.listColumns);
  const shown = columnsOf(table, chosen).map(columnKey);
  // The first column names the row.
  const [, ...choices] = allColumns(table);
  return (
    <MenuTrigger>
      <Button id={columnsButtonId} className="button small list-columns">
        <Columns3 size={14} aria-hidden="true" /> {words.button} <small>{words.count(shown.length, choices.length + 1)}</small>
      </Button>
      <Popover className="menu-popover" placement="bottom end" offset={2}>
        <Menu aria-label={words.of(editWords.lists.tabs[table])} className="menu column-menu">
          <MenuSection
            selectionMode="multiple"
            selectedKeys={shown}
            onSelectionChange={(keys) =>
              dispatch('show-columns', {
                table,
                keys: allColumns(table)
                  .map(columnKey)
                  .filter((key, index) => index === 0 || keys === 'all' || keys.has(key)),
              })
            }
          >
            <Header className="menu-head">{words.of(editWords.lists.tabs[table])}</Header>
            {choices.map((column) => {
              const key = columnKey(column);
              const text = column.kind === 'field' && column.unit !== undefined ? `${column.head}, ${column.unit}` : column.head;
              return (
                <MenuItem key={key} id={key} className="menu-item" textValue={text}>
                  <span className="menu-check">{shown.includes(key) && <Check size={14} aria-hidden="true" />}</span>
                  <span className="menu-text">{text}</span>
                </MenuItem>
              );
            })}
          </MenuSection>
          <Separator className="menu-line" />
          <MenuSection>
            <MenuItem
              className="menu-item"
              textValue={words.usual}
              onAction={() => dispatch('show-columns', { table, keys: usualKeys(table) })}
            >
              <span className="menu-check" />
              <span className="menu-text">{words.usual}</span>
            </MenuItem>
          </MenuSection>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
