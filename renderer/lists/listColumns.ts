import { type FieldForm, type FieldSpec, fieldSpecs } from '../../engine/edit/index.ts';
import { editWords, wordField } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import type { ListTable } from '../edit/inspected.ts';

/** One column: a field that is edited in place, an end of a cable, or something that is worked out. */
export type Column =
  | { readonly kind: 'field'; readonly path: string; readonly form: FieldForm; readonly head: string; readonly unit?: string }
  | { readonly kind: 'end'; readonly end: 'upper' | 'lower' | 'from' | 'to'; readonly head: string }
  | { readonly kind: 'derived'; readonly what: 'place' | 'units'; readonly head: string };

const words = editWords.lists;
const place = { kind: 'derived', what: 'place', head: words.place } as const;
const end = (one: 'upper' | 'lower' | 'from' | 'to') => ({ kind: 'end', end: one, head: words[one] }) as const;

/** Columns of each table: what one wants to see side by side. The first one names the row; all other fields stand in the inspector. */
const shown: { readonly [T in ListTable]: readonly (string | Column)[] } = {
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

export const listTables = Object.keys(shown) as readonly ListTable[]; // the keys are exactly the tables

export function columnsOf(table: ListTable): readonly Column[] {
  const specs: readonly FieldSpec[] = fieldSpecs[table];
  return shown[table].flatMap((column): Column[] => {
    if (typeof column !== 'string') return [column];
    const spec = specs.find(({ path }) => path === column);
    if (spec === undefined) return [];
    const { label, unit } = wordField(spec.path);
    return [{ kind: 'field', path: spec.path, form: spec.form, head: label, ...(unit === undefined ? {} : { unit }) }];
  });
}

/** Records of a table in the order in which they are read: units along the chains, all else as it stands in the file. */
export function rowsOf(topology: Topology, content: CabinetContent, table: ListTable): readonly { readonly id: string }[] {
  const records: readonly { readonly id: string }[] = content[table] ?? [];
  if (table !== 'units') return records;
  const byId = new Map(records.map((record) => [record.id, record]));
  return inReadingOrder(topology).flatMap((id) => byId.get(id) ?? []);
}
