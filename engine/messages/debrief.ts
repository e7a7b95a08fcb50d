import type { Debrief, DebriefStep, Game, Share, Told } from '../exercise/index.ts';
import { wordAnswerKey } from './exercise.ts';
import { wordExerciseOutcome, wordExerciseStep } from './exerciseSheet.ts';
import type { Names } from './names.ts';
import { startSentence, wordList, wordProbability } from './numbers.ts';
import { practiceWords } from './practice.ts';

const { minutes } = practiceWords;

/** Words of a look back. */
export const debriefWords = {
  guessed: (share: string) =>
    `It was a guess: what had been seen spoke for it at ${share}. On a machine the wrong part may well have been exchanged.`,
  ended: (own: number, best: number) => `It ended after ${minutes(own)}. The best plan needs ${minutes(best)}.`,
  ruledOut: (answers: string) => `Rules out ${answers}.`,
  leaves: (answers: string) => `Left: ${answers}.`,
  ruledNothingOut: 'Rules nothing out, but may make some of it likelier.',
  narrowed: (before: number, after: number) => `Leaves ${after} of ${before} ways in which these things may be wrong together.`,
  toldNothing: (outcome: string) => `It could tell nothing: whatever of what was left is wrong, it shows ${outcome}.`,
  certain: (answer: string) => `One step too many: only ${answer} fitted what was seen.`,
  right: (outcome: string) => `You expected ${outcome}: right.`,
  wrong: (outcome: string) => `You expected ${outcome}: not so.`,
  suspectsShow: (answers: string, outcomes: string) => `With ${answers}, which you suspected, it shows ${outcomes}.`,
  wrongAll: (answers: string) => `Nothing that you suspected was possible any more: ${answers}.`,
  best: 'The best choice.',
  asGood: 'As good as the best choice, within a tenth or two minutes.',
  better: (step: string) => `Better: ${step}.`,
  tells: (outcome: string, answers: string) => `${outcome} leaves ${answers}`,
  instead: (own: number | null, best: number | null) =>
    best === null
      ? ''
      : own === null
        ? `From there ${minutes(best)} to the end; your choice led to no certain end.`
        : `From there ${minutes(best)} to the end on average, instead of ${minutes(own)}.`,
  more: (count: number) => `${count} more`,
  planSteps: 'The best plan, step by step',
  noSteps: 'No step was taken.',
  /** Cautions that the step was asked for, and that were not ticked. */
  forgotten: (cautions: string) => `Not heeded: ${cautions}.`,
  noPlan: 'What was known at the start decided it.',
  notSaved: 'The result under this code is not saved yet.',
  leave: 'Leave without saving',
} as const;

/** So many answers are named, then they are counted. */
const mostNamed = 3;

/** Of answers of several things these things are named: what belongs together nobody could read. */
function wordAnswers(names: Names, game: Game, answers: readonly string[], join: 'and' | 'or'): string {
  const things = [...new Set(answers.flatMap((answer) => answer.split(joint)))];
  const named = things.slice(0, things.length > mostNamed + 1 ? mostNamed : mostNamed + 1);
  const words = named.map((key) => wordAnswerKey(names, game.cabinet, key));
  const more = things.length - named.length;
  return wordList(more > 0 ? [...words, debriefWords.more(more)] : words, join);
}

/** Between the things of one answer. */
const joint = ' + ';

/** What was seen, as far as it says something of what may be wrong. */
export function wordRuledOut(names: Names, game: Game, before: readonly Share[], after: readonly Share[]): string {
  const thingsOf = (shares: readonly Share[]) => [...new Set(shares.flatMap(({ answer }) => answer.split(joint)))];
  const left = thingsOf(after);
  const gone = thingsOf(before).filter((thing) => !left.includes(thing));
  if (gone.length === 0)
    return after.length < before.length ? debriefWords.narrowed(before.length, after.length) : debriefWords.ruledNothingOut;
  return `${debriefWords.ruledOut(wordAnswers(names, game, gone, 'and'))} ${debriefWords.leaves(wordAnswers(names, game, left, 'or'))}`;
}

/** A step looked back on: what it told, how the prediction fits what was suspected, and why another choice would have been better. */
export function wordLookedBack(
  names: Names,
  game: Game,
  one: DebriefStep,
): { readonly told: string; readonly predicted: string; readonly choice: string } {
  const step = game.steps.find(({ id }) => id === one.step);
  if (step === undefined) return { told: '', predicted: '', choice: '' };
  const outcomeOf = (outcome: string) => wordExerciseOutcome(names, step, outcome);
  const isSure = one.before.length === 1 && one.better === null;
  const told =
    !one.taught && !isSure
      ? debriefWords.toldNothing(outcomeOf(one.outcome))
      : isSure
        ? ''
        : wordRuledOut(names, game, one.before, one.after);
  return { told, predicted: wordPrediction(names, game, one, outcomeOf), choice: wordChoice(names, game, one) };
}

function wordPrediction(names: Names, game: Game, one: DebriefStep, outcomeOf: (outcome: string) => string): string {
  if (one.predicted === null) return '';
  if (one.predictedRight === true) return debriefWords.right(outcomeOf(one.predicted));
  const holds = ({ leaves }: Told) => leaves.some((answer) => one.suspects.some((suspect) => isPart(answer, suspect)));
  const shown = one.couldTell.filter(holds).map(({ outcome }) => outcomeOf(outcome));
  const suspects = wordAnswers(names, game, one.suspects, 'or');
  const why =
    one.suspects.length === 0
      ? ''
      : shown.length === 0
        ? debriefWords.wrongAll(suspects)
        : debriefWords.suspectsShow(suspects, wordList(shown, 'or'));
  return `${debriefWords.wrong(outcomeOf(one.predicted))} ${why}`.trim();
}

function isPart(answer: string, suspect: string): boolean {
  return answer === suspect || answer.split(joint).includes(suspect);
}

function wordChoice(names: Names, game: Game, one: DebriefStep): string {
  if (one.judgement === 'best') return debriefWords.best;
  if (one.judgement === 'as-good') return debriefWords.asGood;
  const better = game.steps.find(({ id }) => id === one.better);
  if (better === undefined)
    return debriefWords.certain(
      wordAnswers(
        names,
        game,
        one.before.map(({ answer }) => answer),
        'or',
      ),
    );
  const tells = one.betterTells.map(({ outcome, leaves }) =>
    debriefWords.tells(wordExerciseOutcome(names, better, outcome), wordAnswers(names, game, leaves, 'or')),
  );
  const parts = tells.length > 1 ? `${startSentence(tells.join('; '))}.` : '';
  return [debriefWords.better(wordExerciseStep(names, better)), parts, debriefWords.instead(one.expectedMinutes, one.bestMinutes)]
    .filter(Boolean)
    .join(' ');
}

/** What it took beside what the best plan takes. */
export function wordNeeded({ end, minutes: own, planMinutes }: Pick<Debrief, 'end' | 'minutes' | 'planMinutes'>): string {
  return end === 'solved' ? practiceWords.needed(own, planMinutes) : debriefWords.ended(own, planMinutes);
}

/** From here on what was seen speaks for one answer alone. */
const spokenFor = 0.95;

/** That a right answer was a guess: what had been seen did not speak for it alone. Empty where it did, or where nothing right was named. */
export function wordGuess({ end, namedShare }: Pick<Debrief, 'end' | 'namedShare'>): string {
  return end === 'solved' && namedShare !== null && namedShare < spokenFor ? debriefWords.guessed(wordProbability(namedShare)) : '';
}
