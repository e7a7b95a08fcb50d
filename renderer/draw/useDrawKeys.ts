import { useCallback, useEffect, useRef } from 'react';
import type { Topology } from '../../engine/topology/index.ts';
import type { Placement } from '../canvas/placement.ts';
import { walkLines } from '../canvas/walkLines.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import type { Arrangement } from './drawState.ts';
import { focusThing, thingOf } from './elements.ts';

/** The things of the drawing line by line, as arrows walk them: the controller's port, cable, unit, cable, unit …; or row by row. */
export function drawingLines(topology: Topology, placement: Placement, arrangement: Arrangement): readonly (readonly string[])[] {
  if (arrangement === 'mounting') {
    return placement.rows.map((_row, index) =>
      [...placement.units]
        .filter(([, { row }]) => row === index)
        .sort(([, a], [, b]) => a.x - b.x)
        .map(([id]) => id),
    );
  }
  const chains: readonly (readonly string[])[] = topology.chains.map(({ id, units, links }) => [
    id,
    ...units.flatMap((unit, index) => [...(links[index] === undefined ? [] : [links[index]]), unit]),
  ]);
  const walked = new Set(topology.chains.flatMap(({ links }) => links));
  const others = (topology.content.links ?? []).flatMap(({ id }) => ((walked as ReadonlySet<string>).has(id) ? [] : [id]));
  const apart = [...topology.orphans, ...topology.offChain, ...topology.supplies];
  return [...chains, apart, others].filter((line) => line.length > 0);
}

/** Keys on the drawing: arrows walk along cables and units and choose them, with Shift more and more of them; Ctrl+Space toggles one. */
export function useDrawKeys(placement: Placement) {
  const { store, dispatch } = useWindow();
  const latest = useRef(placement);
  latest.current = placement;
  return useCallback(
    (event: React.KeyboardEvent) => {
      if (!(event.target instanceof HTMLElement) || event.altKey) return;
      const here = thingOf(event.target);
      if (here === null) return;
      if (event.key === ' ' && (event.ctrlKey || event.metaKey)) {
        event.preventDefault();
        dispatch('choose', { ids: [here], how: 'toggle' });
        return;
      }
      if (event.ctrlKey || event.metaKey || (event.shiftKey && !event.key.startsWith('Arrow'))) return;
      const state = store.getState();
      const lines = drawingLines(state.checked.topology, latest.current, state.draw.arrangement);
      const next = walkLines(lines, (id) => id === here, event.key);
      if (next === null) return;
      event.preventDefault();
      dispatch('choose', { ids: [next], how: event.shiftKey ? 'add' : 'only' });
      focusThing(next);
    },
    [store, dispatch],
  );
}

/** So many frames may pass until a new thing is drawn. */
const mostTries = 20;

/** The focus follows what is chosen last, as long as it is on the drawing or nowhere: after an edit one goes on from there. */
export function useFocusChosen(frame: React.RefObject<HTMLElement | null>) {
  const chosen = useApp((state) => state.draw.chosen);
  useEffect(() => {
    const last = chosen[chosen.length - 1];
    if (last === undefined) return undefined;
    let tries = 0;
    let waiting = 0;
    // What is new is drawn a moment later.
    const attempt = () => {
      const active = document.activeElement;
      // A menu or a list that is being closed gives the focus back a moment later.
      const closing = active?.closest('[role="menu"], [role="dialog"]') != null;
      if (!closing && active !== document.body && !frame.current?.contains(active)) return;
      tries += 1;
      if ((closing || !focusThing(last)) && tries < mostTries) waiting = requestAnimationFrame(attempt);
    };
    attempt();
    return () => cancelAnimationFrame(waiting);
  }, [chosen, frame]);
}
