import { compareProblems, type Problem } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { buildTopology, type Cabinet, type Topology } from '../topology/index.ts';
import {
  checkBehaviours,
  checkChains,
  checkFigures,
  checkIds,
  checkNames,
  checkParts,
  checkPlaces,
  checkReferences,
} from './checks/index.ts';

/** What a check of a cabinet answers. */
export interface CheckedCabinet {
  readonly topology: Topology;
  /** Everything found, by place. */
  readonly problems: readonly Problem[];
  /** The topology, fit to be simulated; `null` when a problem is an `error`. */
  readonly cabinet: Cabinet | null;
}

/**
 * Says whether a cabinet is sound: how it hangs together, and everything else that can be told without sums. An unfinished
 * cabinet is still one (`incomplete`); only an `error` stands in the way of simulating it. Never refuses anything.
 */
export function checkCabinet(content: CabinetContent): CheckedCabinet {
  const { topology, problems: topologyProblems } = buildTopology(content);
  const problems = [
    ...topologyProblems,
    ...checkIds(content, 'error'),
    ...checkReferences(topology),
    ...checkNames(content),
    ...checkPlaces(content),
    ...checkChains(topology),
    ...checkBehaviours(topology),
    ...checkParts(content),
    ...checkFigures(content),
  ].sort(compareProblems);
  const unsound = problems.some(({ severity }) => severity === 'error' || severity === 'refused');
  // The one place where a Cabinet is made: the brand says that the lines above found no error.
  return { topology, problems, cabinet: unsound ? null : (topology as Cabinet) };
}
