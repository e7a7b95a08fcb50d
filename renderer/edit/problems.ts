import { compareProblems, type Problem, severities } from '../../engine/base/index.ts';
import type { CheckedCabinet } from '../../engine/cabinet/index.ts';

/** What is wrong with the cabinet, the worst first. */
export function allProblems({ problems }: Pick<CheckedCabinet, 'problems'>): readonly Problem[] {
  const rank = ({ severity }: Problem) => severities.indexOf(severity);
  return [...problems].sort((a, b) => rank(a) - rank(b) || compareProblems(a, b));
}
