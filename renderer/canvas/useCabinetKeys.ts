import { useCallback } from 'react';
import type { UnitId } from '../../engine/base/index.ts';
import { windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import { entryChoices } from '../find/entryChoices.ts';
import { meantKey } from '../find/entryKeys.ts';
import { stepWalk } from '../find/entryWalk.ts';
import { currentSnapshot, seenMeanings } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { nextUnit } from './neighbours.ts';
import { chainElementId, focusUnit } from './unitElement.ts';

/** Keys on a unit: digits enter and go on along the walk, Backspace goes back on it, arrows move, R opens the report, Escape takes the prediction off. */
export function useCabinetKeys() {
  const { store, dispatch } = useWindow();
  return useCallback(
    (event: React.KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || !(event.target instanceof HTMLElement)) return;
      const state = store.getState();
      const { topology } = state.checked;
      const key = meantKey(event);
      if (event.key === 'Escape' && state.chosen.by !== 'nobody') {
        dispatch('choose-candidate', { chosen: { by: 'nobody' }, subject: null });
        return;
      }
      const unit = event.target.dataset['unit'] as UnitId | undefined; // written by the module from the unit's own id
      const chain = event.target.dataset['chain'];
      if (chain !== undefined && (event.key === 'ArrowRight' || event.key === 'ArrowDown')) {
        const first = topology.chains.find(({ id }) => id === chain)?.units[0];
        if (first) focusUnit(first);
        event.preventDefault();
      }
      if (unit === undefined) return;
      const next = nextUnit(topology, unit, key);
      if (next) {
        event.preventDefault();
        if (next.kind === 'unit') focusUnit(next.unit);
        else document.getElementById(chainElementId(next.chain))?.focus({ preventScroll: true });
        return;
      }
      const place = topology.placeOf.get(unit);
      if (event.key.toLowerCase() === 'r' && place) {
        event.preventDefault();
        dispatch('open-entry', { entry: { kind: 'report', chain: place.chain, walking: false } });
        return;
      }
      if (event.key === 'Backspace') {
        event.preventDefault();
        const before = stepWalk(topology, state.walkOrder, unit, -1);
        if (before) focusUnit(before);
        return;
      }
      const kind = topology.units.get(unit)?.kind ?? 'servo-drive';
      const choice = entryChoices(kind).find((one) => one.key === key);
      if (!choice) return;
      event.preventDefault();
      const names = namesOf(topology);
      if (choice.meanings.length === 0) dispatch('withdraw-display', { unit });
      else dispatch('enter-display', { unit, meanings: choice.meanings, at: new Date().toISOString() });
      const entered = windowTexts.entry.entered(names.unit(unit), wordMeanings(choice.meanings));
      const following = choice.meanings.length === 0 ? unit : stepWalk(topology, state.walkOrder, unit, 1);
      if (following === null || following === unit) {
        dispatch('announce', { text: following ? entered : `${entered} ${windowTexts.entry.walkEnd}` });
        return;
      }
      focusUnit(following);
      const words = wordMeanings(seenMeanings(currentSnapshot(store.getState().caseRecord), following));
      dispatch('announce', { text: `${entered} ${windowTexts.entry.next(names.unit(following), words)}` });
    },
    [store, dispatch],
  );
}
