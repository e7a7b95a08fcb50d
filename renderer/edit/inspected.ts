import type { FieldOwner, FieldSpec, FieldTable } from '../../engine/edit/index.ts';
import { fieldSpecs } from '../../engine/edit/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

/** Records of one table that are looked at together. */
export interface Inspected {
  readonly table: FieldTable;
  readonly owners: readonly FieldOwner[];
  readonly records: readonly object[];
}

const lists = ['units', 'links', 'leads', 'feedbacks', 'chains', 'spares', 'types', 'fibres'] as const;
export type ListTable = (typeof lists)[number];

/**
 * An id among what is chosen. Types and fibres have ids of their own, so they are chosen as "types/…"; ids of things have no slash.
 */
export function chosenId(table: ListTable, id: string): string {
  return table === 'types' || table === 'fibres' ? `${table}/${id}` : id;
}

/** The list in which something chosen stands, and its id there; null when it is not there (any more). */
export function findChosen(
  content: CabinetContent,
  chosen: string,
): { readonly table: ListTable | 'controller'; readonly id: string } | null {
  if (content.controller?.id === chosen) return { table: 'controller', id: chosen };
  const table = lists.find((list) => content[list]?.some(({ id }) => chosenId(list, id) === chosen));
  return table === undefined ? null : { table, id: chosen.slice(chosen.indexOf('/') + 1) };
}

/** What is chosen, by table, in the order in which the tables are shown; the cabinet itself where nothing is. */
export function inspect(content: CabinetContent, chosen: readonly string[]): readonly Inspected[] {
  const found = chosen.flatMap((id) => findChosen(content, id) ?? []);
  if (found.length === 0) return [{ table: 'cabinet', owners: [{ in: 'cabinet' }], records: [content] }];
  const groups: Inspected[] = [];
  if (content.controller !== undefined && found.some(({ table }) => table === 'controller')) {
    groups.push({ table: 'controller', owners: [{ in: 'controller' }], records: [content.controller] });
  }
  for (const table of lists) {
    const ids = found.filter((one) => one.table === table).map(({ id }) => id);
    if (ids.length === 0) continue;
    const records: readonly { readonly id: string }[] = content[table] ?? [];
    groups.push({
      table,
      owners: ids.map((id) => ({ in: table, id })),
      records: ids.flatMap((id) => records.find((record) => record.id === id) ?? []),
    });
  }
  return groups;
}

/** The fields that all of the records can have. */
export function fieldsOf({ table, records }: Inspected): readonly FieldSpec[] {
  const specs: readonly FieldSpec[] = fieldSpecs[table];
  if (table !== 'units') return specs;
  const kinds = records.map((record) => ('kind' in record ? String(record.kind) : ''));
  return specs.filter((spec) => spec.kinds === undefined || kinds.every((kind) => spec.kinds?.includes(kind)));
}

/** The value of a field in a record; undefined where it is left out. */
export function valueAt(record: object, path: string): unknown {
  let value: unknown = record;
  for (const part of path.split('.')) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Readonly<Record<string, unknown>>)[part];
  }
  return value;
}

/** What several records say in one field: the same, or different things. */
export function sharedValue(records: readonly object[], path: string): { readonly mixed: boolean; readonly value: unknown } {
  const [first, ...others] = records.map((record) => valueAt(record, path));
  const text = JSON.stringify(first);
  return others.every((other) => JSON.stringify(other) === text) ? { mixed: false, value: first } : { mixed: true, value: undefined };
}
