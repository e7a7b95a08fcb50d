import type { Isolation } from '../patterns/index.ts';
import { cautionsDefer } from './cautions.ts';
import { wordCount, wordList, wordProbability } from './numbers.ts';
import { wordDuration, wordNumber } from './quantities.ts';

/** The documents that are printed, by their names in the program. */
export const paperKinds = ['drawing', 'units', 'cables', 'leads', 'labels', 'door-sheet', 'pattern-sheet', 'sums', 'photos'] as const;
export type PaperKind = (typeof paperKinds)[number];

/** What each document is called, and what it is for. */
export const paperKindWords: { readonly [K in PaperKind]: { readonly label: string; readonly meaning: string } } = {
  drawing: { label: 'cabinet drawing', meaning: 'where everything stands, and how the light runs' },
  units: { label: 'unit list', meaning: 'every unit with part numbers and serial numbers' },
  cables: { label: 'cable schedule', meaning: 'ends, lengths, part numbers and labels of every optical and feedback cable' },
  leads: { label: 'lead list', meaning: 'the 24 V leads with their fuses and cross-sections' },
  labels: { label: 'label sheets', meaning: 'labels for both ends of every cable, and for the units' },
  'door-sheet': { label: 'door sheet', meaning: 'which fault makes which picture, for the inside of the door' },
  'pattern-sheet': { label: 'pattern sheet', meaning: 'a blank form to note what every display shows' },
  sums: { label: 'sums', meaning: 'light, axes, 24 V and DC link, and where each figure comes from' },
  photos: { label: 'photos', meaning: 'the photos of cabinet and units' },
};

const page = (number: number, count: number) => `sheet ${number} of ${count}`;

/** Words of the documents. */
export const paperWords = {
  page,
  /** Language of the words, as in BCP 47. */
  language: 'en',
  revision: (revision: string) => `revision ${revision}`,
  machine: (number: string) => `machine ${number}`,
  basedOn: (design: string, revision: string) => `by design ${design}${revision ? ` ${revision}` : ''}`,
  printed: (date: string) => `printed ${date}`,
  of: (cabinet: string, location: string) => (location ? `${cabinet} · ${location}` : cabinet),
  none: '–',
  chain: (number: number) => `chain ${number}`,
  controller: 'Controller',
  spares: 'Spare parts',
  opticalCables: 'Optical cables',
  feedbackCables: 'Feedback cables',
  nothingListed: 'None is documented in this cabinet.',
  spareHeads: { kind: 'Kind', count: 'Count', designation: 'Designation', fits: 'Fits' },
  spareKinds: {
    cable: 'cable',
    board: 'board',
    unit: 'unit',
    supply: 'supply',
    lead: 'lead',
    fuse: 'fuse',
    'feedback-cable': 'feedback cable',
    'controller-port': 'controller port',
    other: 'other',
  },
  fits: { yes: 'yes', no: 'no', unknown: 'not known' },
  total: (metres: string) => `Together ${metres} m`,
} as const;

/** Words of the door sheet. */
export const doorSheetWords = {
  title: (chain: string) => `Door sheet, ${chain}`,
  offChainTitle: 'Door sheet, supplies and units off the chains',
  subtitle: (cabinet: string) => `${cabinet} · which fault makes which picture`,
  how: [
    'Touch nothing. Read every display along the chain, and the controller’s report.',
    'Find the row that looks the same.',
    'What stands in one row cannot be told apart by looking. The likeliest comes first.',
  ],
  key: 'What the marks mean, and what the equipment shows',
  itMayBe: 'It may be',
  report: 'report',
  gap: 'gap',
  /** By position: where the designations are too long. */
  gapAt: (position: number) => (position === 1 ? 'before 1' : `${position - 1} | ${position}`),
  prefix: 'All designations on this sheet begin with ',
  beginnings: 'Designations are shortened here. In full they begin with ',
  beginBefore: (tails: readonly string[]) => `for ${wordList(tails)}`,
  first: (step: string, isLive: boolean) => `First${isLive ? ', live' : ''}: ${step}.`,
  noStep: 'No look and no act tells more.',
  alsoElsewhere: (what: string) => `Elsewhere: ${what}`,
  reportOf: (chain: string, gap: string) => `${chain} reports ${gap}`,
  /** A pattern in words, where there are too many units for columns. */
  shows: 'What the displays show',
  allOthersQuiet: 'all others quiet',
  allQuiet: 'all quiet',
  range: (first: string, last: string) => `${first} to ${last}`,
  unseen: (count: number, faults: string) =>
    `${wordCount(count, 'fault')} cannot be seen on any display nor in the report, and so stand in no row: ${faults}.`,
  validity: (behaviours: string) => `Valid for one steady fault at a time that came while the machine was running. ${behaviours}`,
  verified: (types: readonly string[]) => `Behaviour verified: ${wordList(types)}.`,
  assumed: (types: readonly string[]) => `Behaviour assumed: ${wordList(types)}.`,
  verifiedOn: (type: string, date: string) => `${type} on ${date}`,
  noType: 'units without a type',
  cautionTitle: (seconds: number) =>
    `Before you reach in: switch off, lock out, tag. Wait ${wordDuration(seconds)} for the DC link, or longer if the manual says so, then measure.`,
  cautionTitleUnknown: 'Before you reach in: switch off, lock out, tag. Wait for the DC link as the machine’s manual says, then measure.',
  caution: `“Live”: machine on, door open, dangerous voltages; only persons licensed for it. Prop hanging axes before you switch off. Never look into a fibre end. ${cautionsDefer}`,
  andMore: (count: number) => `and ${count} more`,
} as const;

/** Words of the blank sheet for a pencil. */
export const patternSheetWords = {
  title: 'Pattern sheet',
  how: [
    'Do not switch off, do not reset: that erases what the displays show.',
    'For every unit write down exactly what its display shows, and tick what that means if you know it. Dark counts too.',
    'Write down what the controller reports: which chain, and between which units.',
  ],
  unit: 'Unit',
  counted: 'Counted as',
  shows: 'Shows',
  reportHead: 'What the controller reports',
  chain: 'Chain',
  between: 'Lost between',
  and: 'and',
  allReached: 'All reached',
  circumstances: 'How it came',
  fields: {
    machine: 'Machine',
    name: 'Name',
    date: 'Date and time',
    running: 'Running, or being switched on?',
    halted: 'Alarm text',
    before: 'What was done or happened before',
  },
  notes: 'Notes',
} as const;

/** Words of the cabinet drawing. */
export const drawingWords = {
  controller: 'controller',
  from: 'from',
  to: 'to',
  sheet: (sheet: number) => `sheet ${sheet}`,
  position: (position: number) => `position ${position}`,
  fedBy: (lead: string, source: string) => (lead ? `${lead} from ${source}` : `24 V from ${source}`),
  moreFeeds: (count: number) => `and ${wordCount(count, 'more feed')}`,
  apart: { supplies: 'Supplies', 'off-chain': 'Not on a chain', orphans: 'Reached by no chain' },
  stands: (row: number | undefined, slot: number | undefined) =>
    [row === undefined ? '' : `row ${row}`, slot === undefined ? '' : `slot ${slot}`].filter(Boolean).join(', '),
  length: (metres: number) => `${wordNumber(metres, 3)} m`,
  legend: 'The thick line is the outbound fibre, away from the controller; the two thin lines are the return fibre.',
  words: (cabinet: string, units: number) => `Drawing of ${cabinet}: ${wordCount(units, 'unit')}`,
} as const;

/** Words of the sums as a document. */
export const sumsPaperWords = {
  how: 'Worked out from the figures that are written down for this cabinet. Behind the tables stands by which formula, and where each figure comes from.',
  nothingFound: 'Nothing is beyond its limits, as far as the figures are written down.',
  formulas: 'How it is worked out',
  figures: 'Figures, and where they come from',
  quantity: 'Quantity',
  formula: 'Formula',
  value: 'Value',
  of: 'Of',
  wholeCabinet: 'the cabinet',
  range: (first: string, last: string) => `${first} to ${last}`,
  source: 'Source, or why it is taken',
  noSource: 'no source given',
  bounds: { 'at-least': 'at least', 'at-most': 'at most' },
  csvHeads: ['Sum', 'About', 'Quantity', 'Of', 'Bound', 'Value', 'Unit', 'How known', 'Formula or reason', 'Source'],
} as const;

/** Words of the photo pages. */
export const photoWords = {
  cannotPrintWebp: (caption: string) =>
    `The photo “${caption}” cannot be printed from here: it is WebP, which a PDF cannot hold. Print it from the window, which makes a JPEG of it.`,
  cannotPrint: (caption: string) =>
    `The photo “${caption}” cannot be printed: it is damaged, too large, or of a kind that a PDF cannot hold.`,
  ofCabinet: 'Cabinet',
  others: 'Other photos',
  takenOn: (date: string) => `taken on ${date}`,
  untitled: 'photo',
} as const;

/** Words of printing on the command line. */
export const printWords = {
  document: 'Document',
  pages: 'Pages',
  file: 'File',
  progress: (file: string, number: number, count: number) => `linkwright: ${file} (${number} of ${count})\n`,
  making: (document: string) => `linkwright:   ${document} …\n`,
} as const;

/** Words of exports and imports on the command line. */
export const exportWords = { written: (file: string) => `Written to ${file}.\n` } as const;
export const importTexts = {
  line: 'Line',
  name: 'Thing',
  does: 'What it does',
  what: 'What',
  after: (findings: string) => `A check of the cabinet with it: ${findings}.`,
  notWritten: 'Nothing was written. Add --to FILE to write a new cabinet file.',
  written: (file: string) => `Written to ${file}.`,
} as const;

/** Words of the isolation figures. */
export const isolationWords = {
  title: 'How well faults are told apart',
  heads: ['What is seen', 'Seen at all', '1 part', '2 parts or fewer', '3 parts or fewer', 'Parts in a group, mean'],
  seenBy: ['displays alone', 'displays and report', 'after switching off and on again'],
  note: 'Single steady faults, weighed with their rates; rates that the cabinet does not give are assumed. Of the faults that are seen, the share whose group has so few parts.',
} as const;

/** The cells of a row of the isolation figures, in the order of the heads behind the first. */
export function wordIsolation({ detected, isolated: { one, two, three }, meanParts }: Isolation): readonly string[] {
  const shares = [detected, one, two, three].map((share) => (share === null ? '–' : wordProbability(share)));
  return [...shares, meanParts === null ? '–' : meanParts.toFixed(2)];
}

/** Words of the dialogs of documents and imports. */
export const papersWords = {
  title: 'Documents',
  which: 'What to print',
  paper: 'Paper',
  papers: { a4: 'A4', a3: 'A3', letter: 'Letter' },
  labelSheet: 'Label sheet',
  labelSize: (width: number, height: number, paper: string) => `${width} × ${height} mm on ${paper}`,
  preview: 'Preview',
  page: (title: string, number: number, count: number) => `${title}, page ${number} of ${count}`,
  pages: (count: number) => wordCount(count, 'page'),
  nothing: 'Nothing is chosen, or there is nothing to print of it.',
  notSound: 'Without a door sheet: the cabinet cannot be simulated as it is. See its problems.',
  working: (what: string) => `Making: ${what} …`,
  cancel: 'Cancel',
  cancelled: 'Cancelled.',
  failed: (detail: string) => `The documents could not be made: ${detail}. Please report this.`,
  again: 'Make it again',
  savePdf: 'Save as PDF…',
  savePdfOf: (machines: number) => `Save as PDF, ${wordCount(machines, 'machine')}…`,
  machines: 'Other machines of this design',
  saveZip: 'Save a PDF of each, in a ZIP…',
  machinesHelp: 'The same documents of each: put into one PDF, one machine after another, or a PDF for each machine, packed into a ZIP.',
  addFiles: 'Add files…',
  addFolder: 'Add a folder…',
  dropMachines: 'Only this cabinet',
  machineOf: (machine: string, file: string) => `${machine} (${file})`,
  leftOut: (count: number, files: string) => `${wordCount(count, 'file')} left out, because no cabinet of this design is in it: ${files}.`,
  alsoOf: (count: number) => `and the same of ${wordCount(count, 'other machine')}, not shown here`,
  ofMachine: (machine: string, document: string) => `${machine}: ${document}`,
  saveHtml: 'Save as HTML…',
  close: 'Close',
  missingSigns: (signs: string) => `No typeface at hand has these signs: ${signs}. A box stands for each.`,
  missingPictures: (pictures: string) => `Not printed, because they are damaged or of another kind: ${pictures}.`,
  isolation: 'How well this cabinet tells its faults apart',
  lists: 'Lists and graph',
  list: 'List',
  graph: 'everything as a graph (GraphML)',
  separator: 'Columns parted by',
  separators: { ';': 'semicolon', ',': 'comma', '\t': 'tab' },
  decimal: 'Decimal mark',
  decimals: { '.': 'point', ',': 'comma' },
  guarded: 'Designations with an apostrophe before them',
  unguarded:
    'Designations stand as they are, as labels need them. A spreadsheet would show 0 for -TB1, which it takes for a cell. All else that looks like a formula still gets an apostrophe.',
  byteOrderMark: 'Byte order mark, by which some spreadsheets know UTF-8',
  guard:
    'For spreadsheets: designations begin with = + or −, and the apostrophe keeps them from being taken for formulas. An import takes it away again.',
  saveList: 'Save the list…',
  importTitle: (name: string) => `Import: ${name}`,
  isList: 'This is a list of',
  columns: 'What its columns mean',
  column: 'Column of the cabinet',
  head: 'Column of the list',
  noHead: 'not in the list',
  columnNumber: (number: number) => `column ${number}`,
  overwrite: 'Replace values that are there already',
  would: 'What it would do',
  moreRows: (count: number) => `${wordCount(count, 'row')} more`,
  noColumns: 'No column of the list is known. Say above what they mean.',
  apply: (count: number) => (count === 0 ? 'Nothing to take over' : `Take over ${wordCount(count, 'row')}`),
  applied: (count: number) => `${wordCount(count, 'row')} taken over. Undo takes it back.`,
  undoName: (name: string) => `import of ${name}`,
} as const;
