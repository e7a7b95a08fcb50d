export { appVersion } from './appVersion.ts';
export { makeFileName, type NameTrouble, nameTrouble } from './fileName.ts';
export type { ChainId, FeedbackId, LeadId, LegendId, LinkId, TypeId, UnitId } from './ids.ts';
export { jsonPointer } from './jsonPointer.ts';
export { nameList } from './nameList.ts';
export { compareNatural } from './naturalOrder.ts';
export { compareProblems, compareText, makeProblem, type Problem, type Severity, severities } from './problem.ts';
export { type ProblemCode, type ProblemFacts, problemCodes, problemFacts } from './problemCodes.ts';
export { assertNever, fail, ok, type Result } from './result.ts';
