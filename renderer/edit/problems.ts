import { compareProblems, type Problem, severities } from '../../engine/base/index.ts';
import type { CheckedCabinet } from '../../engine/cabinet/index.ts';
import { problemsWithSums } from '../sums/selectSums.ts';

/** What is wrong with the cabinet by its checks and by its sums, the worst first. */
export function allProblems({ topology, problems }: CheckedCabinet): readonly Problem[] {
  const rank = ({ severity }: Problem) => severities.indexOf(severity);
  return [...problemsWithSums(topology, problems)].sort((a, b) => rank(a) - rank(b) || compareProblems(a, b));
}
