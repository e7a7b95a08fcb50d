import { assertNever } from '../base/index.ts';
import type { PartOwner } from '../repair/index.ts';
import type { CaseEnd, HandBackCheck } from '../schema/index.ts';
import type { Names } from './names.ts';
import { startSentence, wordCount } from './numbers.ts';

/** What is checked before a machine is handed back. */
export const checkWords: { readonly [C in HandBackCheck]: string } = {
  displays: 'Every display and every report shows what it must.',
  'put-back': 'Everything that was exchanged for a trial stands in its place again.',
  plugs: 'Every plug that was touched is seated, in its own port, and every free port has its dust cap.',
  reference: 'The reference position was checked before the first move, as the machine’s manual says.',
  'hanging-axes': 'Props under hanging axes are taken away, and the axes hold.',
  safety: 'The safety functions were tested as the manual says, by a person licensed for it.',
  closed: 'Tools and old parts are out, covers and doors closed, locks and tags taken off.',
  ran: 'The machine ran through its usual work.',
  told: 'Whoever runs the machine was told what was done, and what to watch.',
};

/** The first line when the machine runs again. */
export const endTexts = {
  runs: 'The machine runs.',
  runsAs: (end: string) => `The machine runs: ${end}.`,
  after: (acts: string, because: readonly string[]) => [`After: ${acts}.`, ...because].join(' '),
  finish: 'Next: hand the machine back',
  finishWhy: 'checklist, parts and report',
  /** Where nothing that is left is worth it: somebody else goes on from what is known. */
  handOver: 'Next: get help, hand over what is known',
  handOverWhy: 'the report says it: seen, done, suspects',
  last: 'Hand the machine back',
  open: 'Checklist, parts and report',
  nothingLeft: 'Nothing more has to be done. Hand the machine back, and watch what was touched.',
  putRight: 'It runs only because something is bypassed or moved. Put that right, then hand the machine back.',
  surer: (step: string) => `To be surer: ${step}`,
} as const;

/** Where a part stands: "board of -TB3", "cable -WH3". */
export function wordPartOwner(names: Names, { kind, id }: PartOwner): string {
  switch (kind) {
    case 'board':
      return `board of ${names.unit(id)}`;
    case 'fuse':
      return `control fuse of ${names.unit(id)}`;
    case 'unit':
      return names.unit(id);
    case 'link':
      return names.link(id);
    case 'lead':
      return names.lead(id);
    case 'feedback':
      return names.feedback(id);
    case 'chain':
      return `controller port of ${names.chain(id)}`;
    case 'controller':
      return names.controller();
    default:
      return assertNever(kind);
  }
}

/** Labels of handing back. */
export const handBackTexts = {
  title: 'Hand the machine back',
  titleOpen: 'Hand over what is known',
  close: 'Close',
  outcome: 'How it ended',
  after: (acts: string) => `After: ${acts}.`,
  expected: 'What the displays must show now',
  allQuiet: (units: number) => `All ${units} displays quiet.`,
  mustShow: (unit: string, meaning: string) => `${unit}: ${meaning}`,
  otherwiseQuiet: (count: number) => `all other ${wordCount(count, 'display')} quiet`,
  reports: (chains: number) => (chains === 1 ? 'The report: all units reached.' : `The ${chains} reports: all units reached.`),
  onCabinet: 'Read them at the machine and compare.',
  comeBack: (share: string) => `That something comes and goes and is still there: ${share}.`,
  /** A fault that left with the part is proved; a small doubt stays, and is named as what it is. */
  smallDoubt: (share: string) =>
    `A small doubt stays: with ${share} something else was the cause, and is gone only for the moment. One in ten or more would not count as proved.`,
  cause: 'What was wrong with it',
  causeWhy:
    'Name it if somebody saw it, on the machine or at the bench: then the report says so, and a case that is kept counts for that alone.',
  causeUnseen: 'Nobody saw it: shared out by the rates',
  causeUnfit: 'What was named before does not fit any more',
  causeItem: (item: string) => `${item}: not known what`,
  watch: 'Watch what was touched',
  /** What would still prove the cause, with what it takes. */
  prove: 'What would prove more',
  proveBy: (step: string, minutes: string) => `${step}: ${minutes}.`,
  toStep: 'Close, and show that step',
  displaced: 'Not in its place yet',
  parts: 'Parts that were put in',
  noParts: 'No part was exchanged for a new one.',
  part: 'Part',
  partNumber: 'Part number',
  serial: 'Serial number',
  before: (number: string) => `before ${number}`,
  write: 'Write into the cabinet',
  written: 'Stands in the cabinet file as of now; undo takes it back.',
  checks: 'Before handing back',
  checked: (done: number, of: number) => `${done} of ${of}`,
  /** Beside what saves the report: it may be saved, but not without a word. */
  notConfirmed: (open: number, of: number) =>
    open === of
      ? `None of the ${of} points above is ticked yet. The report says “not confirmed” beside each of them.`
      : `${open} of the ${of} points above ${open === 1 ? 'is' : 'are'} not ticked yet. The report says “not confirmed” beside ${open === 1 ? 'it' : 'each of them'}.`,
  savedOpen: (open: number) => `${wordCount(open, 'point')} of the checklist stand${open === 1 ? 's' : ''} in it as not confirmed.`,
  report: 'Report',
  by: 'Name',
  note: 'Remark for the customer',
  pdf: 'Save as PDF',
  html: 'Save as web page',
  making: 'Making the report …',
  stop: 'Stop',
  notMade: (detail: string) => `The report could not be made${detail ? `: ${detail}` : ''}. Please report this.`,
  withPhotos: (count: number) => `With photos (${count} in the cabinet file)`,
  saved: (name: string) => `Saved: ${name}`,
  failed: (name: string) => `${name} was not saved.`,
  result: (field: string) => `how the case ended: ${field}`,
  recorded: (count: number) => `${wordCount(count, 'part')} written into the cabinet`,
  fields: { by: 'name', note: 'remark', checked: 'checklist', cause: 'cause' },
} as const;

const endSentences: { readonly [E in CaseEnd]: string } = {
  proved: 'The cause is proved: the machine runs since the last act, and only that one was done.',
  'not-proved': 'The machine runs. What the cause was is not proved: watch what was touched.',
  'running-provisionally': 'The machine runs provisionally. What is named below must still be put right.',
  open: 'The machine is not repaired. What is known so far is named below.',
};

/** On which rates probabilities stand: assumed ones, or those that so many confirmed cases sharpened. */
const ratesOf = (confirmed: number | null): string =>
  confirmed === null
    ? 'the probabilities rest on assumed rates'
    : `the probabilities rest on rates sharpened by ${wordCount(confirmed, 'confirmed case')}`;

/** Words of the repair report. */
export const reportWords = {
  title: 'Repair report',
  id: 'repair-report',
  ends: endSentences,
  place: 'Where it was',
  placeOpen: 'Where it may be',
  placeMarked: (place: string) => `Marked: ${place}.`,
  noPlace: 'No place stands out.',
  extract: 'These are the rows with what is marked; the whole stands in the drawing of the cabinet.',
  photos: 'Photos',
  noPhotos: 'No photos were taken of what was seen, and the cabinet file has none of the place.',
  pattern: 'What was seen',
  unit: 'Unit',
  place2: 'Counted as',
  seen: 'Seen',
  code: 'Code',
  mustShow: 'Must show now',
  notSeen: 'not looked at',
  report: (chain: string) => `report of ${chain}`,
  displays: (read: string) => `Displays: ${read}.`,
  quiet: (count: number) => `${count} quiet`,
  restarted: 'Restarted, nothing touched',
  stoppedAgain: 'Ran, and stopped again',
  restartedTo: (halted: boolean) => `Restarted, nothing touched: ${halted ? 'still halted' : 'machine runs'}`,
  suspectThen: 'Suspected most then',
  notRead: (units: string) => `Not looked at: ${units}.`,
  quietToo: 'To be quiet now, too.',
  steps: 'What was done, and what came of it',
  time: 'Time',
  what: 'What',
  noSteps: 'Nothing was done yet.',
  reasoning: 'How the cause was found',
  /** Named by whoever saw it. */
  found: (what: string) => `What was wrong, as it was seen on the machine or at the bench: ${what}.`,
  suspected: (what: string, share: string) => `${startSentence(what)}: ${share}`,
  suspects: (confirmed: number | null) => `The likeliest causes by everything that was seen and done; ${ratesOf(confirmed)}:`,
  left: (confirmed: number | null) => `What it may be, by everything that was seen and done; ${ratesOf(confirmed)}:`,
  alike: 'What was seen cannot tell some of these apart.',
  parts: 'Parts and serial numbers',
  partHeads: { place: 'Place', number: 'Part number', serial: 'Serial number' },
  noParts: 'No part was exchanged for a new one.',
  touched: 'Touched: watch these',
  displaced: 'Not in its place',
  cautions: 'Cautions',
  checklist: 'Checked before handing back',
  yes: 'yes',
  notConfirmed: 'not confirmed',
  sign: 'Handed back',
  fields: { name: 'Name', date: 'Date', customer: 'Taken over by', signature: 'Signature', remark: 'Remark' },
  machine: 'Machine',
  began: 'Begun',
} as const;
