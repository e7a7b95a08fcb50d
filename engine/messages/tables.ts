import type { ColumnKey, Doubt, DoubtCode, FieldChange, ImportRow, TableKind, TableWords } from '../tables/index.ts';
import { wordCount, wordList } from './numbers.ts';
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

/** What an import does with a row. */
export const importWords: { readonly [D in ImportRow['does']]: string } = {
  add: 'new',
  change: 'changed',
  same: 'as it is',
  doubtful: 'doubtful, left out',
};

/** The same of one row; where all that it says is so already, or is something else that stays. */
export const wordDoes = ({ does, changes }: Pick<ImportRow, 'does' | 'changes'>): string =>
  does === 'same' && changes.length > 0 ? differs : importWords[does];
const differs = 'differs, stays';

const doubtWords: { readonly [C in DoubtCode]: (text: string, head: string) => string } = {
  'not-a-number': (text, head) => `${head}: “${text}” is not a number that fits`,
  'word-unknown': (text, head) => `${head}: “${text}” is not known here`,
  'name-unknown': (text, head) => `${head}: the cabinet has no “${text}”`,
  'name-of-several': (text, head) => `${head}: more than one thing is called “${text}”`,
  'value-refused': (text, head) => `${head}: “${text}” does not fit`,
  'designation-missing': () => 'a designation is missing',
  'kind-missing': () => 'the kind of unit is missing',
  'unit-missing': () => 'the unit of the cable is missing',
  'record-of-several': (text) => `more than one thing is called “${text}”, so it is not clear which is meant`,
  'never-on-chain': () => 'it is not on a chain by its kind or by “On a chain”, but the list gives it a place on one',
  'position-taken': (text, head) => `${head}: ${text} is taken by another unit; put it in between in Draw`,
  'position-gap': (text, head) => `${head}: no unit stands before ${text} on that chain`,
  'port-taken': () => 'a cable sits already where its cable would go; join them in Draw',
  'row-doubled': (text) => `“${text}” stands in the list more than once`,
};

/** Why a row is doubtful, in one line. */
export function wordDoubt({ code, key, text }: Doubt): string {
  const said = doubtWords[code](text, key === null ? '' : heads[key]);
  return code === 'word-unknown' && key === 'kind' ? `${said}; write ${wordList(Object.values(unitKindWords), 'or')}` : said;
}

/** What an import would change in a field: "Serial number: D-1 → D-2", and that it stays where it may not. */
export function wordFieldChange({ key, before, after, isTaken }: FieldChange): string {
  if (before === '') return `${heads[key]}: ${after}`;
  return isTaken ? `${heads[key]}: ${after} instead of ${before}` : `${heads[key]}: stays ${before}, the list says ${after}`;
}

/** "3 new, 2 changed, 1 doubtful and left out, 14 as it is". */
export function wordImport(rows: readonly Pick<ImportRow, 'does' | 'changes'>[]): string {
  const order = [importWords.add, importWords.change, importWords.doubtful, differs, importWords.same];
  const counts = order.flatMap((words) => {
    const count = rows.filter((row) => wordDoes(row) === words).length;
    return count === 0 ? [] : [`${count} ${words.replace(', ', ' and ')}`];
  });
  return counts.length === 0 ? 'no rows' : `${wordCount(rows.length, 'row')}: ${wordList(counts)}`;
}
