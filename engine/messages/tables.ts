import type { ColumnKey, TableKind, TableWords } from '../tables/index.ts';
import { groupWords, positionKeepingWords, unitKindWords } from './words.ts';

/** Heads of the columns of lists, as they are exported and recognised again. */
const heads: { readonly [K in ColumnKey]: string } = {
  designation: 'Designation',
  kind: 'Kind',
  chain: 'Chain',
  position: 'Position',
  ordinal: 'Counted as',
  onChain: 'On a chain',
  type: 'Type of equipment',
  model: 'Model',
  row: 'Row',
  slot: 'Slot',
  axes: 'Axes',
  partNumber: 'Part number',
  revision: 'Revision',
  serial: 'Serial number',
  boardPartNumber: 'Board part number',
  boardRevision: 'Board revision',
  boardSerial: 'Board serial number',
  fuse: 'Fuse',
  fusePartNumber: 'Fuse part number',
  fuseRatedA: 'Fuse, A',
  upMarking: 'Up port is marked',
  downMarking: 'Down port is marked',
  loadA: '24 V load, A',
  inrushA: '24 V inrush, A',
  minimumV: 'Least voltage, V',
  dcLinkKw: 'DC link, kW',
  dcLinkCapacitanceUf: 'DC link, µF',
  upper: 'From, upper plug',
  labelUpper: 'Label at upper plug',
  lower: 'To, lower plug',
  labelLower: 'Label at lower plug',
  lengthM: 'Length, m',
  fibre: 'Fibre',
  route: 'Route',
  couplers: 'Couplers',
  from: 'From',
  output: 'Output',
  to: 'To',
  crossSectionMm2: 'Cross-section, mm²',
  conductorClass: 'Conductor',
  unit: 'Unit',
  axis: 'Axis',
  positionKept: 'Position is',
  plugged: 'Plugged in',
  notes: 'Notes',
  id: 'Id',
};

/** The words of lists, out and in. */
export const tableWords: TableWords = {
  heads,
  kinds: unitKindWords,
  positionKept: positionKeepingWords,
  conductors: { 'class-1-2': 'solid or stranded', 'class-5': 'flexible', 'class-5-tinned': 'flexible, tinned' },
  yes: 'yes',
  no: 'no',
  chainPort: (number) => `chain ${number}`,
  ordinal: (group, ordinal) => `${groupWords[group]} ${ordinal}`,
};

/** What each list is called. */
export const tableKindWords: { readonly [K in TableKind]: string } = {
  units: 'units',
  cables: 'optical cables',
  leads: '24 V leads',
  feedbacks: 'feedback cables',
};
