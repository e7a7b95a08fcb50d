/** The records of a list by id and by name, as it is asked for in every row of a list that is read or written. */
export interface NameIndex<R> {
  readonly byId: ReadonlyMap<string, R>;
  /** By the name without the spaces around it. */
  readonly byName: ReadonlyMap<string, readonly R[]>;
  /** By the same in small letters. */
  readonly byPlainName: ReadonlyMap<string, readonly R[]>;
}

const kept = new WeakMap<object, NameIndex<unknown>>();

/** Lists are replaced, never changed, so the index of one holds for good. A list has one kind of name. */
export function indexNames<R extends { readonly id: string }>(list: readonly R[], nameOf: (record: R) => string): NameIndex<R> {
  const known = kept.get(list) as NameIndex<R> | undefined; // made below, of this very list
  if (known !== undefined) return known;
  const byId = new Map<string, R>();
  const byName = new Map<string, R[]>();
  const byPlainName = new Map<string, R[]>();
  for (const record of list) {
    const name = nameOf(record).trim();
    if (!byId.has(record.id)) byId.set(record.id, record);
    append(byName, name, record);
    append(byPlainName, name.toLowerCase(), record);
  }
  const index = { byId, byName, byPlainName };
  kept.set(list, index);
  return index;
}

function append<R>(map: Map<string, R[]>, name: string, record: R): void {
  const list = map.get(name);
  if (list === undefined) map.set(name, [record]);
  else list.push(record);
}
