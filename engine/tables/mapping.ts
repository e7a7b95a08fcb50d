import { type ColumnKey, columnsOf, type TableKind, tableKinds } from './columns.ts';
import type { TableWords } from './makeTable.ts';

/** Which column of a file (counted from 0) holds what. */
export type Mapping = Partial<Readonly<Record<ColumnKey, number>>>;
/** Heads that were once said to mean a column, by the head in small letters; remembered from import to import. */
export type KnownHeads = Readonly<Record<string, ColumnKey>>;

/** A head without what people write differently: capitals, spaces, points, dashes. */
export const plainHead = (head: string): string =>
  head
    .toLowerCase()
    .replace(/[\s._-]+/g, ' ')
    .trim();

/** What the columns of a file mean, as far as their heads tell: our own words, our keys, and what was said of such a head before. */
export function guessMapping(kind: TableKind, heads: readonly string[], words: TableWords, known: KnownHeads = {}): Mapping {
  const mapping: Partial<Record<ColumnKey, number>> = {};
  for (const { key, form } of columnsOf(kind)) {
    if (form === 'derived') continue;
    const names = new Set([plainHead(words.heads[key]), plainHead(key)]);
    const index = heads.findIndex((head) => {
      const plain = plainHead(head);
      return known[plain] === key || (known[plain] === undefined && names.has(plain));
    });
    if (index >= 0 && !Object.values(mapping).includes(index)) mapping[key] = index;
  }
  return mapping;
}

/** Which kind of list the heads look like most. */
export function guessKind(heads: readonly string[], words: TableWords): TableKind {
  const score = (kind: TableKind) => {
    const names = new Set(columnsOf(kind).map(({ key }) => plainHead(words.heads[key])));
    return heads.filter((head) => names.has(plainHead(head))).length;
  };
  return [...tableKinds].sort((a, b) => score(b) - score(a))[0] ?? 'units';
}
