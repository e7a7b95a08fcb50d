import type { ClassRow, Game, GameStep } from '../exercise/index.ts';
import type { DisplayMeaning } from '../schema/index.ts';
import { wordCircumstance } from './circumstances.ts';
import { wordGap } from './explanations.ts';
import { makeNames, type Names } from './names.ts';
import { startSentence } from './numbers.ts';
import { wordNumber, wordPrice } from './quantities.ts';
import { wordStep, wordStepOutcome } from './steps.ts';
import { meaningWords, unitKindWords } from './words.ts';

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
  possibleSeveral: 'One or several of these are wrong',
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
  noBreak: 'the control reaches all units',
  holds: 'can be played, and its answer can be found out',
  closed: 'can be played; its answer was not looked at, because the seal stays closed without the passphrase',
  printed: (title: string, file: string) => `${title}: written to ${file}.`,
  deleted: (file: string) => `${file} deleted.`,
  yes: 'yes',
  no: 'no',
} as const;

/**
 * How things are called while an exercise is played. Where counting is what is to be learned, the control says ordinals alone, as it
 * does at the machine, and no unit bears its ordinal.
 */
export function namesForPlay({ exercise, cabinet }: Pick<Game, 'exercise' | 'cabinet'>): Names {
  const names = makeNames(cabinet);
  if (exercise.kind !== 'counting') return names;
  const unitAt = (chain: string, at: number) => cabinet.chains.find(({ id }) => id === chain)?.units[at - 1];
  const kindOf = (unit: string) => [...cabinet.units.values()].find(({ id }) => id === unit)?.kind;
  return {
    ...names,
    ordinal: (unit) => unitKindWords[kindOf(unit) ?? 'servo-drive'],
    position: (chain, at) => names.ordinal(unitAt(chain, at) ?? '') || names.position(chain, at),
  };
}

/** Over the list of what may be wrong. */
export function wordPossible({ exercise, possible }: Pick<Game, 'exercise' | 'possible'>): string {
  if (possible.some(({ faults }) => faults.length > 1)) return exerciseWords.possibleSeveral;
  return exercise.solved === 'mended' ? exerciseWords.possibleMended : exerciseWords.possible;
}

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
      startSentence(`${names.chain(chain)}: ${gap === 'none' ? exerciseWords.noBreak : exerciseWords.report(wordGap(names, chain, gap))}`),
    ),
    ...(exercise.given.displays ?? []).map(({ unit, meaning }) => `${names.unit(unit)}: ${meaningWords[meaning as DisplayMeaning].label}`),
    ...(exercise.given.circumstances ?? []).map((one) => startSentence(wordCircumstance(names, one))),
  ];
}
