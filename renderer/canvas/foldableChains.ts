import { spotKey, spotOf } from '../find/candidates.ts';
import { selectFindModel } from '../find/findModel.ts';
import { selectInjectModel } from '../inject/injectModel.ts';
import { foldableInSimulation } from '../inject/simViews.ts';
import type { AppState } from '../state/appState.ts';

/** Chains that no suspect of note lies on; they may be folded to one line. As one text, so that an equal answer is the same. */
export function foldableChains(state: AppState): string {
  const simulated = selectInjectModel(state);
  if (simulated) return foldableInSimulation(simulated);
  const model = selectFindModel(state);
  const { topology } = state.checked;
  if (topology.chains.length < 2) return '';
  const involved = new Set<string>();
  const rows = model.rows.filter((row) => row.candidate.probability >= 0.01 || row === model.chosen);
  for (const { candidate } of rows) {
    for (const { fault } of candidate.parts) {
      const key = spotKey(spotOf(fault));
      for (const chain of topology.chains) {
        const own = [`chain-port/${chain.id}`, ...chain.links.map((link) => `link/${link}`), ...chain.units.map((unit) => `unit/${unit}`)];
        if (own.includes(key)) involved.add(chain.id);
      }
    }
  }
  // Where nobody is suspected yet, the first chain is the one to begin with.
  const kept = involved.size > 0 ? involved : new Set<string>(topology.chains.slice(0, 1).map(({ id }) => id));
  return topology.chains
    .filter(({ id }) => !kept.has(id))
    .map(({ id }) => id)
    .join(' ');
}
