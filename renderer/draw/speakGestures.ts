import { useEffect } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { drawWords, startSentence, unitKindWords, wordProblem } from '../../engine/messages/index.ts';
import type { AppState } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { useDrawing } from './DrawingContext.ts';
import type { Gesture, GestureStore } from './gesture.ts';
import { wordPull } from './pulling.ts';

/** A place is told once the pointer rests so long on it: what is only crossed is no news. Milliseconds. */
const rest = 350;

interface Told {
  readonly gestures: GestureStore;
  readonly store: Pick<StoreApi<AppState>, 'getState'>;
  readonly announce: (text: string) => void;
}

/** Tells a screen reader what a drag takes hold of, where it would land, and how it ended. Returns how to stop. */
export function speakGestures({ gestures, store, announce }: Told): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let where = '';
  const unsubscribe = gestures.subscribe(({ gesture }, { gesture: before }) => {
    const state = store.getState();
    const [held, wasHeld] = [takenHold(state, gesture), takenHold(state, before)];
    if (held !== null) {
      if (wasHeld === null) {
        where = '';
        announce(drawWords.said.taken(held));
      }
      const there = wordTarget(state, gesture);
      if (there === where) return;
      where = there;
      clearTimeout(timer);
      timer = setTimeout(() => announce(there), rest);
      return;
    }
    if (wasHeld === null) return;
    clearTimeout(timer);
    // The command of a drop runs right after the gesture has ended.
    queueMicrotask(() => {
      const after = store.getState();
      if (after.cabinet !== state.cabinet) announce(drawWords.said.dropped(after.history.past[after.history.past.length - 1]?.name ?? ''));
      else if (after.refusal === state.refusal && gestures.getState().gesture.kind === 'none') announce(drawWords.said.putBack);
    });
  });
  return () => {
    clearTimeout(timer);
    unsubscribe();
  };
}

/** What a gesture holds, in words; null: nothing. */
function takenHold({ checked: { topology } }: AppState, gesture: Gesture): string | null {
  const names = namesOf(topology);
  if (gesture.kind === 'carry') {
    const { carried } = gesture;
    return carried.kind === 'new'
      ? drawWords.said.newUnit(unitKindWords[carried.unit])
      : drawWords.things(carried.units.map((id) => names.unit(id)));
  }
  if (gesture.kind !== 'pull') return null;
  const { pulled } = gesture;
  switch (pulled.kind) {
    case 'plug':
      return drawWords.said.plug(pulled.end, names.link(pulled.link));
    case 'cable':
      return names.link(pulled.link);
    case 'new':
      return drawWords.shelf.newCable;
    case 'port':
      return drawWords.said.newCable;
    case 'feed':
      return drawWords.said.newLead(names.unit(pulled.unit));
  }
}

/** What letting go would do now. */
function wordTarget(state: AppState, gesture: Gesture): string {
  const { cannot } = drawWords.drop;
  const refused = (problem: Parameters<typeof wordProblem>[0]) => `${cannot}: ${wordProblem(problem).title}.`;
  if (gesture.kind === 'carry') {
    if (gesture.preview === null) return drawWords.said.nowhere;
    const { title, detail, refusal } = gesture.preview;
    return refusal ? refused(refusal) : `${startSentence(title)}. ${detail}`.trim();
  }
  if (gesture.kind !== 'pull') return '';
  return gesture.refusal ? refused(gesture.refusal) : `${startSentence(wordPull(state, gesture))}.`;
}

/** Tells the drags of the drawing. */
export function useSpokenGestures(): void {
  const { gestures } = useDrawing();
  const { store, announce } = useWindow();
  useEffect(() => speakGestures({ gestures, store, announce }), [gestures, store, announce]);
}
