import { compareText } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { computeAxes } from './axes.ts';
import { computeDcLinks, longestDischarge } from './dcLink.ts';
import { computeFeed } from './feedSums.ts';
import { computeBudgets } from './opticalBudget.ts';
import { listSumProblems } from './problems.ts';
import type { MissingFigure } from './terms.ts';
import type { Sums } from './types.ts';

/**
 * Every sum that a cabinet must satisfy (domain section 8). Works for an unsound topology too, as far as it hangs together. Pure:
 * equal content gives an equal answer. For a what-if, change the content (`changeFigures`) and build its topology anew.
 */
export function computeSums(topology: Topology): Sums {
  const optical = computeBudgets(topology);
  const axes = computeAxes(topology);
  const feed = computeFeed(topology);
  const { links, unplaced } = computeDcLinks(topology);
  return {
    optical,
    axes,
    feed,
    dcLinks: links,
    waitingTimeS: longestDischarge(links, unplaced),
    problems: listSumProblems(topology, optical, feed, links),
    missing: onceEach([
      ...optical.flatMap(({ missing }) => missing),
      ...axes.flatMap(({ missing }) => missing),
      ...feed.missing,
      ...links.flatMap(({ missing }) => missing),
      ...unplaced,
    ]),
  };
}

function onceEach(missing: readonly MissingFigure[]): readonly MissingFigure[] {
  const found = new Map(missing.map((one) => [`${one.of ?? ''}/${one.figure}`, one]));
  return [...found].sort(([a], [b]) => compareText(a, b)).map(([, one]) => one);
}
