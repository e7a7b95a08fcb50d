import type { Cabinet } from '../topology/index.ts';
import { makeClassBook } from './classBook.ts';
import type { FaultSpace } from './elements.ts';
import { evenSample, groupTrips, logSum } from './patterns.ts';
import type { Plan } from './plan.ts';
import type { Assumed, Scenario } from './scenarios.ts';
import { Weigher } from './weigher.ts';

/** Up to this many scenarios are all weighed with all pairs of faults. */
const alwaysWeighed = 16;
/** More than this many are not tried one by one: an even sample stands for all. */
const mostTried = 1024;
/** Kept are the likeliest that together hold this share of the weight of all single faults, but no more than so many. */
const keptShare = 0.999;
const mostKept = 24;

interface Trial {
  readonly scenario: Scenario;
  /** log of the weight of all single faults under it, times its share. */
  log: number;
  share: number;
  readonly alike: (readonly Assumed[])[];
}

/**
 * The scenarios worth weighing with pairs of faults, where behaviour is unknown in so many ways that all would take minutes: each
 * is weighed with single faults first, those that predict the same of them are taken as one, and the unlikely ones are left out.
 * Answers the list unchanged when it is short.
 */
export function narrowScenarios(cabinet: Cabinet, plan: Plan, space: FaultSpace, scenarios: readonly Scenario[]): readonly Scenario[] {
  if (scenarios.length <= alwaysWeighed) {
    return scenarios;
  }
  const tried = evenSample([...scenarios], mostTried);
  const scale = scenarios.length / tried.length;
  const book = makeClassBook(cabinet, plan, space, tried);
  const groups = groupTrips(plan);
  const trials = new Map<string, Trial>();
  for (const scenario of tried) {
    const weigher = new Weigher(book, plan, groups, scenario, 0);
    const logs = book.handles.map((handle) => weigher.logLikelihood(handle, null));
    const print = `${scenario.onsets.join()}|${logs.map((log) => log.toPrecision(9)).join()}`;
    const known = trials.get(print);
    const share = scenario.share * scale;
    if (known !== undefined) {
      known.share += share;
      known.alike.push(...scenario.alike);
      continue;
    }
    const log = book.handles.reduce(
      (sum, { weight }, index) => logSum(sum, Math.log(weight) + (logs[index] ?? 0)),
      weigher.logLikelihood(null, null),
    );
    trials.set(print, { scenario, log, share, alike: [...scenario.alike] });
  }
  const ordered = [...trials.values()].map((trial) => ({ ...trial, log: trial.log + Math.log(trial.share) })).sort((a, b) => b.log - a.log);
  const best = ordered[0]?.log ?? 0;
  const total = ordered.reduce((sum, { log }) => sum + Math.exp(log - best), 0);
  const kept: Scenario[] = [];
  let sum = 0;
  for (const { scenario, log, share, alike } of ordered) {
    // Where the evidence excludes everything, nothing is likelier than anything else.
    if (kept.length >= mostKept || (sum >= keptShare * total && kept.length > 0)) {
      break;
    }
    kept.push({ ...scenario, share, alike });
    sum += Math.exp(log - best);
  }
  return kept;
}
