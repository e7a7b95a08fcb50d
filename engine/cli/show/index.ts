export { formatDiagnosis } from './diagnosis.ts';
export { formatProblems } from './problems.ts';
export { wordRemarks } from './remarks.ts';
export { formatSimulation } from './simulation.ts';
export { formatSums } from './sums.ts';
