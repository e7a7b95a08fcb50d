export { formatCases } from './cases.ts';
export { formatDiagnosis } from './diagnosis.ts';
export { formatClass, formatExercise } from './exercise.ts';
export { formatPlan } from './plan.ts';
export { formatProblems } from './problems.ts';
export { wordRemarks } from './remarks.ts';
export { formatReplay, type ReplayedStep } from './replay.ts';
export { formatSimulation } from './simulation.ts';
export { formatSums } from './sums.ts';
