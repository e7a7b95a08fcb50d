import { type DrawingSurface, isOver, onDrawing, onScreen, type Pointing } from './drawingSurface.ts';
import type { Gesture } from './gesture.ts';
import { targetAt } from './gestureTargets.ts';
import { type Carried, copyTarget, previewDrop } from './preview.ts';

/** Shows where what is carried would go, and what that would do. */
export function carryTo(surface: DrawingSurface, carried: Carried, event: Pointing & { readonly altKey: boolean }): void {
  const { gestures, store } = surface;
  const pointer = onScreen(event);
  const state = store.getState();
  const before = gestures.getState().gesture;
  // Alt: of what is there a copy; what comes from the shelf goes beside the chains.
  const now: Carried = carried.kind === 'new' ? carried : { kind: event.altKey ? 'copy' : 'move', units: carried.units };
  const beside = carried.kind === 'new' && event.altKey;
  const target = isOver(surface, event) ? targetAt(state, surface.placement(), now, onDrawing(surface, event), beside, pointer) : null;
  const same = before.kind === 'carry' && before.carried.kind === now.kind && JSON.stringify(before.target) === JSON.stringify(target);
  const preview = same ? before.preview : target && previewDrop(state, now, target);
  gestures.setState({
    gesture: { kind: 'carry', carried: same ? before.carried : now, pointer, target: same ? before.target : target, preview },
  });
}

/** Puts down what is carried; over nothing that takes it, nothing is done. */
export function putDown({ dispatch }: DrawingSurface, { carried, target }: Gesture & { readonly kind: 'carry' }): void {
  if (!target) return;
  const { spot, place } = target;
  if (carried.kind === 'new') {
    dispatch('insert-units', { units: [{ kind: carried.unit }], spot, ...(place === null ? {} : { place }) });
  } else if (carried.kind === 'copy') {
    dispatch('duplicate-things', { ids: carried.units, target: copyTarget(target) });
  } else {
    dispatch('move-units', { ids: carried.units, to: place ?? spot });
  }
}
