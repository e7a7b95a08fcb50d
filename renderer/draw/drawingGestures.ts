import { carryTo, putDown } from './carryUnits.ts';
import { chosenThings } from './chosen.ts';
import { type DrawingSurface, onDrawing } from './drawingSurface.ts';
import { followPointer } from './followPointer.ts';
import { type Gesture, noGesture, type Pulled, type Socket } from './gesture.ts';
import { swallowClick, unitsIn } from './gestureTargets.ts';
import { isOnDrawing, readPressed } from './pressed.ts';
import { type Carried, movable } from './preview.ts';
import { endPull, pullTo, startPull } from './pullCable.ts';

export interface DrawingGestures {
  readonly onPointerDown: (event: React.PointerEvent) => void;
  /** A kind that is held, and a cable that is pulled by clicks, follow the pointer without a button. */
  readonly onPointerMove: (event: React.PointerEvent) => void;
  /** Begins to carry something, also from outside of the drawing. */
  readonly beginCarry: (event: React.PointerEvent, carried: Carried) => void;
  /** Begins to pull something out of a socket, or what hangs in none. */
  readonly beginPull: (event: React.PointerEvent, pulled: Pulled, socket: Socket | null) => void;
  /** Ends what is going on, without a trace. */
  readonly cancel: () => void;
  /** Follows the pointer no longer. */
  readonly stop: () => void;
}

/**
 * The gestures of the drawing: carry units, pull cables and leads, draw a box around things. A press that does not move is a click.
 * Each ends with one command; Escape, or letting go where nothing takes it, ends it without a trace.
 */
export function makeDrawingGestures(surface: DrawingSurface): DrawingGestures {
  const { store, dispatch, gestures } = surface;
  const current = () => gestures.getState().gesture;
  const forget = () => gestures.setState({ gesture: noGesture });
  let stopFollowing: (() => void) | null = null;
  const stop = () => stopFollowing?.();

  const follow = (
    start: React.PointerEvent,
    moved: (event: PointerEvent) => void,
    ended: (movedAtAll: boolean, event: PointerEvent) => void,
  ) => {
    stop();
    stopFollowing = followPointer(surface, start, {
      moved,
      ended,
      stopped: () => {
        stopFollowing = null;
      },
    });
  };

  const drop = (gesture: Gesture) => {
    forget();
    if (gesture.kind === 'carry') putDown(surface, gesture);
    if (gesture.kind === 'pull') endPull(surface, gesture);
  };

  const beginCarry = (event: React.PointerEvent, carried: Carried) =>
    follow(
      event,
      (move) => carryTo(surface, carried, move),
      (moved) => {
        if (moved) drop(current());
      },
    );

  const beginPull = (event: React.PointerEvent, pulled: Pulled, socket: Socket | null) => {
    const start = startPull(surface, event, pulled, socket);
    follow(
      event,
      (move) => pullTo(surface, start, move),
      (moved, up) => {
        if (moved) drop(current());
        // What has no port of its own is chosen by a click.
        else if (socket) pullTo(surface, { ...start, sticky: true }, up);
      },
    );
  };

  const beginBox = (event: React.PointerEvent) => {
    const from = onDrawing(surface, event);
    const adds = event.shiftKey;
    follow(
      event,
      (move) => gestures.setState({ gesture: { kind: 'box', from, to: onDrawing(surface, move) } }),
      (moved) => {
        const gesture = current();
        forget();
        const ids = moved && gesture.kind === 'box' ? unitsIn(surface.placement(), gesture) : [];
        if (moved || !adds) dispatch('choose', { ids, how: adds ? 'add' : 'only' });
      },
    );
  };

  /** The second click of click-click, or one that puts down a kind that is held. Answers whether it was one. */
  const endByClick = (event: React.PointerEvent): boolean => {
    const gesture = current();
    if (gesture.kind === 'pull' && gesture.sticky) {
      event.preventDefault();
      swallowClick();
      drop(gesture);
      return true;
    }
    const { held } = store.getState().draw;
    if (held === null) return false;
    carryTo(surface, { kind: 'new', unit: held }, event);
    swallowClick();
    drop(current());
    if (!event.shiftKey) dispatch('hold', { kind: null });
    return true;
  };

  const beginAt = (event: React.PointerEvent, target: Element) => {
    const state = store.getState();
    const pressed = readPressed(state.cabinet, target);
    if (pressed.kind === 'pull') beginPull(event, pressed.pulled, pressed.socket);
    if (pressed.kind === 'unit') {
      const chosen = chosenThings(state);
      const units = movable(state.checked.topology, chosen.includes(pressed.unit) ? chosen : [pressed.unit]);
      beginCarry(event, { kind: 'move', units });
    }
    if (pressed.kind === 'thing') {
      const how = event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only';
      dispatch('choose', { ids: [pressed.thing], how });
    }
    // A finger moves the drawing; a mouse draws a box.
    if (pressed.kind === 'ground' && event.pointerType !== 'touch') beginBox(event);
  };

  return {
    onPointerDown(event) {
      if (current().kind === 'offer') forget();
      if (event.button !== 0 || !isOnDrawing(event.target)) return;
      if (!endByClick(event)) beginAt(event, event.target);
    },
    onPointerMove(event) {
      const gesture = current();
      const { held } = store.getState().draw;
      if (gesture.kind === 'pull' && gesture.sticky) pullTo(surface, gesture, event);
      else if (held !== null) carryTo(surface, { kind: 'new', unit: held }, event);
    },
    beginCarry,
    beginPull,
    cancel() {
      stop();
      forget();
    },
    stop,
  };
}
