import type { DrawingSurface, Pointing } from './drawingSurface.ts';
import { noGesture } from './gesture.ts';
import { isInside, panAtEdge, swallowClick } from './gestureTargets.ts';

/** So far a press may tremble and still be a click, screen pixels. */
const threshold = 4;
/** So often the drawing moves along while the pointer stays at its edge, milliseconds. */
const panEvery = 40;

interface Following {
  /** Called from the first real movement on. */
  readonly moved: (event: PointerEvent) => void;
  readonly ended: (movedAtAll: boolean, event: PointerEvent) => void;
  /** It is followed no longer, however it ended. */
  readonly stopped: () => void;
}

/** Follows the pointer from a press until it is let go, or Escape ends the gesture. Answers what stops it without an end. */
export function followPointer(
  { frame, flow, gestures }: DrawingSurface,
  start: Pointing,
  { moved, ended, stopped }: Following,
): () => void {
  let moving = false;
  let last: PointerEvent | null = null;
  // What comes from the shelf crosses the edge on its way in: the drawing stays.
  let inside = false;
  const onMove = (event: PointerEvent) => {
    if (!moving && Math.hypot(event.clientX - start.clientX, event.clientY - start.clientY) < threshold) return;
    moving = true;
    last = event;
    inside ||= isInside(frame.current, event);
    moved(event);
  };
  const timer = window.setInterval(() => {
    if (last && inside && panAtEdge(frame.current, flow, last)) moved(last);
  }, panEvery);
  const onUp = (event: PointerEvent) => {
    stop();
    if (moving) swallowClick();
    ended(moving, event);
  };
  const onCancel = () => {
    stop();
    gestures.setState({ gesture: noGesture });
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      if (moving) swallowClick();
      onCancel();
    }
    // Alt alone would open the menu of the window.
    if (event.key === 'Alt' && last) event.preventDefault();
  };
  const stop = () => {
    window.clearInterval(timer);
    window.removeEventListener('pointermove', onMove);
    window.removeEventListener('pointerup', onUp);
    window.removeEventListener('pointercancel', onCancel);
    window.removeEventListener('keydown', onKey, true);
    stopped();
  };
  window.addEventListener('pointermove', onMove);
  window.addEventListener('pointerup', onUp);
  window.addEventListener('pointercancel', onCancel);
  window.addEventListener('keydown', onKey, true);
  return stop;
}
