import { createContext, use } from 'react';
import { useStore } from 'zustand';
import type { Gesture, GestureStore, Pulled } from './gesture.ts';
import type { Carried } from './preview.ts';

/** What the parts of Draw share besides the document: the gesture that is going on, and how the shelf begins one. */
export interface Drawing {
  readonly gestures: GestureStore;
  /** Begins to carry something; set by the drawing as long as it is shown. */
  readonly begin: { current: ((event: React.PointerEvent, carried: Carried) => void) | null };
  /** Begins to pull a cable of which no end is plugged in. */
  readonly pull: { current: ((event: React.PointerEvent, pulled: Pulled) => void) | null };
}

export const DrawingContext = createContext<Drawing | null>(null);

export function useDrawing(): Drawing {
  const found = use(DrawingContext);
  if (!found) throw new Error('no drawing around this component');
  return found;
}

/** The smallest slice of the gesture that a component needs. */
export function useGesture<T>(selector: (gesture: Gesture) => T): T {
  return useStore(useDrawing().gestures, ({ gesture }) => selector(gesture));
}
