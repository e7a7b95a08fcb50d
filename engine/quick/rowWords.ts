import { readKind } from './kindWords.ts';

/**
 * How the heads of lists are written by hand, in the form of `plainWord`: one vocabulary for pasted rows and for imported lists. Our
 * own heads need not stand here. English and German. "Type" is not among them: `typeHeadMeans` looks at its cells.
 */
export const headWords = {
  designation: [
    'designation',
    'unit',
    'name',
    'tag',
    'device',
    'devicetag',
    'referencedesignation',
    'bmk',
    'bezeichnung',
    'kennzeichen',
    'betriebsmittel',
    'betriebsmittelkennzeichen',
    'gerät',
    'geraet',
  ],
  kind: ['kind', 'kindofunit', 'unitkind', 'what', 'art', 'geräteart', 'geraeteart'],
  chain: ['chain', 'chainnumber', 'chainno', 'onchain', 'kette', 'kettennummer', 'kettennr', 'strang'],
  position: ['position', 'pos', 'posno', 'chainposition', 'positiononchain', 'positioninchain', 'stelle'],
  axes: ['axes', 'axis', 'axisname', 'axisnames', 'achse', 'achsen', 'achsname'],
  model: ['model', 'modeltext', 'modelno', 'modelnumber', 'description', 'modell', 'beschreibung'],
  partNumber: [
    'partnumber',
    'partno',
    'part',
    'articlenumber',
    'articleno',
    'ordernumber',
    'orderno',
    'artikelnummer',
    'artikelnr',
    'bestellnummer',
    'bestellnr',
    'sachnummer',
    'teilenummer',
  ],
  serial: ['serial', 'serialnumber', 'serialno', 'sn', 'seriennummer', 'seriennr'],
  boardPartNumber: ['boardpartnumber', 'boardpartno', 'board', 'platine', 'baugruppe'],
  boardSerial: ['boardserial', 'boardserialnumber', 'boardserialno', 'platinenseriennummer'],
  row: ['row', 'rail', 'reihe', 'zeile', 'schiene'],
  slot: ['slot', 'place', 'platz', 'steckplatz'],
  loadA: ['load', 'loada', '24vload', '24vloada', 'last', 'strom', 'stroma'],
  lengthM: ['length', 'lengthm', 'cablelength', 'cablelengthm', 'länge', 'laenge', 'längem', 'laengem', 'kabellänge', 'kabellaenge'],
  notes: ['notes', 'note', 'remark', 'remarks', 'comment', 'comments', 'bemerkung', 'bemerkungen', 'hinweis'],
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
  if (!['type', 'unittype', 'devicetype', 'typeofunit', 'typ', 'gerätetyp', 'geraetetyp'].includes(plainWord(head))) return null;
  return areKinds(cells) ? 'kind' : 'model';
}

/** The number of a chain as lists write it: "2", "chain 2", "Light 2"; null when it is none. */
export function readChainNumber(cell: string): number | null {
  const digits = /^(?:\p{L}+\s*)?([0-9]{1,4})(?:\s*[/.:].*)?$/iu.exec(cell.trim())?.[1];
  return digits === undefined ? null : Number(digits);
}
