import type { ReactFlowInstance } from 'reactflow';
import type { Placement } from '../canvas/placement.ts';
import type { Point } from '../canvas/views.ts';
import type { Dispatch, Workbench } from '../state/dispatcher.ts';
import type { GestureStore } from './gesture.ts';

/** What a gesture works on: the document, the gesture itself, and the drawing as it stands on the screen. */
export interface DrawingSurface {
  readonly store: Workbench['store'];
  readonly dispatch: Dispatch;
  readonly gestures: GestureStore;
  readonly flow: Pick<ReactFlowInstance, 'screenToFlowPosition' | 'flowToScreenPosition' | 'getViewport' | 'setViewport'>;
  readonly frame: { readonly current: HTMLElement | null };
  /** The drawing without any place held open, as it was drawn last. */
  readonly placement: () => Placement;
}

/** What is used of a pointer: where it is on the screen. */
export interface Pointing {
  readonly clientX: number;
  readonly clientY: number;
}

export const onScreen = ({ clientX, clientY }: Pointing): Point => ({ x: clientX, y: clientY });

/** Where a pointer is on the drawing. */
export const onDrawing = ({ flow }: DrawingSurface, event: Pointing): Point => flow.screenToFlowPosition(onScreen(event));

export function isOver({ frame }: DrawingSurface, { clientX: x, clientY: y }: Pointing): boolean {
  const box = frame.current?.getBoundingClientRect();
  return box !== undefined && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}
