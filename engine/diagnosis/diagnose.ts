import type { Evidence } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { findContradiction } from './contradiction.ts';
import { makeGroups } from './groups.ts';
import { rankBehaviours, rankHypotheses, rankItems } from './ranking.ts';
import { type DiagnosisOptions, prepare, runSearch, type Searched } from './searched.ts';
import type { Diagnosis } from './types.ts';

/**
 * The diagnosis of domain section 6: all single faults and all pairs, weighed against the evidence. Probabilities are between 0 and 1.
 * Evidence of things that are not in the cabinet is left out; evidence that excludes everything gives `impossible`, not an error.
 * Deterministic. Cost grows with the square of the units on one chain, with the trips seen, and with the number of scenarios where
 * behaviour or onset is unknown. Answers null only when `onProgress` gives up.
 */
export function diagnose(cabinet: Cabinet, evidence: Evidence, options?: DiagnosisOptions & { readonly onProgress?: undefined }): Diagnosis;
export function diagnose(cabinet: Cabinet, evidence: Evidence, options: DiagnosisOptions): Diagnosis | null;
export function diagnose(cabinet: Cabinet, evidence: Evidence, options: DiagnosisOptions = {}): Diagnosis | null {
  const searched = runSearch(prepare(cabinet, evidence), options);
  return searched === null ? null : report(searched);
}

function report(searched: Searched): Diagnosis {
  const { prepared, result, offset } = searched;
  const isImpossible = result.total === 0;
  const groups = makeGroups(searched);
  return {
    items: rankItems(searched),
    hypotheses: rankHypotheses(searched, groups),
    groups: groups.list,
    nothingBroken: result.nothing,
    unvisitedShare: isImpossible ? 1 : shareOf(result.unvisitedOdds, result.total * Math.exp(offset)),
    contradiction: findContradiction(searched),
    impossible: isImpossible,
    behaviours: rankBehaviours(searched),
    notes: prepared.notes,
    hypothesesVisited: result.visited,
  };
}

/** R·L / (Z + R·L) of domain section 6, with Z already divided by L. */
function shareOf(unvisitedOdds: number, total: number): number {
  return unvisitedOdds === 0 ? 0 : unvisitedOdds / (total + unvisitedOdds);
}
