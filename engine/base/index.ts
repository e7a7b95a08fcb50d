export type { ChainId, FeedbackId, LeadId, LegendId, LinkId, TypeId, UnitId } from './ids.ts';
export { compareProblems, compareText, makeProblem, type Problem, severities, type Severity } from './problem.ts';
export { assertNever, fail, ok, type Result } from './result.ts';
