import type { Problem, ProblemCode, Severity } from '../base/index.ts';
import { cabinetProblemWords } from './problemsOfCabinets.ts';
import { editProblemWords } from './problemsOfEdits.ts';
import { exerciseProblemWords } from './problemsOfExercises.ts';
import { fileProblemWords } from './problemsOfFiles.ts';
import { sumProblemWords } from './problemsOfSums.ts';
import { tableProblemWords } from './problemsOfTables.ts';
import type { ProblemWords, WordsFor } from './problemWords.ts';
import { quickProblemWords } from './quick.ts';
import type { Term } from './words.ts';

/** How much a problem matters. */
export const severityWords: { readonly [S in Severity]: Term } = {
  refused: { label: 'not opened', meaning: 'it was not taken at all' },
  error: { label: 'error', meaning: 'the cabinet cannot be simulated as it is' },
  incomplete: { label: 'incomplete', meaning: 'something that belongs there is missing' },
  warning: { label: 'warning', meaning: 'it works, and is probably not meant' },
};

// Every code must be worded in one of the lists, or this does not compile.
const problemWords: WordsFor<ProblemCode> = {
  ...fileProblemWords,
  ...cabinetProblemWords,
  ...sumProblemWords,
  ...quickProblemWords,
  ...editProblemWords,
  ...tableProblemWords,
  ...exerciseProblemWords,
};

/** A problem in words, for the screen, the command line and reports alike. */
export function wordProblem(problem: Problem): ProblemWords {
  // A problem's facts are those of its code: `makeProblem` asks for them.
  const words = problemWords[problem.code] as (facts: Problem['facts']) => ProblemWords;
  return words(problem.facts);
}
