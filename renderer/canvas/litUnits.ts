import { placesOfStep, selectShownStep } from '../find/stepModel.ts';
import type { AppState } from '../state/appState.ts';
import { currentSnapshot, findReport } from '../state/evidence.ts';

const nobody: ReadonlySet<string> = new Set();
let last: { readonly key: string; readonly lit: ReadonlySet<string> } = { key: '', lit: nobody };

/** What lights up: the physical units on both sides of the gap that is being entered; else the units and links of the step that was asked for. */
export function litUnits(state: AppState): ReadonlySet<string> {
  const { entry } = state;
  if (entry?.kind !== 'report') return remembered(state.chosenStep === null ? [] : placesOfShownStep(state));
  const chain = state.checked.topology.chains.find(({ id }) => id === entry.chain);
  const gaps = findReport(currentSnapshot(state.caseRecord), entry.chain)?.gaps ?? [];
  const lit = gaps
    .flatMap((gap) => (gap === 'none' ? [] : [chain?.units[gap - 2], chain?.units[gap - 1]]))
    .filter((unit) => unit !== undefined);
  return remembered(lit);
}

/** Where the step is done that was asked for. */
function placesOfShownStep(state: AppState): readonly string[] {
  const shown = selectShownStep(state);
  return shown ? placesOfStep(shown.step, state.checked.topology) : [];
}

/** The same set as long as it has the same members. */
function remembered(ids: readonly string[]): ReadonlySet<string> {
  if (ids.length === 0) return nobody;
  const key = ids.join(' ');
  if (key !== last.key) last = { key, lit: new Set(ids) };
  return last.lit;
}
