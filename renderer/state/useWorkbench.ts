import { createContext, use } from 'react';
import { useStore } from 'zustand';
import type { AppState } from './appState.ts';
import type { CanvasControl, DrawActions } from './command.ts';
import type { Dispatch, Workbench } from './dispatcher.ts';

/** The workbench of the window, with what its parts register. */
export interface Window extends Workbench {
  readonly registerCanvas: (control: CanvasControl | null) => void;
  /** What Draw does with what is chosen. */
  readonly drawing: DrawActions;
  /** Gives up the search that is running. */
  readonly cancelDiagnosis: () => void;
  /** Starts it again. */
  readonly restartDiagnosis: () => void;
}

export const WindowContext = createContext<Window | null>(null);

export function useWindow(): Window {
  const found = use(WindowContext);
  if (!found) throw new Error('no window around this component');
  return found;
}

/** The smallest slice that a component needs; it is drawn again only when that changes. */
export function useApp<T>(selector: (state: AppState) => T): T {
  return useStore(useWindow().store, selector);
}

export function useDispatch(): Dispatch {
  return useWindow().dispatch;
}
