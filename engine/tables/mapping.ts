import { type ColumnKey, columnsOf, type TableKind, tableKinds } from './columns.ts';
import type { TableWords } from './makeTable.ts';

/** Which column of a file (counted from 0) holds what. */
export type Mapping = Partial<Readonly<Record<ColumnKey, number>>>;
/** What heads of a kind of list were once said to mean, by `rememberedHead`; null: none of our columns. Kept from import to import. */
export type KnownHeads = Readonly<Record<string, ColumnKey | null>>;

/** A head without what people write differently: capitals, spaces, points, dashes. */
export const plainHead = (head: string): string =>
  head
    .toLowerCase()
    .replace(/[\s._-]+/g, ' ')
    .trim();

/** Heads by which every column of a list can be told from the others: a repeated one is counted, one that is empty has its number. */
export function labelHeads(heads: readonly string[], columnNumber: (number: number) => string): readonly string[] {
  return heads.map((head, index) => {
    if (head.trim() === '') return columnNumber(index + 1);
    const before = heads.slice(0, index).filter((one) => plainHead(one) === plainHead(head)).length;
    return before === 0 ? head : `${head} (${before + 1})`;
  });
}

/** Under which name the meaning of a head is remembered: by the kind of list, and the how-manieth of its name it is. */
export function rememberedHead(kind: TableKind, heads: readonly string[], index: number): string {
  const plain = plainHead(heads[index] ?? '');
  const before = heads.slice(0, index).filter((one) => plainHead(one) === plain).length;
  return `${kind}/${plain}${before === 0 ? '' : `/${before + 1}`}`;
}

/** What the columns of a file mean, as far as their heads tell: our own words, our keys, and what was said of such a head before. */
export function guessMapping(kind: TableKind, heads: readonly string[], words: TableWords, known: KnownHeads = {}): Mapping {
  const mapping: Partial<Record<ColumnKey, number>> = {};
  const said = heads.map((_, index) => known[rememberedHead(kind, heads, index)]);
  for (const { key, form } of columnsOf(kind)) {
    if (form === 'derived') continue;
    const names = new Set([plainHead(words.heads[key]), plainHead(key)]);
    const before = said.indexOf(key);
    const index = before >= 0 ? before : heads.findIndex((head, at) => said[at] === undefined && names.has(plainHead(head)));
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
