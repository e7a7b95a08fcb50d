import { useEffect, useMemo, useRef } from 'react';
import { useReactFlow } from 'reactflow';
import type { Placement } from '../canvas/placement.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { useDrawing } from './DrawingContext.ts';
import { type DrawingGestures, makeDrawingGestures } from './drawingGestures.ts';

interface Options {
  readonly frame: React.RefObject<HTMLElement | null>;
  /** The drawing without any place held open. */
  readonly placement: Placement;
}

/** The gestures of the drawing as long as it is shown; the shelf begins its own through the drawing's context. */
export function useGestures({ frame, placement }: Options): DrawingGestures {
  const { store, dispatch } = useWindow();
  const { gestures, begin, pull } = useDrawing();
  const flow = useReactFlow();
  const latest = useRef(placement);
  latest.current = placement;
  const made = useMemo(
    () => makeDrawingGestures({ store, dispatch, gestures, flow, frame, placement: () => latest.current }),
    [store, dispatch, gestures, flow, frame],
  );
  useEffect(() => made.stop, [made]);
  useEffect(() => {
    begin.current = made.beginCarry;
    pull.current = (event, pulled) => made.beginPull(event, pulled, null);
    return () => {
      begin.current = null;
      pull.current = null;
    };
  }, [begin, pull, made]);
  return made;
}
