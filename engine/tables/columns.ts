import type { CabinetContent, FeedbackRecord, LeadRecord, LinkRecord, UnitRecord } from '../schema/index.ts';

/** The lists of a cabinet that go out and come in as tables. */
export const tableKinds = ['units', 'cables', 'leads', 'feedbacks'] as const;
export type TableKind = (typeof tableKinds)[number];

/** The records behind each kind of table. */
export interface TableRecords {
  readonly units: UnitRecord;
  readonly cables: LinkRecord;
  readonly leads: LeadRecord;
  readonly feedbacks: FeedbackRecord;
}

/** The list of a content that holds the records of a kind. */
export const listOfKind = { units: 'units', cables: 'links', leads: 'leads', feedbacks: 'feedbacks' } as const satisfies Readonly<
  Record<TableKind, keyof CabinetContent>
>;

/**
 * How a column is written and read. `line`, `text`: as it stands; `number`, `count`: a figure, a whole number; `yes-no`; `one-of`: words of
 * a closed set; `unit`, `chain-or-unit`, `type`, `fibre`: a name that is looked up; `axes`: names joined by commas; `place`: where the
 * cables put a unit, so no field of it; `derived`: worked out from the rest, so written and never read.
 */
export type ColumnForm =
  | 'line'
  | 'text'
  | 'number'
  | 'count'
  | 'yes-no'
  | 'kind'
  | 'position-kept'
  | 'conductor'
  | 'unit'
  | 'chain-or-unit'
  | 'type'
  | 'fibre'
  | 'axes'
  | 'place'
  | 'derived';

/** A column: its key, how it is written, and where in the record its value lies. */
export interface Column {
  readonly key: string;
  readonly form: ColumnForm;
  /** Names of fields, outermost first; empty for what stands in none. */
  readonly path: readonly string[];
}

const column = <const K extends string>(key: K, form: ColumnForm, ...path: readonly string[]) => ({ key, form, path });

const part = [
  column('partNumber', 'line', 'partNumber'),
  column('revision', 'line', 'revision'),
  column('serial', 'line', 'serial'),
] as const;
const id = column('id', 'line', 'id');
const notes = column('notes', 'text', 'notes');
const designation = column('designation', 'line', 'designation');
const lengthM = column('lengthM', 'number', 'lengthM');
/** How most lists end. */
const tail = [...part, notes, id] as const;

/** The columns of each table in the order in which they are written. */
export const tableColumns = {
  units: [
    designation,
    column('kind', 'kind', 'kind'),
    column('chain', 'place'),
    column('position', 'place'),
    column('ordinal', 'derived'),
    column('onChain', 'yes-no', 'onChain'),
    column('type', 'type', 'type'),
    column('model', 'line', 'model'),
    column('row', 'count', 'row'),
    column('slot', 'count', 'slot'),
    column('axes', 'axes', 'axes'),
    ...part,
    column('boardPartNumber', 'line', 'board', 'partNumber'),
    column('boardRevision', 'line', 'board', 'revision'),
    column('boardSerial', 'line', 'board', 'serial'),
    column('fuse', 'line', 'fuse', 'name'),
    column('fusePartNumber', 'line', 'fuse', 'partNumber'),
    column('fuseRatedA', 'number', 'fuse', 'ratedA'),
    column('upMarking', 'line', 'ports', 'upMarking'),
    column('downMarking', 'line', 'ports', 'downMarking'),
    column('loadA', 'number', 'control24', 'loadA'),
    column('inrushA', 'number', 'control24', 'inrushA'),
    column('minimumV', 'number', 'control24', 'minimumV'),
    column('dcLinkKw', 'number', 'dcLinkKw'),
    column('dcLinkCapacitanceUf', 'number', 'dcLinkCapacitanceUf'),
    notes,
    id,
  ],
  cables: [
    designation,
    column('upper', 'chain-or-unit', 'upper'),
    column('labelUpper', 'line', 'labelUpper'),
    column('lower', 'unit', 'lower', 'unit'),
    column('labelLower', 'line', 'labelLower'),
    column('chain', 'derived'),
    column('position', 'derived'),
    lengthM,
    column('fibre', 'fibre', 'fibre'),
    column('route', 'line', 'route'),
    column('couplers', 'count', 'couplers'),
    ...tail,
  ],
  leads: [
    designation,
    column('from', 'unit', 'from', 'unit'),
    column('output', 'line', 'from', 'output'),
    column('to', 'unit', 'to', 'unit'),
    column('fuse', 'line', 'fuse'),
    lengthM,
    column('crossSectionMm2', 'number', 'crossSectionMm2'),
    column('conductorClass', 'conductor', 'conductorClass'),
    ...tail,
  ],
  feedbacks: [
    designation,
    column('unit', 'unit', 'unit'),
    column('axis', 'line', 'axis'),
    column('positionKept', 'position-kept', 'positionKept'),
    column('plugged', 'yes-no', 'plugged'),
    ...tail,
  ],
} as const satisfies Readonly<Record<TableKind, readonly Column[]>>;

/** Every key of a column. */
export type ColumnKey = (typeof tableColumns)[TableKind][number]['key'];

/** The columns of a table, in the order in which they are written. */
export const columnsOf = (kind: TableKind): readonly (Column & { readonly key: ColumnKey })[] => tableColumns[kind];
