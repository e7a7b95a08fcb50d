import type { ClassRow } from '../exercise/index.ts';
import type { ExerciseFigures } from '../schema/index.ts';
import { wordCount } from './numbers.ts';
import { practiceWords } from './practice.ts';

const { minutes } = practiceWords;

/** Labels of the commands of Practice. */
export const practiceCommandLabels = {
  practiceExercises: 'Exercises',
  practiceMake: 'Make an exercise',
  practiceGenerate: 'Generate exercises',
  practiceClass: 'Table of a class',
  practiceNext: 'Next exercise',
  practiceProjector: 'Large type for a projector',
  saveExercise: 'Save an exercise',
  saveResult: 'Save the result',
  savePaper: 'Save a paper of an exercise',
  takeResults: 'Read results of a class',
  deleteResults: 'Delete results',
} as const;

/** The screens of Practice, in short. */
export const practiceTabWords = { exercises: 'Exercises', make: 'Make', generate: 'Generate', class: 'Class' } as const;

/** The first stops of Tab in Practice. */
export const practiceSkipWords = { practice: 'Go to the exercise', 'make-plan': 'Go to the best plan' } as const;

/** What is missing in an exercise that is being made, before it can be worked out. */
export const draftProblemWords = {
  'cabinet-unsound': 'This cabinet has errors. Draw lists them; an exercise needs a cabinet without.',
  'no-fault': 'Hide a fault first.',
  'too-many-faults': 'Two faults are the most that one exercise hides: with more, nobody oversees what may be wrong.',
  'mistake-while-running': 'A wiring mistake cannot come while the machine runs. Let it come when the machine is switched on.',
  'no-title': 'Give it a title.',
  'no-step': 'Allow at least one step.',
  'spare-unnamed': 'Name each spare, or take it out.',
  'hint-empty': 'Write each hint, or take it out.',
} as const;
export type DraftProblem = keyof typeof draftProblemWords;

/** Words of the form in which an exercise is made. */
export const makeWords = {
  screens: 'Screens of Practice',
  title: 'Make an exercise',
  intro: 'Hide a fault, decide what is known and what may be done. The best plan and what it costs are worked out as you go.',
  again: 'Begin anew',
  aside: 'Put aside',
  asideOf: (cabinet: string) => `for ${cabinet}`,
  asideWaits: (cabinet: string) => `for ${cabinet}: open that cabinet to go on`,
  takeUp: 'Go on',
  takeUpName: (name: string) => `Go on: ${name}`,
  throwAway: 'Throw away',
  throwAwayName: (name: string) => `Throw away: ${name}`,
  keptOpenly:
    'Until it is saved, what you make is kept on this machine against a crash, without a seal: whoever uses the machine could read it.',
  locked: 'Saved',
  lockedWhy: 'Closed here, so that nobody who comes to this machine reads what they hide. The passphrase opens one again, to change it.',
  unlock: 'Open again',
  unlockPassphrase: (name: string) => `Passphrase of ${name}`,
  unlockWrong: 'That is not its passphrase.',
  notKept: 'The exercise that you make cannot be kept against a crash of the program.',
  ofInjected: 'Make an exercise of this',
  cabinet: 'Cabinet',
  openCabinet: (name: string) => `open: ${name}`,
  sample: (name: string) => `sample: ${name}`,

  hidden: 'What is wrong',
  nothingHidden: 'Nothing yet. Choose a thing and what is wrong with it, or put faults on the picture with “Simulate a fault” in Find.',
  thing: 'At',
  fault: 'What is wrong there',
  hide: 'Hide it',
  things: { link: 'Cables and plugs', unit: 'Units', lead: 'Power leads', chain: 'Controller' },
  presence: (fault: string) => `How steadily: ${fault}`,
  presences: { steady: 'steady', intermittent: 'comes and goes' },
  remove: (what: string) => `Take out: ${what}`,
  onset: 'It came',
  seedWhy: 'Decides when what comes and goes is there. The same seed plays the same way.',

  known: 'Known at the start',
  displays: 'Displays',
  presets: { complaining: 'those that complain', all: 'all', none: 'none', these: 'these' },
  knownWaiting: 'What displays and reports show follows from what is wrong.',
  reports: 'Reports',
  circumstances: 'Circumstances',
  circumstancesWhy: 'They make some of what may be wrong likelier, and are told to the trainee.',

  steps: 'What may be done',
  stepsWaiting: 'The steps follow from what is wrong and known.',
  allowed: (count: number, of: number) => `${count} of ${of} allowed`,
  asProposed: 'As proposed',
  stepHeads: { step: 'Step', minutes: 'Minutes', most: 'Most', spare: 'Spare' },
  stepMinutes: (step: string) => `Minutes: ${step}`,
  stepMost: (step: string) => `How often at most: ${step}`,
  stepSpare: (step: string) => `Spare used up: ${step}`,
  freely: 'freely',
  noSpare: 'none',
  changes: 'Minutes of a change of state',
  openMinutes: 'open the live cabinet',
  isolateMinutes: 'switch off, lock, discharge',
  bootMinutes: 'switch on again',

  spares: 'Spares',
  addSpare: 'Add a spare',
  addCabinetSpares: 'Those of the cabinet',
  spare: (number: number) => `spare ${number}`,
  spareName: (number: number) => `Name of spare ${number}`,
  spareCount: (number: number) => `How many of spare ${number}`,
  pieces: 'pieces',

  end: 'When it ends',
  solved: 'Solved when they',
  limits: 'Limits',
  limitMinutes: 'minutes at most',
  limitSteps: 'steps at most',
  unlimited: 'no limit',

  hints: 'Hints',
  addHint: 'Add a hint',
  hint: (number: number) => `hint ${number}`,
  hintText: (number: number) => `Text of hint ${number}`,
  hintPrice: (number: number) => `Price of hint ${number} in minutes`,
  price: 'minutes',

  texts: 'Words',
  kind: 'It teaches',
  name: 'Title',
  task: 'What the trainee reads first',
  story: 'What had happened, told at the end',
  lesson: 'What to take home, told at the end',

  holds: 'It can be decided',
  refused: 'It cannot be played',
  missing: 'Still missing',
  working: 'Working out the best plan …',
  stop: 'Stop',
  stopped: 'Stopped. Nothing is known of the best plan yet.',
  workOn: 'Work it out',
  expected: 'best plan, expected',
  group: (count: number) => (count === 1 ? 'answer open at the start' : 'answers open at the start'),
  misleading: (count: number) => (count === 1 ? 'misleading display' : 'misleading displays'),
  notProved: 'A good plan; it is not proved to be the best one.',
  plan: 'The best plan against this answer',
  planNothing: 'Nothing need be done: what is known at the start decides it.',
  planLine: (step: string, outcome: string) => `${step}: ${outcome}`,
  possible: (count: number) => `What may be wrong (${count})`,
  hiddenMark: 'hidden',

  seal: 'Seal and save',
  passphrase: 'Passphrase',
  passphraseAgain: 'The same again',
  passphraseDiffers: 'The two are not the same.',
  passphraseMissing: 'Choose a passphrase first, and type it twice.',
  passphraseLost: 'A lost passphrase cannot be recovered: nobody can open the answer without it, neither the instructor nor this program.',
  save: 'Save the exercise',
  tryIt: 'Try it yourself',
  sealing: 'Sealing the answer …',
  savedAs: (name: string) => `Saved: ${name}.`,
} as const;

/**
 * "5 answers open at the start · best plan 24 min": how hard, as a trainee may know it. How many faults there are, whether they come and
 * go, and how many displays mislead is for him to find out.
 */
export function wordFigures({ firstGroup, bestMinutes }: ExerciseFigures): string {
  return [`${firstGroup} ${makeWords.group(firstGroup)}`, `best plan ${minutes(bestMinutes)}`]
    .map((part) => part.replaceAll(' ', '\u00a0'))
    .join('\u00a0· ');
}

/** Levels of exercises. */
export const levelWords: readonly string[] = ['first lesson', 'easy', 'middling', 'hard'];

/** "Level 3 of 4: middling". */
export function wordLevel(level: number): string {
  return `Level ${level} of ${levelWords.length}: ${levelWords[level - 1] ?? ''}`;
}

/** Words of the generator. */
export const generateWords = {
  title: 'Generate exercises',
  intro: (cabinet: string) =>
    `By chance from ${cabinet}. Every kind comes once before any comes twice. The same seed gives the same set: keep it to yourself, for whoever knows it finds the answers as you do.`,
  count: 'How many',
  level: 'Difficulty',
  anyLevel: 'any',
  levelMeaning:
    'Difficulty is measured: answers that the start leaves open, expected minutes of the best plan, faults, what comes and goes, displays that point away.',
  generate: 'Generate',
  stop: 'Stop',
  working: (made: number, of: number) => `${made} of ${of} made …`,
  none: 'Nothing generated yet.',
  made: (count: number) => wordCount(count, 'exercise'),
  leftOut: (kinds: string, wanted: boolean) =>
    wanted ? `Not found at this difficulty with this cabinet: ${kinds}.` : `Not possible with this cabinet: ${kinds}.`,
  fewer: (made: number, of: number) => `${made} of ${of}: this cabinet, seed and difficulty give no more. Another seed may.`,
  heads: {
    name: 'It teaches',
    level: 'Level',
    group: 'Open at the start',
    minutes: 'Best plan',
    faults: 'Faults',
    misleading: 'Misleading',
    deeds: 'What next',
  },
  comesAndGoes: 'comes and goes',
  save: 'Save',
  saveName: (name: string) => `Save: ${name}`,
  edit: 'Change',
  editClosed: 'Saved and closed: only its passphrase opens the answer.',
  editName: (name: string) => `Change: ${name}`,
  saveAll: 'Save all',
  saved: 'saved',
  answersHidden: 'The answers are not shown here: you may play them yourself.',
} as const;

/** Words of the table of a class. */
export const classWords = {
  title: 'Table of a class',
  intro: 'Results as the trainees saved them: a free code stands for each person, never a name.',
  files: 'Choose results',
  folder: 'Choose a folder',
  empty: 'No results yet. Choose a folder of result files, or several files at once.',
  clear: 'Empty the table',
  count: (count: number) => wordCount(count, 'result'),
  heads: {
    code: 'Code',
    name: 'Exercise',
    solved: 'Solved',
    minutes: 'Minutes',
    ratio: 'Against best',
    predictionsRight: 'Predictions right',
    unsafe: 'Safety',
    seconds: 'Time taken',
    startedAt: 'Begun',
  },
  sortBy: (head: string) => `Sort by ${head}`,
  choose: (code: string, exercise: string) => `Choose ${code}, ${exercise}`,
  chooseAll: 'Choose all',
  solved: { yes: 'solved', guessed: 'solved, without a look', no: 'not solved' },
  of: (some: number, all: number) => (all === 0 ? '–' : `${some} of ${all}`),
  times: (ratio: string) => `${ratio} ×`,
  best: (value: number) => `best ${minutes(value)}`,
  safe: 'passed',
  unsafe: (count: number) => `failed: ${wordCount(count, 'unsafe step')}`,
  took: (seconds: number) => minutes(seconds / 60),
  notTold: '–',
  damaged: (count: number) => `${wordCount(count, 'file')} not in the table`,
  foreign: (count: number) => `${wordCount(count, 'other file')} of the folder left alone.`,
  leftOut: (count: number) => `${wordCount(count, 'more file')} not read: too many at once.`,
  twice: (count: number) => `${wordCount(count, 'file')} of plays that stand in the table already.`,
  sameAs: (other: string, code: string) => `the same play as ${other}, counted under the code “${code}”`,
  countOf: (name: string, count: number) => `${name} (${count})`,
  ofExercises: (exercises: string) => `of different exercises: ${exercises}`,
  csv: 'Save as CSV',
  csvName: 'class',
  delete: 'Delete files…',
  deleteTitle: (count: number) => `Delete ${wordCount(count, 'result file')}?`,
  deleteWhat: 'They are deleted from the disk for good and cannot be brought back. Only files that are results are deleted.',
  deleteYes: 'Delete',
  cancel: 'Cancel',
  deleted: (count: number) => `${wordCount(count, 'file')} deleted.`,
  cannotDelete: 'A page in the browser cannot delete files: delete them in their folder, or with “linkwright exercise delete”.',
} as const;

/** Whether a play solved its exercise; who named the part without one look has guessed. */
export function wordSolved({ solved, steps, bestMinutes }: Pick<ClassRow, 'solved' | 'steps' | 'bestMinutes'>): string {
  if (!solved) return classWords.solved.no;
  return steps === 0 && bestMinutes > 0 ? classWords.solved.guessed : classWords.solved.yes;
}
