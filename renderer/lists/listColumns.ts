import { type FieldForm, type FieldSpec, fieldSpecs } from '../../engine/edit/index.ts';
import { editWords, wordField } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import type { ListTable } from '../edit/inspected.ts';

/** One column: a field that is edited in place, an end of a cable, or something that is worked out. */
export type Column =
  | {
      readonly kind: 'field';
      readonly path: string;
      readonly form: FieldForm;
      readonly head: string;
      readonly unit?: string;
      /** Kinds of units that have it; left out: all. */
      readonly kinds?: readonly string[];
    }
  | { readonly kind: 'end'; readonly end: 'upper' | 'lower' | 'from' | 'to'; readonly head: string }
  | { readonly kind: 'derived'; readonly what: 'place' | 'units'; readonly head: string };

const words = editWords.lists;
const place = { kind: 'derived', what: 'place', head: words.place } as const;
const end = (one: 'upper' | 'lower' | 'from' | 'to') => ({ kind: 'end', end: one, head: words[one] }) as const;

/** Usual columns of each table: what one wants to see side by side. The first one names the row and is always shown. */
const usual: { readonly [T in ListTable]: readonly (string | Column)[] } = {
  units: [
    'designation',
    place,
    'kind',
    'type',
    'model',
    'partNumber',
    'serial',
    'board.partNumber',
    'board.serial',
    'control24.loadA',
    'row',
    'slot',
  ],
  links: ['designation', end('upper'), end('lower'), 'lengthM', 'fibre', 'route', 'partNumber', 'labelUpper', 'labelLower'],
  leads: ['designation', end('from'), end('to'), 'fuse', 'lengthM', 'crossSectionMm2', 'conductorClass', 'partNumber'],
  feedbacks: ['designation', 'unit', 'axis', 'positionKept', 'plugged', 'partNumber', 'serial'],
  chains: [
    'number',
    { kind: 'derived', what: 'units', head: words.units },
    'name',
    'marking',
    'cycleClass',
    'toleratesFewerUnits',
    'partNumber',
    'serial',
  ],
  spares: ['designation', 'kind', 'partNumber', 'revision', 'serial', 'count', 'fits', 'lengthM'],
  fibres: [
    'name',
    'medium',
    'attenuationDbPerM',
    'leastAttenuationDbPerM',
    'maximumLengthM',
    'minimumBendMm',
    'quarterBendDb',
    'couplerDb',
    'source',
  ],
  types: [
    'name',
    'legend',
    'optics.launchPowerMinDbm',
    'optics.launchPowerMaxDbm',
    'optics.sensitivityDbm',
    'optics.overloadDbm',
    'optics.source',
  ],
};

export const listTables = Object.keys(usual) as readonly ListTable[]; // the keys are exactly the tables

/** Which columns of a table somebody chose, by their keys; left out: the usual ones. */
export type ChosenColumns = { readonly [T in ListTable]?: readonly string[] };

/** What a column is called in the settings. */
export function columnKey(column: Column): string {
  if (column.kind === 'field') return column.path;
  return `${column.kind} ${column.kind === 'end' ? column.end : column.what}`;
}

/** Every column that a table can show, the usual ones first. What is no text, number or choice is edited in the inspector. */
export function allColumns(table: ListTable): readonly Column[] {
  const specs: readonly FieldSpec[] = fieldSpecs[table];
  const columnOf = ({ path, form, kinds }: FieldSpec): Column => {
    const { label, unit } = wordField(path);
    return { kind: 'field', path, form, head: label, ...(unit === undefined ? {} : { unit }), ...(kinds === undefined ? {} : { kinds }) };
  };
  const first = usual[table].flatMap((column): Column[] => {
    if (typeof column !== 'string') return [column];
    const spec = specs.find(({ path }) => path === column);
    return spec === undefined ? [] : [columnOf(spec)];
  });
  const fits = ({ path, form }: FieldSpec) =>
    !usual[table].includes(path) && form !== 'pictures' && !(typeof form === 'object' && 'rows' in form);
  return [...first, ...specs.filter(fits).map(columnOf)];
}

/** The columns that a table shows, in the order in which it can. */
export function columnsOf(table: ListTable, chosen: ChosenColumns = {}): readonly Column[] {
  const keys = chosen[table] ?? usualKeys(table);
  return allColumns(table).filter((column, index) => index === 0 || keys.includes(columnKey(column)));
}

/** Keys of the usual columns. */
export function usualKeys(table: ListTable): readonly string[] {
  return usual[table].map((column) => (typeof column === 'string' ? column : columnKey(column)));
}

/** Records of a table in the order in which they are read: units along the chains, all else as it stands in the file. */
export function rowsOf(topology: Topology, content: CabinetContent, table: ListTable): readonly { readonly id: string }[] {
  const records: readonly { readonly id: string }[] = content[table] ?? [];
  if (table !== 'units') return records;
  const byId = new Map(records.map((record) => [record.id, record]));
  return inReadingOrder(topology).flatMap((id) => byId.get(id) ?? []);
}
