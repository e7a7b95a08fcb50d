import type { ProblemCode } from '../base/index.ts';
import type { CircumstanceKind, UnitKind } from '../schema/index.ts';
import { circumstanceWords } from './circumstances.ts';
import { wordCount, wordList } from './numbers.ts';
import { quote, type WordsFor } from './problemWords.ts';
import { unitKindWords } from './words.ts';

/*
 * Quick chain, and what is entered on the units besides their displays: notes, photos, circumstances.
 */

type QuickCode = Extract<ProblemCode, `quick-${string}`>;

const kinds = 'servo, spindle, encoder or supply';

/** Problems of a quick line. */
export const quickProblemWords: WordsFor<QuickCode> = {
  'quick-word-unknown': ({ word, column, nearest }) => ({
    title: `${quote(word)} is not a kind of unit`,
    explanation: `It stands at sign ${column} of the line.${nearest === '' ? '' : ` Perhaps ${quote(nearest)} is meant.`}`,
    whatToDo: `Write ${kinds}, or their letters s, p, e, u. A semicolon begins the next chain.`,
  }),
  'quick-count-wrong': ({ number, limit, column }) => ({
    title: `${number} units at once cannot be entered`,
    explanation: `The count at sign ${column} must be from 1 to ${limit}.`,
    whatToDo: 'Correct the number.',
  }),
  'quick-count-alone': ({ number, column }) => ({
    title: `${number} of what`,
    explanation: `No kind of unit follows the number at sign ${column}.`,
    whatToDo: `Write the kind behind it: ${kinds}.`,
  }),
  'quick-chain-number-wrong': ({ number, maximum, column }) => ({
    title: `There is no chain ${number}`,
    explanation: `The number at sign ${column} must be from 1 to ${maximum}.`,
    whatToDo: 'Correct the number of the chain, or leave it out.',
  }),
  'quick-chain-doubled': ({ number, column }) => ({
    title: `Chain ${number} is named twice`,
    explanation: `The second time is at sign ${column} of the line.`,
    whatToDo: 'Give each chain a number of its own, or leave the numbers out.',
  }),
  'quick-encoder-off-chain': ({ column }) => ({
    title: 'An encoder interface is always on a chain',
    explanation: `At sign ${column} of the line one is said to be off the chain. Only drives can have a link of their own.`,
    whatToDo: 'Put it into its chain, or make it a drive.',
  }),
  'quick-no-chain': () => ({
    title: 'There is no unit on a chain yet',
    explanation: 'A cabinet needs one chain with one unit at least.',
    whatToDo: `Write what hangs on the chain, from the controller outwards: ${kinds}.`,
  }),
  'quick-too-many-units': ({ maximum }) => ({
    title: 'These are too many units for one line',
    explanation: `A line can make ${maximum} units at most.`,
    whatToDo: 'Correct the counts.',
  }),
};

/** Labels of the commands of entering. */
export const entryCommandLabels = {
  buildQuickChain: 'Build the cabinet as found',
  feedTogether: 'Say that one lead feeds several units',
  feedApart: 'Say that units have a lead each',
  noteSeen: 'Note what was seen besides',
  addPhoto: 'Add a photo',
  removePhoto: 'Remove a photo',
  setCircumstance: 'Say what makes faults likelier',
  setDaysSinceWhole: 'Say when the machine was last whole',
  toggleWalkOrder: 'Enter displays in mounting order',
  enterNextReport: 'Enter the report of a chain',
} as const;

export const quickWords = {
  cabinetName: 'Cabinet as found',
  /** The one type of equipment of a cabinet as found. */
  typeAsFound: 'as found, not known',
  cabinetNotes: (supplyAssumed: boolean, feedbacksAssumed: boolean) =>
    `Entered by quick chain. ${supplyAssumed ? 'The supply is' : 'The wiring of 24 V is'} assumed: a lead of its own to each unit. ${feedbacksAssumed ? 'So are the feedback cables: one for each drive and encoder interface. How the equipment behaves is left open. ' : ''}Designations are numbered, not read.`,
  step: (units: number) => `cabinet as found, ${wordCount(units, 'unit')}`,

  region: 'Quick chain',
  title: 'What hangs on the chain?',
  titleDraw:
    'One letter or word for each unit, in the order of the chain. Or press S, P, E or U on the drawing, or paste rows of a spreadsheet.',
  titleHow: 'From the controller outwards, in letters or words.',
  line: 'Units',
  example: '3 servo, spindle, encoder, servo',
  letters: 'Add a unit',
  nextChain: 'next chain',
  offChain: 'off the chain',
  back: 'Take the last one back',
  build: { find: 'Build it and enter displays', draw: 'Build it' },
  kinds: { 'servo-drive': 'servo', 'spindle-drive': 'spindle', 'encoder-interface': 'encoder', supply: 'supply' } as const satisfies {
    readonly [K in UnitKind]: string;
  },
  controller: 'controller',
  chain: (number: number) => `chain ${number}`,
  apart: 'off the chain',
  unit: (designation: string, kind: UnitKind) => `${designation}, ${unitKindWords[kind]}`,
  /** `supply`: the one that the line does not name; null where it names some. */
  assumed: (supply: string | null, withFeedbacks: boolean) =>
    `Assumed: ${supply === null ? 'a 24 V lead of its own to each unit, from the supply of its row' : `supply ${supply} with a lead of its own to each unit`}${withFeedbacks ? '; a feedback cable at each drive and encoder interface; how the equipment behaves is left open' : ''}.`,
  made: (units: number, chains: number) => `${wordCount(units, 'unit')} on ${wordCount(chains, 'chain')}.`,
  nowDisplays: 'Now the displays.',
  preview: (units: number, chains: number) => `${wordCount(units, 'unit')} on ${wordCount(chains, 'chain')}`,
  previewRegion: 'What it makes',
  /** Asked where units are dark together and nobody has written how they are fed. */
  sharedFeed: {
    ask: (units: readonly string[]) => `Does one lead or fuse feed ${wordList(units)}?`,
    why: 'They are dark together, and their 24 V is only assumed: a lead of its own to each.',
    yes: 'One feeds them',
    no: 'Each its own',
    step: (units: readonly string[]) => `one lead feeds ${wordList(units)}`,
    stepApart: (units: readonly string[]) => `${wordList(units)} have a lead each`,
    notes: 'A lead of its own, as said while the fault was looked for.',
  },
  orElse: 'Or',
  openFile: 'Open a cabinet or a case…',
} as const;

export const entryWords = {
  walk: {
    progress: (number: number, of: number) => `${number} of ${of}`,
    skip: 'skip',
    back: 'Back',
    toReport: 'Report',
    takeBack: 'Take back',
    close: 'Close',
    order: 'Order',
    orders: { chain: 'chain', mounting: 'mounting' },
    orderNow: { chain: 'Now along the chains.', mounting: 'Now as they are mounted.' },
    first: 'This is the first unit.',
    skipped: (unit: string) => `${unit} skipped.`,
    tookBack: (unit: string) => `${unit}: taken back.`,
    nowReport: (chain: string) => `Now the report of ${chain}.`,
    end: 'That was everything.',
    nowHalted: 'One more: is the control halted by an alarm of a chain?',
    codeHint: 'Or type the code that it shows.',
  },

  /** The last question of a walk. */
  halted: {
    notLookedAt: 'Not looked at',
    entered: (answer: string) => `Control: ${answer.toLowerCase()}.`,
  },

  /** A look at neither display nor report, entered with what it showed. */
  check: {
    title: 'What a check showed',
    at: 'At',
    links: 'Cables',
    units: 'Units',
    when: 'When',
    kind: 'What was looked at',
    found: 'What it showed',
    notLookedAt: 'not looked at',
    hint: 'It counts also where nobody expected it. Up, down: another place.',
  },

  /** What stands in the list of keys. */
  keys: {
    head: 'While displays and reports are entered',
    digits: 'what it shows, and on to the next one; on the number pad with or without NumLock',
    skip: 'skip, or not looked at',
    back: 'back to the one before',
    takeBack: 'take back what was entered',
    order: 'along the chains, or as mounted',
    report: 'on to the report',
    code: 'begin the code that it shows',
    group: 'drive, encoder interface, controller',
    next: 'to the first one not reached',
    none: 'all units reached',
    chains: 'report of the chain before, or the next; where a check was made',
    letters: { digits: '1 – 8', back: 'Backspace', takeBack: 'Delete', code: 'a letter, or .', group: 'D, E, C or 0', none: 'N or *' },
  },

  notes: {
    note: 'Note',
    photo: 'Photo',
    photoOf: (what: string) => `Photo of ${what}`,
    another: 'Another photo',
    remove: 'Remove the photo',
    unreadHint: 'Kept as “not read yet” until you say what it shows.',
    reportFirst: 'First say what is reported.',
    working: 'The photo is being made smaller…',
    added: 'The photo is kept with the case.',
    removed: 'The photo is removed.',
    failed: {
      'not-a-picture': 'This file is not a picture that can be read here. Take a JPEG or PNG photo.',
      'too-large': 'This picture is too large to be read. Take it with fewer megapixels.',
      'case-full': 'The case has no room for more photos. Remove one first.',
    },
    steps: {
      note: (what: string) => `note about ${what}`,
      photo: (what: string) => `photo of ${what}`,
      removePhoto: (what: string) => `no photo of ${what}`,
      report: (chain: string) => `the report of ${chain}`,
    },
    caption: (what: string) => `Display of ${what}`,
    reportCaption: (chain: string) => `Report of ${chain}`,
  },

  report: {
    keys: 'Type the number of the last unit reached. E: encoder interface. 0: controller. N: all reached.',
    keysNext: '– goes to the first one not reached.',
    chains: 'Chain',
    lit: (words: string) => `On the picture: ${words}.`,
  },

  circumstances: {
    label: 'What came before',
    button: 'Circumstances',
    title: 'What makes some faults likelier',
    none: 'nothing ticked',
    summary: (ticked: readonly CircumstanceKind[]) => wordList(ticked.map((kind) => circumstanceWords[kind].label)),
    concerns: 'concerns',
    everything: 'everything',
    add: (kind: string) => `${kind}: what it concerns`,
    addFirst: 'everything, or choose …',
    addMore: 'and …',
    remove: (what: string) => `Leave out ${what}`,
    units: 'Units',
    links: 'Cables',
    days: 'Days since the machine was last whole',
    daysHint: 'Left empty: a week.',
    daysShort: (days: number) => `whole ${wordCount(days, 'day')} ago`,
    daysWrong: 'Write a number of days, 0 or more.',
    done: 'Done',
    step: (kind: CircumstanceKind, on: boolean) => `${on ? '' : 'not '}${circumstanceWords[kind].label}`,
    stepDays: 'days since the machine was last whole',
  },
} as const;
