import { type ColumnKey, columnsOf, type KnownHeads, plainHead, tableKinds } from '../../engine/tables/index.ts';

const storageKey = 'linkwright.heads';
const mostHeads = 500;

const keys: ReadonlySet<string> = new Set(tableKinds.flatMap((kind) => columnsOf(kind).map(({ key }) => key)));
const isKey = (value: unknown): value is ColumnKey => typeof value === 'string' && keys.has(value);

/** What heads of lists were said to mean before; nothing where that cannot be read. */
export function readKnownHeads(storage: Pick<Storage, 'getItem'> | null): KnownHeads {
  try {
    const stored: unknown = JSON.parse(storage?.getItem(storageKey) ?? '{}');
    if (typeof stored !== 'object' || stored === null) return {};
    return Object.fromEntries(Object.entries(stored).filter((entry): entry is [string, ColumnKey] => isKey(entry[1])));
  } catch {
    return {};
  }
}

/** Keeps what the heads of a list were said to mean, for the next list of the same make. */
export function keepHeads(storage: Pick<Storage, 'getItem' | 'setItem'> | null, said: Readonly<Partial<Record<ColumnKey, string>>>): void {
  const all = { ...readKnownHeads(storage) };
  for (const [key, head] of Object.entries(said)) {
    if (isKey(key) && head !== undefined) all[plainHead(head)] = key;
  }
  try {
    storage?.setItem(storageKey, JSON.stringify(Object.fromEntries(Object.entries(all).slice(-mostHeads))));
  } catch {
    // Storage is full or forbidden: the heads must be named again next time.
  }
}
