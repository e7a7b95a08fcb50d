import type { CabinetContent } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import type { Workbench } from '../state/dispatcher.ts';

/** After each edit in Draw what is new is chosen and brought into view; so is what undo brings back. Returns how to stop. */
export function followEdits({ store, dispatch }: Workbench): () => void {
  return store.subscribe((state, before) => {
    if (state.cabinet === before.cabinet || state.source !== before.source || state.workspace !== 'draw') return;
    const fresh = freshThings(state, before);
    if (fresh.length > 0) dispatch('choose', { ids: fresh, how: 'only' });
    const shown = fresh[0] ?? (state.spotlight === before.spotlight ? null : state.spotlight?.subject);
    if (shown === null || shown === undefined) return;
    if (fresh.length === 0) dispatch('choose', { ids: [shown], how: 'only' });
    dispatch('show-on-cabinet', { subject: shown });
  });
}

/** Ids of new units; where none is new, of new cables, then of new leads. */
function freshThings({ cabinet, checked: { topology } }: AppState, { cabinet: before }: AppState): readonly string[] {
  for (const list of ['units', 'links', 'leads'] as const) {
    const ids = newIn(cabinet, before, list);
    if (ids.length > 0) return lastOnChain(topology, ids);
  }
  return [];
}

/** What hangs on a chain comes last, in its order: the last one is gone on from. */
function lastOnChain(topology: Topology, ids: readonly string[]): readonly string[] {
  const order = new Map<string, number>(topology.chains.flatMap(({ units }) => units).map((id, at) => [id, at]));
  return [...ids].sort((a, b) => (order.get(a) ?? -1) - (order.get(b) ?? -1));
}

function newIn(cabinet: CabinetContent, before: CabinetContent, list: 'units' | 'links' | 'leads'): readonly string[] {
  if (cabinet[list] === before[list]) return [];
  const known = new Set((before[list] ?? []).map(({ id }) => id));
  return (cabinet[list] ?? []).map(({ id }) => id).filter((id) => !known.has(id));
}
