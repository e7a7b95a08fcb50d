import type { ClassRow, Game, GameStep } from '../exercise/index.ts';
import type { DisplayMeaning } from '../schema/index.ts';
import { wordCircumstance } from './circumstances.ts';
import { wordGap } from './explanations.ts';
import type { Names } from './names.ts';
import { startSentence } from './numbers.ts';
import { wordNumber, wordPrice } from './quantities.ts';
import { wordStep, wordStepOutcome } from './steps.ts';
import { meaningWords } from './words.ts';

/** Heads of the table of a class; also the head of its CSV. */
export const classHeads: { readonly [K in keyof ClassRow]: string } = {
  code: 'Code',
  exercise: 'Exercise',
  name: 'Name',
  solved: 'Solved',
  minutes: 'Minutes',
  bestMinutes: 'Best plan',
  ratio: 'Against best',
  predictions: 'Predictions',
  predictionsRight: 'Right',
  unsafe: 'Unsafe',
  steps: 'Steps',
  startedAt: 'Started',
  seconds: 'Seconds',
};

/** Words on exercises, their sheets and answers. */
export const exerciseWords = {
  known: 'Known at the start',
  allowed: 'What may be done',
  possible: 'One of these is the answer',
  possibleMended: 'One of these is wrong',
  answer: 'Answer',
  plan: 'Best plan',
  lesson: 'What to take home',
  asked: 'Asked',
  level: (level: number) => `level ${level}`,
  minutes: wordPrice,
  changes: (open: number, off: number, on: number) =>
    `Opening the live cabinet costs ${wordNumber(open)} min, switching off, locking and discharging ${wordNumber(off)}, switching on again ${wordNumber(on)}.`,
  expected: (minutes: number, exact: boolean) => `Expected ${wordPrice(minutes)}${exact ? '' : ' or less: not proved to be best'}`,
  figures: (firstGroup: number, misleading: number) => `${firstGroup} answers open at the start, ${misleading} misleading displays`,
  write: 'Before each step: whom do you suspect, and what will it show?',
  powerCycle: 'Switch off and on again',
  report: (gap: string) => `the control reports a break ${gap}`,
  holds: 'can be played, and its answer can be found out',
  closed: 'can be played; its answer was not looked at, because the seal stays closed without the passphrase',
  printed: (title: string, file: string) => `${title}: written to ${file}.`,
  deleted: (file: string) => `${file} deleted.`,
  yes: 'yes',
  no: 'no',
} as const;

/** A step of an exercise, as a line of a list. */
export function wordExerciseStep(names: Names, { step }: GameStep): string {
  return startSentence(step.do === 'act' && step.acts.length === 0 ? exerciseWords.powerCycle : wordStep(names, step));
}

/** What a step showed. */
export function wordExerciseOutcome(names: Names, { step }: GameStep, outcome: string): string {
  return wordStepOutcome(names, step, outcome);
}

/** What everybody knows at the start, line by line. */
export function wordGiven(names: Names, { exercise }: Game): readonly string[] {
  return [
    ...(exercise.given.reports ?? []).map(({ chain, gap }) =>
      startSentence(`${names.chain(chain)}: ${exerciseWords.report(wordGap(names, chain, gap))}`),
    ),
    ...(exercise.given.displays ?? []).map(({ unit, meaning }) => `${names.unit(unit)}: ${meaningWords[meaning as DisplayMeaning].label}`),
    ...(exercise.given.circumstances ?? []).map((one) => startSentence(wordCircumstance(names, one))),
  ];
}
