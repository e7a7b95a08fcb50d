import { headWords, plainWord, typeHeadMeans } from '../quick/index.ts';
import { type ColumnKey, columnsOf, type TableKind, tableKinds } from './columns.ts';
import type { RawTable } from './importTypes.ts';
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

/**
 * What the columns of a file mean, as far as their heads tell: what was said of such a head before, our own words, our keys, and the
 * words that people use. A column headed "Type" holds the kind of unit, or else its model, as its cells tell.
 */
export function guessMapping(
  kind: TableKind,
  { heads, rows }: Pick<RawTable, 'heads' | 'rows'>,
  words: TableWords,
  known: KnownHeads = {},
): Mapping {
  const mapping: Partial<Record<ColumnKey, number>> = {};
  const said = heads.map((_, index) => known[rememberedHead(kind, heads, index)]);
  const columns = columnsOf(kind).filter(({ form }) => form !== 'derived');
  const take = (key: ColumnKey, index: number) => {
    if (index >= 0 && mapping[key] === undefined && !Object.values(mapping).includes(index)) mapping[key] = index;
  };
  const find = (means: (head: string, index: number) => boolean) =>
    heads.findIndex((head, index) => said[index] === undefined && means(head, index));
  for (const { key } of columns) take(key, said.indexOf(key));
  // The key "type" in a graph of ours is the type of equipment; "Type" in a list from elsewhere is not.
  for (const { key } of columns)
    take(
      key,
      find((head) => plainHead(head) === plainHead(words.heads[key]) || head.trim() === key),
    );
  for (const { key } of columns)
    take(
      key,
      find((head) => isHeadOf(key, head)),
    );
  if (kind === 'units') {
    for (const key of ['kind', 'model'] as const) {
      take(
        key,
        find(
          (head, index) =>
            typeHeadMeans(
              head,
              rows.map((cells) => cells[index] ?? ''),
            ) === key,
        ),
      );
    }
  }
  return mapping;
}

/** Whether people call a column so. */
function isHeadOf(key: ColumnKey, head: string): boolean {
  const plain = plainWord(head);
  // “Type” is told apart by its cells.
  return key !== 'type' && (plain === plainWord(key) || (Object.hasOwn(headWords, key) && wordsOf(key).includes(plain)));
}
// Only called for keys that the table has.
const wordsOf = (key: ColumnKey): readonly string[] => headWords[key as keyof typeof headWords];

/** How many heads of a list are known, whichever list it is. */
export function countKnownHeads(heads: readonly string[], words: TableWords): number {
  return Math.max(...tableKinds.map((kind) => heads.filter((head) => isKnown(kind, head, words)).length));
}

/** Which kind of list the heads look like most. */
export function guessKind(heads: readonly string[], words: TableWords): TableKind {
  const score = (kind: TableKind) => heads.filter((head) => isKnown(kind, head, words)).length;
  return [...tableKinds].sort((a, b) => score(b) - score(a))[0] ?? 'units';
}

const isKnown = (kind: TableKind, head: string, words: TableWords): boolean =>
  columnsOf(kind).some(({ key }) => plainHead(words.heads[key]) === plainHead(head) || isHeadOf(key, head));
