export { Planner, type StepWorth } from './bestPlan.ts';
export { listPossible } from './candidates.ts';
export { checkAnswer, openExercise } from './checkExercise.ts';
export { checksum } from './checksum.ts';
export { type ClassRow, classCsv, classTable } from './classTable.ts';
export { type Debrief, type DebriefStep, debrief, type Judgement, type PlanStep, type Share } from './debrief.ts';
export { levelOf, measure } from './figures.ts';
export {
  answerKey,
  type Game,
  type GameStep,
  makeGame,
  type Stand,
  sparesLeft,
  startBelief,
  startStand,
  stepMinutes,
  whyNot,
} from './game.ts';
export { generateExercise, generateSet, type KindText, type KindTexts } from './generate.ts';
export { type ExerciseWish, type MadeExercise, makeExercise } from './makeExercise.ts';
export { type Play, type PlayEnd, type PlayedStep, play, type RefusedMove, startPlay } from './play.ts';
export { checkResult, makeResult, resultChecksum } from './result.ts';
export { asksCautions, cautionsOf } from './safety.ts';
export { plainChecksum } from './seal.ts';
