import { useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import { editWords } from '../../engine/messages/index.ts';
import type { ListTable } from '../edit/inspected.ts';
import { ColumnChooser } from './ColumnChooser.tsx';
import { ListTableView, useCount } from './ListTableView.tsx';
import { listTables } from './listColumns.ts';
import './lists.css';

/** The same cabinet as tables: the fast and accessible second way. */
export function ListView() {
  const [table, setTable] = useState<ListTable>('units');
  return (
    <Tabs className="lists" selectedKey={table} onSelectionChange={(key) => setTable(listTables.find((one) => one === key) ?? table)}>
      <div className="list-head">
        <TabList className="list-tabs" aria-label={editWords.lists.region}>
          {listTables.map((table) => (
            <ListTab key={table} table={table} />
          ))}
        </TabList>
        <ColumnChooser table={table} />
      </div>
      {listTables.map((table) => (
        <TabPanel key={table} id={table} className="list-tab-panel">
          <ListTableView table={table} />
        </TabPanel>
      ))}
    </Tabs>
  );
}

function ListTab({ table }: { readonly table: ListTable }) {
  const count = useCount(table);
  return (
    <Tab id={table} className="list-tab">
      {editWords.lists.tabs[table]} <small>{count}</small>
    </Tab>
  );
}
