import { makeProblem, type Problem } from '../../engine/base/index.ts';
import { tableWords } from '../../engine/messages/index.ts';
import { countKnownHeads, type GraphTables, type RawTable, readCsv, readGraphml, readTableText } from '../../engine/tables/index.ts';

/** A list as it was read: rows of a table, or the tables of a graph; or why it was not. */
export type ReadList =
  | { readonly kind: 'table'; readonly table: RawTable }
  | { readonly kind: 'graph'; readonly tables: GraphTables }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** Reads a list; what it is says the file itself, not its name. */
export function readList(content: Uint8Array): ReadList {
  const text = readTableText(content);
  if (!text.ok) return { kind: 'refused', problems: text.problems };
  if (/^\ufeff?\s*</.test(text.value)) {
    const graph = readGraphml(text.value);
    return graph.ok ? { kind: 'graph', tables: graph.value } : { kind: 'refused', problems: graph.problems };
  }
  const csv = readCsv(text.value, (cells) => countKnownHeads(cells, tableWords));
  return csv.isBroken ? { kind: 'refused', problems: [makeProblem('table-quote-open', 'refused')] } : { kind: 'table', table: csv };
}
