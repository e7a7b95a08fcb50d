export { actWords, wordAct } from './acts.ts';
export { behaviourWords, findValueWords, type ParameterWords, unknownBehaviourWords, wordBehaviourValue } from './behaviour.ts';
export { type CautionCode, cautionsDefer, cautionWords } from './cautions.ts';
export { wordContents, wordFindings } from './checks.ts';
export { circumstanceWords, wordCircumstance } from './circumstances.ts';
export {
  type CommandName,
  type CommandWords,
  commandWords,
  exitCodeWords,
  headings,
  type OptionWords,
  programWords,
  statements,
} from './commandLine.ts';
export { type ChangeWords, type ComparedSide, changeKindWords, comparisonWords, wordChange } from './comparison.ts';
export { debriefWords, wordGuess, wordLookedBack, wordNeeded, wordRuledOut } from './debrief.ts';
export {
  cannotTellApart,
  feedsNotDocumented,
  impossibleStatement,
  nothingBrokenLabel,
  rankedByRatesOnly,
  wordAgainstShort,
  wordAnswer,
  wordBehaviourBelief,
  wordCodesToLookUp,
  wordContradiction,
  wordHypothesis,
  wordNote,
  wordObservation,
  wordUnvisitedShare,
} from './diagnosis.ts';
export { drawWords } from './draw.ts';
export { editWords } from './edit.ts';
export {
  exerciseKindTexts,
  playEndWords,
  refusedWords,
  sealSays,
  solvedWords,
  unsafeWords,
  wordAnswerKey,
  wordWeakPassphrase,
} from './exercise.ts';
export { exercisePaperWords } from './exercisePaper.ts';
export {
  classHeads,
  exerciseWords,
  namesForPlay,
  wordExerciseOutcome,
  wordExerciseStep,
  wordGiven,
  wordPossible,
} from './exerciseSheet.ts';
export {
  confirmedWords,
  experienceWords,
  wordCases,
  wordCauseKind,
  wordClue,
  wordClueShort,
  wordDifference,
  wordFactor,
  wordNotCounted,
  wordRate,
} from './experience.ts';
export {
  momentWords,
  wordDisplayReason,
  wordDisplayTerm,
  wordFibreCause,
  wordGap,
  wordGaps,
  wordReport,
  wordReportReason,
  wordUnitCause,
} from './explanations.ts';
export { itemKindWords, modeWords, type Tense, wordFault, wordFaultClause, wordItem, wordMode, wordTheItem } from './faults.ts';
export { type FieldGroup, fieldGroups, fieldGroupWords, groupOfField, wordFieldValue } from './fieldChoices.ts';
export { type FieldWords, fieldTableWords, fieldWords, wordField } from './fields.ts';
export { type DifferenceCounts, fileWords } from './fileWords.ts';
export { glossary } from './glossary.ts';
export { wordGroupThing } from './groups.ts';
export { checkWords, endTexts, handBackTexts, reportWords, wordPartOwner } from './handBack.ts';
export { type HelpTopic, helpTopics, helpWords } from './help.ts';
export {
  type HopFacts,
  injectWords,
  type ShownChange,
  wordFaultTag,
  wordHop,
  wordHopStart,
  wordInjectedClause,
  wordShortReason,
  wordShows,
} from './inject.ts';
export { type CodeTrouble, legendWords, parameterHead } from './legend.ts';
export { healthyLooksDark, type LookKind, lookWords, wordFound, wordLook, wordLookHere, wordLookPlace, wordOutcomes } from './looks.ts';
export { makeNames, type Names, withoutCable } from './names.ts';
export { startSentence, wordCount, wordList, wordProbability, wordUpperBound } from './numbers.ts';
export {
  doorSheetWords,
  drawingWords,
  exportWords,
  importTexts,
  isolationWords,
  type PaperKind,
  paperKinds,
  paperKindWords,
  papersWords,
  paperWords,
  patternSheetWords,
  photoWords,
  printWords,
  sumsPaperWords,
  wordIsolation,
} from './papers.ts';
export {
  changeEffectWords,
  endReasonWords,
  endStateWords,
  planTexts,
  replayTexts,
  stateNames,
  wordDisplaced,
  wordMethod,
  wordMinutes,
  wordReplayStep,
  wordRisk,
  wordUseless,
} from './plan.ts';
export { practiceWords } from './practice.ts';
export {
  classWords,
  type DraftProblem,
  draftProblemWords,
  generateWords,
  levelWords,
  makeWords,
  practiceSkipWords,
  practiceTabWords,
  wordFigures,
  wordLevel,
  wordSolved,
} from './practiceMake.ts';
export { severityWords, wordProblem } from './problems.ts';
export { formatName } from './problemsOfFiles.ts';
export type { ProblemWords } from './problemWords.ts';
export { shellWords, startWords } from './programWords.ts';
export { wordDuration, wordNumber, wordTermValue } from './quantities.ts';
export { entryWords, quickWords } from './quick.ts';
export { rateTableWords } from './rateTable.ts';
export { repairTableWords, wordActKind, wordItemModes } from './repairTable.ts';
export {
  isAboutPower,
  riskWords,
  sideTexts,
  stepCardTexts,
  touchedTexts,
  wordBefore,
  wordDisplacedShort,
  wordMending,
  wordMethodShort,
  wordPart,
  wordPlainSteps,
  wordPutBack,
  wordTimeSpan,
} from './stepCard.ts';
export {
  machineStateWords,
  stepTexts,
  wordActsDone,
  wordCaution,
  wordCautionDetail,
  wordCautionShort,
  wordItemShort,
  wordStep,
  wordStepDone,
  wordStepOutcome,
  wordStepPlace,
  wordStepTitle,
  wordStepTried,
} from './steps.ts';
export {
  figureWords,
  sumHeadings,
  sumStatements,
  termBasisWords,
  termStatusWords,
  termWords,
  verdictWords,
  wordFigureChange,
  wordMissing,
  wordTerm,
  wordWaitingTime,
} from './sums.ts';
export { figureUnits, sumsPageWords, wordTriedFigure } from './sumsPage.ts';
export { importWords, tableKindWords, tableWords, wordDoes, wordDoubt, wordFieldChange, wordImport } from './tables.ts';
export { type ThingWord, thingWords, type UsageCode, type UsageFacts, type UsageProblem, wordUsage } from './usage.ts';
export { type CommandLabel, type CountedPlace, windowTexts } from './window.ts';
export {
  directionWords,
  endWords,
  groupWords,
  haltedWords,
  meaningSetWords,
  meaningWords,
  onsetWords,
  positionKeepingWords,
  presenceWords,
  type Term,
  unitKindWords,
  wordMeanings,
  wordOnset,
} from './words.ts';
