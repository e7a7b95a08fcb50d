import { compareNatural } from '../base/index.ts';
import type { CabinetContent, positionKeeping, UnitKind, UnitRecord } from '../schema/index.ts';
import { inMountingOrder, type Topology } from '../topology/index.ts';
import { type ColumnKey, columnsOf, listOfKind, type TableKind } from './columns.ts';
import { indexNames } from './nameIndex.ts';

/** What a cell holds: a figure, text, or nothing. */
export type CellValue = string | number | null;

/** A table: heads by key, and a row for each record. */
export interface Table {
  readonly kind: TableKind;
  readonly columns: readonly ColumnKey[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** Words of the closed sets that stand in cells; they come from the message catalogue, and are read back by it. */
export interface TableWords {
  readonly heads: Readonly<Record<ColumnKey, string>>;
  readonly kinds: Readonly<Record<UnitKind, string>>;
  readonly positionKept: Readonly<Record<(typeof positionKeeping)[number], string>>;
  readonly conductors: Readonly<Record<'class-1-2' | 'class-5' | 'class-5-tinned', string>>;
  readonly yes: string;
  readonly no: string;
  /** The controller's port of a chain, by the number of the chain. */
  readonly chainPort: (number: number) => string;
  readonly ordinal: (group: 'drive' | 'encoder-interface', ordinal: number) => string;
}

/** The table of a kind, with every column that it has, in the order in which one walks: mounting order, chain order, designation. */
export function makeTable(topology: Topology, kind: TableKind, words: TableWords): Table {
  const columns = columnsOf(kind);
  const rows = recordsInOrder(topology, kind).map((record) =>
    columns.map((column): CellValue => {
      if (column.path.length === 0) return derive(topology, kind, column.key, record.id, words);
      const value = column.path.reduce<unknown>((at, field) => (isObject(at) ? at[field] : undefined), record);
      return value === undefined ? null : writeValue(topology.content, column.form, value, words);
    }),
  );
  return { kind, columns: columns.map(({ key }) => key), rows };
}

export const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;

function recordsInOrder(topology: Topology, kind: TableKind): readonly { readonly id: string }[] {
  const list: readonly { readonly id: string; readonly designation?: string | undefined }[] = topology.content[listOfKind[kind]] ?? [];
  if (kind === 'units') return sortBy(list, inMountingOrder(topology));
  if (kind === 'cables')
    return sortBy(
      list,
      topology.chains.flatMap(({ links }) => links),
    );
  return [...list].sort((a, b) => compareNatural(a.designation ?? '', b.designation ?? '') || compareNatural(a.id, b.id));
}

/** In the order of some ids; what they do not name comes last, by its own id. A doubled id keeps both records. */
function sortBy<R extends { readonly id: string }>(list: readonly R[], ids: readonly string[]): readonly R[] {
  const rank = new Map(ids.map((id, index) => [id, index]));
  const of = (record: R) => rank.get(record.id) ?? ids.length;
  return [...list].sort((a, b) => of(a) - of(b) || compareNatural(a.id, b.id));
}

function derive(topology: Topology, kind: TableKind, key: ColumnKey, id: string, words: TableWords): CellValue {
  if (kind === 'units') {
    const place = topology.placeOf.get(id as never); // ids of a file are plain strings; one that has no place is not found
    if (place === undefined) return null;
    if (key === 'chain') return topology.chainById.get(place.chain)?.record.number ?? null;
    return key === 'position' ? place.position : words.ordinal(place.group, place.ordinal);
  }
  const place = placesOfLinks(topology).get(id);
  return place === undefined ? null : place[key === 'chain' ? 'chain' : 'position'];
}

const keptPlaces = new WeakMap<Topology, ReadonlyMap<string, { readonly chain: number; readonly position: number }>>();

function placesOfLinks(topology: Topology): ReadonlyMap<string, { readonly chain: number; readonly position: number }> {
  const known = keptPlaces.get(topology);
  if (known !== undefined) return known;
  const places = new Map<string, { readonly chain: number; readonly position: number }>();
  for (const { record, links } of topology.chains) {
    links.forEach((link, index) => {
      if (!places.has(link)) places.set(link, { chain: record.number, position: index + 1 });
    });
  }
  keptPlaces.set(topology, places);
  return places;
}

/** How a value of a record is written. */
export function writeValue(content: CabinetContent, form: string, value: unknown, words: TableWords): CellValue {
  switch (form) {
    case 'yes-no':
      return value === true ? words.yes : words.no;
    case 'kind':
      return words.kinds[value as UnitKind]; // the schema holds nothing else
    case 'position-kept':
      return words.positionKept[value as (typeof positionKeeping)[number]];
    case 'conductor':
      return words.conductors[value as 'class-5'];
    case 'unit':
      return nameOf(content.units, String(value));
    case 'chain-or-unit': {
      const end = value as { readonly chain?: string; readonly unit?: string }; // the schema's two shapes
      if (end.unit !== undefined) return nameOf(content.units, end.unit);
      const number = content.chains?.find((chain) => chain.id === end.chain)?.number;
      return number === undefined ? (end.chain ?? null) : words.chainPort(number);
    }
    case 'type':
      return content.types?.find((type) => type.id === value)?.name ?? String(value);
    case 'fibre':
      return content.fibres?.find((fibre) => fibre.id === value)?.name ?? String(value);
    case 'axes':
      return (value as readonly { readonly name: string }[]).map(({ name }) => name).join(', ');
    default:
      return typeof value === 'number' ? value : String(value);
  }
}

const none: readonly UnitRecord[] = [];

/** A designation that only one unit bears, else the id: what is written must find its way back. */
function nameOf(units: CabinetContent['units'], id: string): string {
  const { byId, byName } = indexNames(units ?? none, ({ designation }) => designation);
  const name = byId.get(id)?.designation.trim();
  if (name === undefined || name === '') return id;
  const isOnly = byName.get(name)?.every((unit) => unit.id === id) === true && (name === id || !byId.has(name));
  return isOnly ? name : id;
}
