import type { DisplayMeaning, Onset, OrdinalGroup } from '../schema/index.ts';
import { drawCommandLabels } from './draw.ts';
import { editCommandLabels } from './edit.ts';
import { fileCommandLabels } from './fileWords.ts';
import { injectCommandLabels } from './inject.ts';
import { legendCommandLabels } from './legend.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { practiceCommandLabels } from './practiceMake.ts';
import { entryCommandLabels } from './quick.ts';
import { sumsCommandLabels } from './sumsPage.ts';
import { groupWords, haltedWords, onsetWords, wordMeanings } from './words.ts';

/*
 * What the window says besides what the other files of the catalogue already word: labels, hints, names for a screen reader.
 */

/** Labels of commands, in menus and beside their keys. */
const commands = {
  undo: 'Undo',
  redo: 'Redo',
  enterDisplay: 'Enter a display',
  withdrawDisplay: 'Withdraw a display',
  enterReport: 'Enter the report of a chain',
  withdrawReport: 'Withdraw the report of a chain',
  setOnset: 'Say when the fault came',
  setHalted: 'Say whether the control is halted',
  setProvoked: 'Say what was done after the restart',
  chooseCandidate: 'Lay a suspect over the cabinet',
  showOnCabinet: 'Show in the cabinet',
  openEntry: 'Open an entry',
  closeEntry: 'Close the entry',
  walkDisplays: 'Enter displays one by one',
  toggleAllCandidates: 'Show more suspects',
  enterOutcome: 'Enter what was found',
  enterUnforeseen: 'Enter that something else was seen',
  enterCheck: 'Enter what a check showed',
  openCheck: 'Enter a check',
  enterRestart: 'Restarted, nothing touched',
  enterStop: 'It stopped again',
  putBack: 'Put back',
  handBack: 'Hand back: checklist and report…',
  closeHandBack: 'Close',
  writeResult: 'Write how the case ended',
  recordParts: 'Write the parts into the cabinet',
  makeReport: 'Make the report',
  cancelReport: 'Stop making the report',
  repairTable: 'Repair table…',
  closeRepairTable: 'Close',
  faultRates: 'Fault rates…',
  closeFaultRates: 'Close',
  editRate: 'Change a fault rate',
  confirmedCases: 'Confirmed cases…',
  closeConfirmed: 'Close',
  keepCase: 'Keep as a confirmed case',
  removeKept: 'Remove a confirmed case',
  putBackKept: 'Put the removed case back',
  useRates: 'Choose the rates of the case',
  toggleTakeConfirmed: 'Begin cases with sharpened rates',
  setStrength: 'Set what an assumed rate is worth',
  editRepairTable: 'Change a figure of the repair table',
  withdrawEntry: 'Withdraw an entry',
  correctEntry: 'Correct an entry',
  showStep: 'Show a step',
  nextStep: 'Go to the next step',
  setTheme: 'Colours',
  toggleFoldChains: 'Fold long chains into rows',
  toggleReduceMotion: 'Reduce motion',
  help: 'Help',
  showShortcuts: 'Keys',
  about: 'About Linkwright',
  closeWindow: 'Close the window',
  quit: 'Quit',
  textLarger: 'Larger text',
  textSmaller: 'Smaller text',
  textNormal: 'Text of normal size',
  fullScreen: 'Full screen',
  closeRefused: 'Close',
  announce: 'Say',
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  zoomToFit: 'Show the whole cabinet',
  ...fileCommandLabels,
  ...legendCommandLabels,
  ...injectCommandLabels,
  ...sumsCommandLabels,
  ...entryCommandLabels,
  ...drawCommandLabels,
  ...editCommandLabels,
  ...practiceCommandLabels,
} as const;
export type CommandLabel = keyof typeof commands;

/** A position on a chain as the controller counts: its group and ordinal; null stands for the controller. */
export type CountedPlace = { readonly group: OrdinalGroup; readonly ordinal: number } | null;

const counted = (place: CountedPlace) => (place ? `${groupWords[place.group]} ${place.ordinal}` : 'controller');

/** "drive 2 | 3", "drive 3 | encoder interface 1", "controller | drive 1": a gap in as few words as there are. */
function shortGap(before: CountedPlace, after: CountedPlace): string {
  if (before && after && before.group === after.group) return `${groupWords[before.group]} ${before.ordinal} | ${after.ordinal}`;
  return `${counted(before)} | ${counted(after)}`;
}

export const windowTexts = {
  productName: 'Linkwright',
  commands,

  /** What stands after "Undo" and "Redo". */
  steps: {
    display: (unit: string, meanings: readonly DisplayMeaning[]) => `${wordMeanings(meanings)} at ${unit}`,
    withdrawDisplay: (unit: string) => `not looked at for ${unit}`,
    report: (chain: string) => `report of ${chain}`,
    withdrawReport: (chain: string) => `no report of ${chain}`,
    restarted: 'restarted, nothing touched',
    stopped: 'ran, and stopped again',
    withdrawEntry: (what: string) => `withdrawn: ${what}`,
    correctEntry: (what: string) => `corrected: ${what}`,
    onset: (onset: Onset | 'unknown') => `fault came: ${onsetWords[onset].label}`,
    halted: (halted: boolean | null) =>
      `control: ${halted === null ? haltedWords['not-observed'].label : haltedWords[halted ? 'yes' : 'no'].label}`,
  },
  undone: (step: string) => `Undone: ${step}.`,
  redone: (step: string) => `Done again: ${step}.`,
  undoStep: (step: string | null) => (step === null ? commands.undo : `${commands.undo}: ${step}`),
  redoStep: (step: string | null) => (step === null ? commands.redo : `${commands.redo}: ${step}`),
  opened: (name: string) => `${name} is open.`,
  newCaseName: 'New case',

  menus: {
    file: 'File',
    edit: 'Edit',
    cabinet: 'Cabinet',
    view: 'View',
    practice: 'Practice',
    samples: 'Samples',
    help: 'Help',
    all: 'Menus',
  },
  sampleName: (name: string) => startSentence(name.replaceAll('-', ' ')),
  sampleCase: (number: number) => `case ${number}`,
  samplesWithoutCase: 'nothing seen yet',
  themes: { system: 'As the system', light: 'Light', dark: 'Dark', 'high-contrast': 'High contrast' },
  themeButton: 'Colours',
  themeNow: (theme: string) => `Colours: ${theme}`,
  workspace: 'Find',
  skipTo: {
    label: 'Go to',
    answer: 'Go to the answer',
    cabinet: 'Go to the cabinet',
    suspects: 'Go to the suspects',
    step: 'Go to the next step',
    grid: 'Go to the pattern grid',
  },

  answer: {
    region: 'Answer',
    lookFirst: (what: string) => `Look at ${what} first.`,
    /** What is suspected where something else comes first. */
    afterwards: (what: string, share: string) => `Likeliest otherwise: ${what}, ${share}.`,
    likely: 'likely',
    nothingBroken: 'Nothing seems to be broken.',
    stoppedBefore: 'If it stopped before and runs again, first enter what was seen then, and after it “Restarted”.',
    isHalted: 'Is the control halted by an alarm of a chain?',
    isHaltedWhy: 'If it is, something must be broken; if not, all may be well.',
    haltedAnswers: { yes: 'Halted', no: 'Not halted' },
    isReworked: 'Was anything wired, plugged or exchanged since it last ran?',
    isReworkedWhy: 'If not, nothing can be crossed, and what wears or works loose is left.',
    reworkedAnswers: { no: 'Nothing', yes: 'Something was' },
    noteFirst: 'Note what every display shows.',
    noteFirstWhy: 'Then the controller’s report. Do not switch off before: switching off erases them.',
    readAgain: (against: string) => `Does not fit, read again: ${against}.`,
    contradiction: (what: string, share: string) => `If all was read right, the likeliest is ${what}: ${share}.`,
    impossible: 'What was entered excludes every fault.',
    unsound: 'This cabinet cannot be worked with yet.',
    unsoundWhy: (count: number) => `${wordCount(count, 'error')} in its description. They are listed at the right.`,
    failed: 'The suspects could not be worked out.',
    failedWhy: 'This is a mistake of the program. What you entered is kept; save the case and report it.',
    from: (displays: number, of: number, reports: number) =>
      `From ${displays} of ${wordCount(of, 'display')}${reports === 0 ? ', no report' : reports === 1 ? ' and the controller’s report' : ` and ${reports} reports`}`,
    came: (onset: Onset | 'unknown') =>
      onset === 'unknown'
        ? 'not known when the fault came'
        : onset === 'while-running'
          ? 'fault came while running'
          : 'fault came when switched on',
    alike: (count: number) => `${count === 1 ? 'One other place would' : `${count} other places would`} look the same.`,
    show: (what: string) => `Show ${what}`,
    between: (before: string, after: string) => `between ${before} down and ${after} up`,
    atController: (chain: string, after: string) => `between the controller’s ${chain} and ${after} up`,
    leadFrom: (from: string, to: string) => `from ${from} to ${to}`,
    enter: 'Enter displays',
    enterWhy: 'one after another, along the chain',
    working: 'Working out the suspects',
    cancel: 'Stop',
    cancelled: 'Stopped. The suspects shown are those of before.',
    again: 'Work out again',
  },

  cabinet: {
    region: 'Cabinet',
    seenAbove: 'seen above, predicted below for',
    seenOnly: 'what was seen',
    stopPredicting: 'Take the prediction off',
    assumed: (onset: Onset) => `as if it came ${onsetWords[onset].label}`,
    seen: 'seen',
    predicted: 'predicted',
    up: 'up',
    down: 'down',
    cap: 'cap',
    controller: 'controller',
    chain: (number: number) => `chain ${number}`,
    offChain: 'not on a chain',
    orphan: 'reached by no chain',
    walk: 'Enter displays',
    zoom: 'Zoom',
    notLookedAt: 'not looked at',
    code: (code: string) => `code ${code}`,
    lostHere: 'report: lost here',
    maybeLostHere: 'report: here?',
    /** "cable -WH3 between -TB2 down and -TB3 up"; a name that says already what it joins stands alone. */
    joins: (name: string, what: string) => (/ (between|from) /.test(name) ? name : `${name} ${what}`),
    suspected: (name: string, share: string) => `${name}, suspect: ${share}`,
    edgeKinds: { link: 'cable', lead: '24 V lead' },
    rail: (output: string) => `24 V ${output}`.trim(),
    output: (output: string, feeds: string) => `${output}: ${feeds}`,
    feedsOthers: (count: number) => wordCount(count, 'unit'),
    snapshot: (number: number, restarted: boolean) => `look ${number}${restarted ? ', after a restart' : ''}`,
    /** At an edge of the picture beyond which the drawing goes on. */
    beyond: { above: 'More above', below: 'More below', left: 'More', right: 'More' },
    keysHint: 'Digits 1 to 6 enter what the display shows, 0 takes it back, arrows move along the chain, Enter opens all answers.',
  },

  /** The controller's window for one chain. */
  report: {
    notAsked: 'report not entered',
    lost: 'lost',
    allReached: (count: number) => (count === 1 ? 'unit reached' : `all ${count} reached`),
    shortGap,
    namedGap: (before: string, after: string) => `${before} | ${after}`,
    several: (count: number) => `${count} possible gaps`,
    title: (chain: string) => `What the controller reports of ${chain}`,
    hint: 'Or click the gap on the picture.',
    none: 'All units reached',
    notEntered: 'Not entered',
    reached: 'Last one reached',
    missing: 'First one not reached',
    controller: 'controller',
    gapIs: (gap: string) => `Lost ${gap}.`,
    nothingTyped: 'Nothing is entered for this chain: type the ordinal, or N if nothing is lost. Enter once more passes it over.',
    wrongOrder: 'The first one not reached must come after the last one reached.',
    unknownPlace: (place: string) => `This chain has no ${place}.`,
    ordinal: 'number',
    done: 'Done',
    entered: (words: string) => `Entered: ${words}.`,
    gapName: (chain: string, gap: string) => `Report: ${chain} lost ${gap}`,
  },

  /** What a screen reader hears of a unit. */
  unitName: (parts: {
    readonly unit: string;
    readonly kind: string;
    readonly place: string;
    readonly seen: string;
    readonly predicted: string | null;
    readonly agreement: string | null;
    readonly suspect: string | null;
  }) =>
    [
      `${parts.unit}, ${parts.kind}${parts.place ? `, ${parts.place}` : ''}.`,
      `Seen: ${parts.seen}.`,
      parts.predicted === null ? '' : `Predicted: ${parts.predicted}${parts.agreement ? `, ${parts.agreement}` : ''}.`,
      parts.suspect === null ? '' : `Suspect: ${parts.suspect}.`,
    ]
      .filter((part) => part !== '')
      .join(' '),

  entry: {
    title: (unit: string) => `What ${unit} shows`,
    marks: 'Display',
    codeShown: 'Code shown',
    byLegend: (words: string, legend: string) => `= ${words}, by ${legend}`,
    notInLegend: (legend: string) => `Not in ${legend}: kept as “other”.`,
    noLegend: 'There is no legend for this equipment: kept as “other”.',
    takeCode: 'Enter code',
    notLookedAt: 'not looked at',
    close: 'Close',
    entered: (unit: string, words: string) => `${unit}: ${words}.`,
    next: (unit: string, words: string) => `Next: ${unit}, ${words}.`,
    walkEnd: 'That was the last unit of the chains.',
  },

  suspects: {
    region: 'Suspects',
    none: 'Nothing has been entered, so nobody is suspected yet.',
    noneHow: 'Click a unit’s display and say what it shows. Or press E and type 1 to 6 along the chain.',
    allElse: (share: string) => `All else ${share}`,
    showMore: (count: number) => `Show ${count} more`,
    showFewer: 'Show fewer',
    why: 'Why',
    againstIt: 'Against it',
    fitsAll: (observations: string) => `Fits ${observations}.`,
    fitsSome: (fitting: number, of: number) => `Fits ${fitting} of ${wordCount(of, 'observation')}.`,
    observations: (displays: number, reports: number) =>
      wordList([
        ...(displays > 0 ? [displays === 1 ? 'the display read' : `all ${displays} displays read`] : []),
        ...(reports > 0 ? [reports === 1 ? 'the report' : `all ${reports} reports`] : []),
      ]),
    /** "Take it that cable -WH3 is cut: then -TB2 hears nothing from below; -TB3 hears nothing from above." */
    taken: (fault: string, then: readonly string[]) => `Take it that ${fault}: then ${then.join('; ')}.`,
    shows: (unit: string, reason: string) => `${unit} ${reason}`,
    hearsNothing: { upstream: 'hears nothing from above', downstream: 'hears nothing from below' },
    wouldShow: (unit: string, predicted: string, seen: string) => `${unit} would show ${predicted}, but shows ${seen}.`,
    wouldReport: (chain: string, predicted: string, seen: string) => `The report of ${chain} would be “${predicted}”, but is “${seen}”.`,
    tellApart: 'Not looked at, and would tell:',
    unreadWould: (unit: string, predicted: string) => `${unit} would show ${predicted}.`,
    intermittent: 'may come and go',
    twoFaults: 'two faults at once',
    stale: 'being worked out again',
    /** What of a link is under suspicion. */
    linkKinds: (kinds: readonly ('cable' | 'plug' | 'route')[]) =>
      kinds.includes('cable') || kinds.length !== 1
        ? kinds.includes('plug')
          ? 'cable or plugs'
          : 'cable'
        : kinds[0] === 'plug'
          ? 'plugs'
          : 'cable route',
    linkObject: (name: string, kinds: readonly ('cable' | 'plug' | 'route')[]) =>
      kinds.length === 1 && kinds[0] === 'plug'
        ? `the plugs of ${name}`
        : kinds.length === 1 && kinds[0] === 'route'
          ? `the route of ${name}`
          : kinds.includes('plug')
            ? `cable ${name} and its plugs`
            : `cable ${name}`,
    /** "the board of -TB3, up port". */
    partOf: (part: string, owner: string, detail: string) => `the ${part} of ${owner}${detail === '' ? '' : `, ${detail}`}`,
    plugs: 'plugs',
    unitKinds: { board: 'board', fuse: 'control fuse', place: 'slot contact', wiring: 'wiring' },
    portOf: (chain: string) => `port of ${chain}`,
    allPorts: 'all chain ports',
    allPortsOf: (controller: string) => `all chain ports of ${controller}`,
    side: { up: 'up port', down: 'down port' },
    /** "upper plug 30 · cable 18": per cent, as the figure above them. */
    partsOf: (parts: readonly { readonly words: string; readonly percent: string }[]) =>
      parts.map(({ words, percent }) => `${words} ${percent.replace(/ %$/, '')}`).join(' · '),
    contradiction: 'Does not fit everything',
    contradictionMore: 'What if misread?',
    contradictionLess: 'Less',
    problems: 'Errors in the cabinet',
  },

  seenPane: {
    region: 'What was seen',
    onset: 'Fault came',
    halted: 'Control is',
    onsets: { 'while-running': 'while running', 'at-power-up': 'when switched on', unknown: 'not known' },
    halts: { yes: 'halted', no: 'not halted', 'not-observed': 'not looked at' },
    check: 'Enter a check',
    restart: 'Restarted',
    restartMeans: 'Switched off and on with nothing touched: a new look at the machine begins.',
    /** What was done after a restart to see whether it comes again. */
    provoked: 'Then',
    provocations: { none: 'nothing', wait: 'waited', flex: 'moved cables', warm: 'warmed up' },
    provokedSubjects: { flex: 'moved', warm: 'warmed' },
    addProvoked: { flex: 'What was moved', warm: 'What was warmed' },
    provokedStep: 'what was done after the restart',
    stopped: 'It stopped again: a new look begins. Note every display before anything is switched off.',
    restarted: 'A new look begins. Say whether the control is halted, and note what is shown now.',
  },

  grid: {
    region: 'Pattern grid',
    question: 'which fault would look like this?',
    caption: 'One row for what was seen, one for each suspect; a column for each unit in chain order and one for each report.',
    seen: 'seen',
    seenCount: (displays: number, of: number, reports: number) =>
      `${displays} of ${of}${reports > 0 ? (reports === 1 ? ', and the report' : `, and ${reports} reports`) : ''}`,
    report: 'report',
    reportOf: (chain: string) => `report ${chain}`,
    noReport: 'not entered',
    share: 'share',
    suspect: 'suspect',
    agreement: { fits: 'fits', against: 'against', open: 'not looked at' },
    order: 'Order',
    orders: { probability: 'by probability', agreement: 'by agreement', chain: 'along the chain' },
    faultHere: 'fault here',
    cell: (predicted: string, seen: string, agreement: string) => `predicted ${predicted}, seen ${seen}: ${agreement}`,
    cellOpen: (predicted: string) => `predicted ${predicted}, not looked at`,
    layOver: (what: string, share: string) => `Lay over the cabinet: ${what}, ${share}`,
    nothing: 'The rows appear with the first display or report that you enter.',
    /** Where the columns are numbered by position, a gap is named by positions too. */
    gapByPosition: (gap: number | 'none') => (gap === 'none' ? 'none' : `${gap - 1} | ${gap}`),
  },

  log: {
    region: 'Log',
    empty: 'What you enter is listed here.',
    withdraw: (what: string) => `Withdraw: ${what}`,
    report: (chain: string, words: string) => `Report ${chain}: ${words}`,
    display: (unit: string, words: string) => `${unit} ${words}`,
    byCode: (code: string) => `by code ${code}`,
    noTime: '–',
    correct: (what: string) => `Correct: ${what}`,
    instead: 'Instead',
    look: (number: number) => `Look ${number}`,
    afterRestart: 'after a restart',
    /** What evidence of a file names and the cabinet does not have. */
    unknown: (what: string) =>
      `The case names what the cabinet does not have: ${what}. It counts for nothing. Withdraw it, or open the case with its own cabinet.`,
    unknownSign: 'something that the cabinet does not have',
    unknownGap: (chain: string, gap: number, length: number) => `gap ${gap} of ${chain}, which has ${wordCount(length, 'unit')}`,
    history: (count: number) => `Everything entered and taken back (${count})`,
  },

  cautions: {
    region: 'Cautions',
    head: 'Live cabinet',
    headIsolated: 'Switch off first',
    defer: 'Manual, local rules and licensed persons come first. Not a complete list.',
  },

  refused: {
    untouched: 'The file was left as it is, and what was open stays open.',
    close: 'Close',
  },
  problemsTitle: (errors: number) => startSentence(wordCount(errors, 'error')),
  moreProblems: (count: number) => `and ${count} more`,

  about: {
    title: 'About Linkwright',
    version: (version: string) => `Version ${version}`,
    what: 'Linkwright documents the drive cabinets of machine tools, predicts what a break of the optical chain shows, and leads from what is shown to the part.',
    offline: 'It works without a network: nothing that you enter leaves this computer unless you save or send it yourself.',
    figures:
      'Rates of faults are assumed until you enter your own or confirmed cases sharpen them, and minutes are estimates; wherever a figure comes from outside, its source stands beside it. The repair table and the sums show them all.',
    care: 'Work in a drive cabinet can kill. The machine’s manual, the rules of your country and a skilled person on site come before anything that this program says.',
    licence: 'Free software under the MIT licence.',
    close: 'Close',
  },

  shortcuts: {
    inCabinet: 'On a unit',
    everywhere: 'Everywhere',
    inFind: 'In Find',
    inDraw: 'In Draw',
    inPractice: 'In Practice',
    digits: 'enter what the display shows',
    zero: 'not looked at',
    seven: 'lit, cannot read it',
    eight: 'complains, cannot tell which way',
    arrows: 'along the chain, and to the next row',
    enter: 'all answers for this display',
    report: 'report of this chain',
    escape: 'close, or take the prediction off',
    regions: 'next part of the window',
  },

  crash: {
    title: 'Something in the window failed.',
    what: 'What you entered is kept, up to about a second ago, and comes back when the window is loaded again. If it happens again, report it with the text below.',
    reload: 'Reload',
  },
} as const;
