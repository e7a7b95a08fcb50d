import {
  type ColumnKey,
  columnsOf,
  type KnownHeads,
  type Mapping,
  rememberedHead,
  type TableKind,
  tableKinds,
} from '../../engine/tables/index.ts';

const storageKey = 'linkwright.heads';
const mostHeads = 500;

const keys: ReadonlySet<string> = new Set(tableKinds.flatMap((kind) => columnsOf(kind).map(({ key }) => key)));
const isMeaning = (value: unknown): value is ColumnKey | null => value === null || (typeof value === 'string' && keys.has(value));

/** What heads of lists were said to mean before; nothing where that cannot be read. */
export function readKnownHeads(storage: Pick<Storage, 'getItem'> | null): KnownHeads {
  try {
    const stored: unknown = JSON.parse(storage?.getItem(storageKey) ?? '{}');
    if (typeof stored !== 'object' || stored === null) return {};
    return Object.fromEntries(Object.entries(stored).filter((entry): entry is [string, ColumnKey | null] => isMeaning(entry[1])));
  } catch {
    return {};
  }
}

/**
 * Keeps for the next list of the same make what was said of its columns: which head is one of ours, and which head, though it was taken for
 * one, is none.
 */
export function keepHeads(
  storage: Pick<Storage, 'getItem' | 'setItem'> | null,
  kind: TableKind,
  heads: readonly string[],
  guessed: Mapping,
  said: Mapping,
): void {
  const all = new Map(Object.entries(readKnownHeads(storage)));
  const keep = (index: number | undefined, meaning: ColumnKey | null) => {
    if (index === undefined || heads[index] === undefined) return;
    const name = rememberedHead(kind, heads, index);
    // Last said stands last, and is forgotten last.
    all.delete(name);
    all.set(name, meaning);
  };
  const entries = Object.entries(said).filter((entry): entry is [ColumnKey, number] => keys.has(entry[0]));
  for (const [key, index] of entries) {
    if (guessed[key] !== index) keep(guessed[key], null);
  }
  for (const [key, index] of entries) keep(index, key);
  try {
    storage?.setItem(storageKey, JSON.stringify(Object.fromEntries([...all].slice(-mostHeads))));
  } catch {
    // Storage is full or forbidden: the heads must be named again next time.
  }
}
