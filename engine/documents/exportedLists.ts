import { makeNames, tableWords } from '../messages/index.ts';
import { type CsvForm, makeTable, tableKinds, writeCsv, writeGraphml } from '../tables/index.ts';
import type { Topology } from '../topology/index.ts';
import { sumRows } from './sumsPaper.ts';

/** What goes out as a file for other programs: the lists and the sums as CSV, the whole as GraphML. The sums do not come in again. */
export const exportedLists = [...tableKinds, 'sums', 'graph'] as const;
export type ExportedList = (typeof exportedLists)[number];

/** The text of such a file. `form` concerns CSV only. */
export function writeList(topology: Topology, list: ExportedList, form: CsvForm): string {
  if (list === 'graph') return writeGraphml(topology, tableWords);
  if (list === 'sums') {
    const { heads, rows } = sumRows(makeNames(topology), topology);
    return writeCsv(heads, rows, form);
  }
  const { columns, rows } = makeTable(topology, list, tableWords);
  return writeCsv(
    columns.map((key) => tableWords.heads[key]),
    rows,
    form,
  );
}
