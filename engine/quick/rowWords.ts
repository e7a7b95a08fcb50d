import { readKind } from './kindWords.ts';

/**
 * How the heads of lists are written by hand, in the form of `plainWord`: one vocabulary for pasted rows and for imported lists. Our
 * own heads need not stand here. "Type" is not among them: `typeHeadMeans` looks at its cells.
 */
export const headWords = {
  designation: ['designation', 'unit', 'name', 'tag', 'device', 'devicetag', 'referencedesignation', 'bmk'],
  kind: ['kind', 'kindofunit', 'unitkind', 'what'],
  chain: ['chain', 'chainnumber', 'chainno', 'onchain'],
  position: ['position', 'pos', 'posno', 'chainposition', 'positiononchain', 'positioninchain'],
  axes: ['axes', 'axis', 'axisname', 'axisnames'],
  model: ['model', 'modeltext', 'modelno', 'modelnumber', 'description'],
  partNumber: ['partnumber', 'partno', 'part', 'articlenumber', 'articleno', 'ordernumber', 'orderno'],
  serial: ['serial', 'serialnumber', 'serialno', 'sn'],
  boardPartNumber: ['boardpartnumber', 'boardpartno', 'board'],
  boardSerial: ['boardserial', 'boardserialnumber', 'boardserialno'],
  row: ['row', 'rail'],
  slot: ['slot', 'place'],
  loadA: ['load', 'loada', '24vload', '24vloada'],
  lengthM: ['length', 'lengthm', 'cablelength', 'cablelengthm'],
  notes: ['notes', 'note', 'remark', 'remarks', 'comment', 'comments'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** A head without what people write differently: capitals, blanks, signs. */
export const plainWord = (head: string): string => head.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

/** Whether most of what stands in some cells are kinds of units. */
export function areKinds(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  return filled.length > 0 && filled.filter((cell) => readKind(cell) !== null).length * 2 > filled.length;
}

/** What a column headed "Type" holds: some write the kind of unit there, others the maker's type, which is our model. */
export function typeHeadMeans(head: string, cells: readonly string[]): 'kind' | 'model' | null {
  if (!['type', 'unittype', 'devicetype', 'typeofunit'].includes(plainWord(head))) return null;
  return areKinds(cells) ? 'kind' : 'model';
}

/** The number of a chain as lists write it: "2", "chain 2", "Light 2"; null when it is none. */
export function readChainNumber(cell: string): number | null {
  const digits = /^(?:\p{L}+\s*)?([0-9]{1,4})(?:\s*[/.:].*)?$/iu.exec(cell.trim())?.[1];
  return digits === undefined ? null : Number(digits);
}
