import type { AppState } from '../state/appState.ts';
import { currentSnapshot, findReport } from '../state/evidence.ts';

const nobody: ReadonlySet<string> = new Set();
let last: { readonly key: string; readonly lit: ReadonlySet<string> } = { key: '', lit: nobody };

/** The physical units on both sides of the gap that is being entered: they light up while the report is typed. */
export function litUnits(state: AppState): ReadonlySet<string> {
  const { entry } = state;
  if (entry?.kind !== 'report') return nobody;
  const chain = state.checked.topology.chains.find(({ id }) => id === entry.chain);
  const gaps = findReport(currentSnapshot(state.caseRecord), entry.chain)?.gaps ?? [];
  const lit = gaps
    .flatMap((gap) => (gap === 'none' ? [] : [chain?.units[gap - 2], chain?.units[gap - 1]]))
    .filter((unit) => unit !== undefined);
  const key = lit.join(' ');
  if (key !== last.key) last = { key, lit: new Set(lit) };
  return last.lit;
}
