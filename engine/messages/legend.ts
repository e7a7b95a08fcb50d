import type { BehaviourParameter, DisplayMeaning, LinkEnd, Onset } from '../schema/index.ts';
import { behaviourWords, findValueWords, unknownBehaviourWords } from './behaviour.ts';
import { startSentence, wordCount, wordList, wordProbability } from './numbers.ts';
import { endWords, meaningWords, onsetWords, wordMeanings } from './words.ts';

/*
 * Equipment types: how they behave, what their codes mean, and the staged break that finds a behaviour out.
 */

/** Labels of the commands. */
export const legendCommandLabels = {
  openEquipment: 'Equipment types',
  closeEquipment: 'Close',
  addType: 'New type',
  renameType: 'Rename the type',
  removeType: 'Remove the type',
  setBehaviour: 'Say how a type behaves',
  assignType: 'Say of which type a unit is',
  setTypeLegend: 'Choose the legend of a type',
  addLegend: 'New legend',
  renameLegend: 'Rename the legend',
  removeLegend: 'Remove the legend',
  setLegendCodes: 'Change codes',
  setDefaultLegend: 'Choose the usual legend',
  takeFromLibrary: 'Take into this cabinet',
  keepInLibrary: 'Keep in my library',
  dropFromLibrary: 'Remove from my library',
  stageBreak: 'Staged break',
  tellReread: 'Tell what was read anew',
  verifyBehaviour: 'Take over what the staged break showed',
} as const;

/** Why a row of codes was not taken. */
export type CodeTrouble = 'empty' | 'doubled' | 'too-long' | 'no-meaning' | 'unknown-meaning' | 'too-many';

const valueLabel = (parameter: BehaviourParameter, value: string) =>
  value === 'unknown' ? unknownBehaviourWords.label : (findValueWords(parameter, value)?.label ?? value);

export const legendWords = {
  dialog: {
    title: 'Equipment types',
    types: 'Types',
    legends: 'Legends',
    library: 'My library',
    close: 'Close',
    none: 'This cabinet names no types yet. Until it does, every unit is taken to behave in the usual way.',
    noLegends: 'No legend yet: raw codes are kept as “other code”.',
    libraryEmpty: 'Nothing kept yet. What you keep here is yours, and is copied into a cabinet when you use it.',
    units: (count: number) => wordCount(count, 'unit'),
    codes: (count: number) => wordCount(count, 'code'),
    unsettled: (count: number) => `${count} not known`,
    newType: (number: number) => `Type ${number}`,
    newLegend: (number: number) => `Legend ${number}`,
    choose: 'Choose a type or a legend at the left.',
    /** Begins with what can be read on it. */
    openFor: (unit: string, type: string) => `${type}, equipment type of ${unit}`,
    typeOf: (type: string | null) => (type === null ? 'type not said' : type),
  },

  library: {
    keep: 'Keep in my library',
    kept: (name: string) => `${name} is kept in your library.`,
    remove: { type: 'Remove this type', legend: 'Remove this legend' },
  },

  type: {
    region: (name: string) => `Type ${name}`,
    name: 'Name',
    nameEmpty: 'A type needs a name.',
    nameTaken: 'Another type has this name already.',
    behaviour: 'How it answers to a loss',
    behaviourHow: 'Point at a value to see what it does.',
    usual: 'usual',
    unknown: unknownBehaviourWords.label,
    unknownMeans: unknownBehaviourWords.meaning,
    verified: (on: string, how: string | undefined) => `Verified on ${on}${how ? `: ${how.replace(/\.$/, '')}` : ''}.`,
    notVerified: 'Not verified on the real equipment.',
    unitsOfType: 'Units of this type',
    otherType: (name: string) => `now ${name}`,
    legend: 'Legend',
    legendUsual: (name: string | null) => (name === null ? 'the usual one (none yet)' : `the usual one (${name})`),
    taken: (name: string) => `${name} is now in this cabinet.`,
    stage: 'Find it out: staged break',
  },

  example: {
    region: 'What it does',
    simulated: 'simulated, four units of this type',
    controller: 'controller',
    same: 'With the other values as they are set, every value looks the same here.',
    unknownShown: 'Shown with the usual value: which one holds is not known.',
    light: (port: 'up' | 'down', light: 'bright' | 'none') => `${port}: ${light === 'bright' ? 'light' : 'dark'}`,
    lightAt: 'Light at the ports, each seen with its plug pulled.',
    shows: (unit: string, meaning: DisplayMeaning) => `${unit}: ${meaningWords[meaning].label}`,
    events: {
      lossScope: 'The cable between units 2 and 3 is cut while the machine runs.',
      onReceiveLoss: 'Only the outbound fibre between units 2 and 3 is cut; the way back is whole.',
      idleLight: 'The cable between units 2 and 3 is cut.',
      complainsFrom: 'The machine is switched on with the cable between units 2 and 3 cut.',
      whenBoth: 'The cables on both sides of unit 2 are cut.',
      holds: 'The cable between units 2 and 3 failed for a moment, stopped the machine, and is whole again.',
      shortEffect: 'The feedback cable at unit 2 has a short.',
    } satisfies Readonly<Record<BehaviourParameter, string>>,
  },

  legend: {
    region: (name: string) => `Legend ${name}`,
    name: 'Name',
    source: 'From which manual',
    nameEmpty: 'A legend needs a name.',
    nameTaken: 'Another legend has this name already.',
    usual: 'The usual legend of this cabinet',
    usualHow: 'It reads the codes of units whose type names no legend.',
    code: 'Code',
    means: 'Can mean',
    note: 'Note',
    add: 'Add the code',
    newCode: 'New code',
    newNote: 'Note of the new code',
    removeHead: 'Remove a code',
    removeCode: (code: string) => `Remove code ${code}`,
    codeField: (code: string) => `Code ${code}`,
    noteField: (code: string) => `Note of code ${code}`,
    meaningOf: (code: string, meaning: DisplayMeaning) => `${code === '' ? 'new code' : `code ${code}`}: ${meaningWords[meaning].label}`,
    noCodes: 'No codes yet. Fill them in from the equipment’s own manual.',
    usedBy: (names: readonly string[]) => (names.length === 0 ? 'No type names it.' : `Named by ${wordList(names)}.`),
    paste: 'Paste rows',
    pasteHow:
      'One code in a row: code, meanings, note, with a tab or a semicolon between them. Several meanings are joined by a comma. Meanings are the words of the six displays.',
    pasteField: 'Rows',
    pasteExample: '21; upstream loss; nothing heard from above\n30; upstream loss, both losses',
    take: (count: number) => (count === 0 ? 'No row to take' : `Take ${wordCount(count, 'row')}`),
    replaces: (count: number) => `${wordCount(count, 'code')} of these ${count === 1 ? 'is' : 'are'} there already and will be changed.`,
    trouble: {
      empty: 'The code is empty. Write what the display shows.',
      doubled: 'This code is in the legend already. Change that row instead.',
      'too-long': 'A code has 40 characters at most.',
      'no-meaning': 'Say what the code can mean: one display at least.',
      'unknown-meaning': 'This meaning is not one of the six.',
      'too-many': 'A legend has 500 codes at most.',
    } satisfies Readonly<Record<CodeTrouble, string>>,
    inRow: (row: number, trouble: string) => `Row ${row}: ${trouble}`,
    troubleWithMeaning: (word: string) =>
      `“${word}” is not one of the meanings: ${wordList(Object.values(meaningWords).map(({ label }) => label))}.`,
  },

  /** What was read through a legend and now means something else. */
  reread: (changes: readonly { readonly unit: string; readonly code: string; readonly meanings: readonly DisplayMeaning[] }[]) =>
    changes.length === 0
      ? ''
      : `Read anew by the legend: ${changes
          .slice(0, 4)
          .map(({ unit, code, meanings }) => `${unit}, code ${code}, now ${wordMeanings(meanings)}`)
          .join('; ')}${changes.length > 4 ? `; and ${changes.length - 4} more` : ''}. Undo takes it back.`,

  staged: {
    region: 'Staged break',
    caution: 'Before you pull a plug',
    cautions: [
      'On a healthy machine only, brought to a safe state: nobody in it, no axis moving, hanging axes propped. An axis that hangs may drop when its chain is lost.',
      'The cabinet is live when it is open: only persons licensed for it work there. Never look into a fibre end or an optical port.',
      'Read in the machine’s manual first whether this plug may be pulled, and how. Manual, local codes and licensed persons come first.',
    ],
    confirm: 'The machine is whole, in a safe state, and the manual allows it',
    which: 'Which plug is pulled',
    link: 'Link',
    end: 'Plug',
    ends: endWords,
    when: 'How',
    onsets: {
      'while-running': 'pulled while the chain is up',
      'at-power-up': 'pulled with everything off, then switched on',
    } satisfies Readonly<Record<Onset, string>>,
    again: 'Displays are read',
    agains: { no: 'with the plug out', yes: 'after the plug is back, without a reset' },
    read: 'What shows now',
    readHow: 'Digits enter as in Find; the next unit follows.',
    report: 'Report',
    light: 'Light at the port',
    lightOutcomes: { none: 'no light', bright: 'light', 'not-looked': 'not looked at' },
    addBreak: 'Another break',
    breakNumber: (number: number) => `Break ${number}`,
    dropBreak: (number: number) => `Remove break ${number}`,
    act: (link: string, end: LinkEnd, onset: Onset, pluggedAgain: boolean, withLight: boolean) =>
      `Pull the ${endWords[end].label} of ${link} ${onset === 'while-running' ? 'while the chain is up' : 'with everything off, then switch on'}${
        pluggedAgain ? ', put it back without a reset' : ''
      }, and read the displays${withLight ? ' and the light at both ports' : ''}.`,
    finding: 'What follows',
    nothingRead: 'Enter at least one display.',
    nothingAsked: 'Every parameter of the types on this chain is documented. Tick below to test them all the same.',
    thoroughly: (type: string) => `Test also what is documented of ${type}`,
    fitting: (fitting: number, all: number) => `${fitting} of ${wordCount(all, 'combination')} predict what was read.`,
    contradicted: (units: readonly string[]) =>
      units.length === 0
        ? 'No combination predicts all of this. Something was misread, or the machine is not whole. Nothing is excluded.'
        : `No combination predicts what was read at ${wordList(units)}. Read it again; or the machine is not whole. Nothing is excluded.`,
    reportElsewhere: (chain: string) =>
      `The report of ${chain} names another place than the pulled plug: is the machine whole, and is this the plug?`,
    setToDefault: (types: readonly string[]) => `Two types at most can be asked at once. Taken as usual: ${wordList(types)}.`,
    states: { settled: 'settled', open: 'still open', untouched: 'not touched by this' },
    share: (parameter: BehaviourParameter, value: string, probability: number, fits: boolean) =>
      `${valueLabel(parameter, value)} ${fits ? wordProbability(probability) : 'excluded'}`,
    next: 'What would settle the rest',
    nextFor: (type: string, parameter: BehaviourParameter) => `${type}, ${behaviourWords[parameter].label}: `,
    noBreak: {
      shortEffect: 'Pulling an optical plug cannot show it. It stays open until a feedback cable is shorted.',
      other: 'No further break on this chain tells anything of it.',
    },
    use: 'Stage this one',
    accept: (count: number) => (count === 0 ? 'Nothing is settled yet' : `Take over ${wordCount(count, 'settled value')}`),
    accepted: (types: readonly string[]) => `Taken over and marked as verified: ${wordList(types)}.`,
    how: (acts: readonly string[]) => `Staged break: ${acts.join('; ')}`.slice(0, 200),
    howAct: (link: string, end: LinkEnd, onset: Onset, pluggedAgain: boolean) =>
      `${endWords[end].label} of ${link}, ${onsetWords[onset].label}${pluggedAgain ? ', put back' : ''}`,
    back: 'Back to the type',
    noLinks: 'This cabinet has no link to unplug.',
  },

  /** What stands after "Undo". */
  steps: {
    addType: (name: string) => `new type ${name}`,
    renameType: (name: string) => `type renamed to ${name}`,
    removeType: (name: string) => `type ${name} removed`,
    behaviour: (type: string, parameter: BehaviourParameter, value: string) =>
      `${type} ${behaviourWords[parameter].label} ${valueLabel(parameter, value)}`,
    assign: (unit: string, type: string | null) => (type === null ? `no type for ${unit}` : `${unit} is ${type}`),
    typeLegend: (type: string) => `legend of ${type}`,
    addLegend: (name: string) => `new legend ${name}`,
    renameLegend: (name: string) => `legend renamed to ${name}`,
    removeLegend: (name: string) => `legend ${name} removed`,
    codes: (name: string) => `codes of ${name}`,
    defaultLegend: 'the usual legend',
    taken: (name: string) => `${name} from my library`,
    verified: (types: readonly string[]) => `staged break on ${wordList(types)}`,
  },
};

/** The whole of one parameter as a head: "Complains about". */
export const parameterHead = (parameter: BehaviourParameter): string => startSentence(behaviourWords[parameter].label);
