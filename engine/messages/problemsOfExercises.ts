import { named, quote, type WordsFor } from './problemWords.ts';

/** Codes of problems of exercises and of results. */
type ExerciseCode =
  | 'exercise-cabinet-unsound'
  | 'exercise-thing-unknown'
  | 'exercise-step-doubled'
  | 'exercise-lamp-uncertain'
  | 'exercise-seal-foreign'
  | 'exercise-seal-closed'
  | 'exercise-seal-damaged'
  | 'exercise-answer-not-possible'
  | 'exercise-possible-unfit'
  | 'exercise-does-not-halt'
  | 'exercise-undecided'
  | 'exercise-not-mendable'
  | 'exercise-not-generated'
  | 'exercise-kind-not-possible'
  | 'result-changed'
  | 'result-not-recognised'
  | 'result-not-deleted';

export const exerciseProblemWords: WordsFor<ExerciseCode> = {
  'exercise-cabinet-unsound': () => ({
    title: 'The cabinet of this exercise cannot be computed with',
    explanation: 'An exercise needs a cabinet without errors: what its displays show is worked out.',
    whatToDo: 'Mend the cabinet, and make the exercise anew.',
  }),
  'exercise-thing-unknown': ({ field, id }) => ({
    title: `The exercise names ${field} ${quote(id)}, which its cabinet does not have`,
    explanation: 'What is given, what may be wrong, and what may be done must concern things of the cabinet.',
    whatToDo: 'Correct the name, or make the exercise anew.',
  }),
  'exercise-step-doubled': ({ step }) => ({
    title: `Two steps have the id ${quote(step)}`,
    explanation: 'A play is kept as ids of steps; each must be one step only.',
    whatToDo: 'Give one of them another id.',
  }),
  'exercise-lamp-uncertain': () => ({
    title: 'A lamp through a cable is not allowed where something may come and go',
    explanation: 'The machine is switched off for it, and may run or halt when it is on again; the look itself would not say which.',
    whatToDo: 'Take the step out, or let only steady faults be possible.',
  }),
  'exercise-seal-foreign': () => ({
    title: 'The sealed answer does not belong to this exercise',
    explanation: 'Something was changed in the file after the answer was sealed, or the seal was taken from another file.',
    whatToDo: 'Take the file as it came from its maker, or make the exercise anew.',
  }),
  'exercise-seal-closed': () => ({
    title: 'The seal does not open with this passphrase',
    explanation: 'The answer is locked with the passphrase that was chosen when the exercise was made.',
    whatToDo: 'Ask the instructor for the passphrase. Capital letters and spaces count.',
  }),
  'exercise-seal-damaged': () => ({
    title: 'What is sealed in this exercise cannot be read',
    explanation: 'The seal opens, or should, but there is no answer in it.',
    whatToDo: 'Take the file as it came from its maker, or make the exercise anew.',
  }),
  'exercise-answer-not-possible': () => ({
    title: 'The true answer is not among what may be wrong',
    explanation: 'Everybody looks for one of the things that the exercise names as possible; the answer must be one of them.',
    whatToDo: 'Add the answer to what may be wrong, or make the exercise anew.',
  }),
  'exercise-possible-unfit': ({ number }) => ({
    title: `Possibility ${number} does not show what is given at the start`,
    explanation: 'It could be ruled out before the first step.',
    whatToDo: 'Take it out, or make the exercise anew.',
  }),
  'exercise-does-not-halt': () => ({
    title: 'These faults do not halt the machine',
    explanation: 'No chain is broken by them, so there is nothing to look for.',
    whatToDo: 'Hide something that breaks a chain.',
  }),
  'exercise-undecided': ({ answers, count }) => ({
    title: `No allowed step can decide between ${named(answers, count)}`,
    explanation: 'Whatever is looked at or done, these stay possible together: the exercise could only be guessed.',
    whatToDo: 'Allow a step that tells them apart, give more at the start, or let the place be named instead of the item.',
  }),
  'exercise-not-mendable': ({ answers, count }) => ({
    title: `Nothing that is allowed mends ${named(answers, count)}`,
    explanation: 'The exercise is solved when the machine is mended; with this at fault it never would be.',
    whatToDo: 'Allow an act that mends it, or let the fault be named instead.',
  }),
  'exercise-not-generated': ({ level, tries }) => ({
    title: `No exercise of level ${level} was found`,
    explanation: `${tries} were made from this cabinet and this seed; none of them measured as wanted.`,
    whatToDo: 'Take another seed, another level, or a larger cabinet.',
  }),
  'exercise-kind-not-possible': ({ kind }) => ({
    title: `This cabinet allows no exercise of the kind ${quote(kind)}`,
    explanation: 'It lacks what such an exercise is about, or nothing that is allowed could decide it.',
    whatToDo: 'Take another kind, or another cabinet.',
  }),
  'result-changed': () => ({
    title: 'This result was changed after it was written',
    explanation: 'Its checksum does not fit. It finds accidents, such as a damaged copy; it does not prove who wrote the file.',
    whatToDo: 'Ask for the file again.',
  }),
  'result-not-recognised': ({ file }) => ({
    title: `${quote(file)} was not deleted: it is no result as it was read here`,
    explanation: 'Only results of exercises are deleted, and only as long as they are as they were when the table was made.',
    whatToDo: 'Read the folder again; delete other files with the means of the system.',
  }),
  'result-not-deleted': ({ file, reason }) => ({
    title: `${quote(file)} could not be deleted`,
    explanation: `The system answered ${reason}.`,
    whatToDo: 'See that you may write in its folder, and that no other program holds it.',
  }),
};
