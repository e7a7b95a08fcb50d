/** What a table says of a key that comes from a file; undefined for what the language itself gives every object, such as `constructor`. */
export function ownWord<T>(table: Readonly<Record<string, T>>, key: string | number): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}
