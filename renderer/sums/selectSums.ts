import { compareProblems, type Problem } from '../../engine/base/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { changeFigures, computeSums, type FigureChange, type Sums } from '../../engine/sums/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';

/** Sums with what they were worked out from, and every problem of the cabinet with them. */
export interface SumsAnswer {
  readonly topology: Topology;
  readonly sums: Sums;
  readonly problems: readonly Problem[];
}

const known = new WeakMap<Topology, Sums>();

/** The sums of a topology; worked out once for each, which is once for each change of the document. */
export function sumsOf(topology: Topology): Sums {
  const sums = known.get(topology) ?? computeSums(topology);
  known.set(topology, sums);
  return sums;
}

const joined = new WeakMap<Topology, readonly Problem[]>();

/** Everything wrong with a cabinet: what its checks find, and what its sums find. */
export function problemsWithSums(topology: Topology, problems: readonly Problem[]): readonly Problem[] {
  const all = joined.get(topology) ?? [...problems, ...sumsOf(topology).problems].sort(compareProblems);
  joined.set(topology, all);
  return all;
}

/** Every problem of the document's cabinet. */
export function selectProblems({ checked }: AppState): readonly Problem[] {
  return problemsWithSums(checked.topology, checked.problems);
}

/** How long the DC link takes to fall to 60 V by the document's own figures, never by tried ones; null: not known. */
export function selectWaitingTime({ checked }: AppState): number | null {
  return sumsOf(checked.topology).waitingTimeS;
}

let last: { readonly content: CabinetContent; readonly tried: readonly FigureChange[]; readonly answer: SumsAnswer } | null = null;

/** The sums with the tried figures; null while nothing is tried. */
export function selectTried({ cabinet, sums: { tried } }: AppState): SumsAnswer | null {
  if (tried.length === 0) return null;
  if (last?.content === cabinet && last.tried === tried) return last.answer;
  const { topology, problems } = checkCabinet(changeFigures(cabinet, tried));
  const answer = { topology, sums: sumsOf(topology), problems: problemsWithSums(topology, problems) };
  last = { content: cabinet, tried, answer };
  return answer;
}
