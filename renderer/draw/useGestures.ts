import { useCallback, useEffect, useRef } from 'react';
import { useReactFlow } from 'reactflow';
import type { Placement } from '../canvas/placement.ts';
import type { Point } from '../canvas/views.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { chosenThings } from './chosen.ts';
import { useDrawing } from './DrawingContext.ts';
import { type Gesture, noGesture, type Pulled, readLoose, readSocket, type Socket } from './gesture.ts';
import { anchorOf, isBare, isInside, panAtEdge, socketAt, swallowClick, targetAt, unitsIn } from './gestureTargets.ts';
import { type Carried, copyTarget, movable, previewDrop } from './preview.ts';
import { endInto, feedEnds, joinableSockets, pickSource, pulledOut, spotAtPort, whyNotInto } from './pulling.ts';

/** So far a press may tremble and still be a click, screen pixels. */
const threshold = 4;

interface Options {
  readonly frame: React.RefObject<HTMLElement | null>;
  /** The drawing without any place held open. */
  readonly placement: Placement;
}

/**
 * The gestures of the drawing: carry units, pull cables and leads, draw a box around things. A press that does not move is a click.
 * Each ends with one command; Escape, or letting go where nothing takes it, ends it without a trace.
 */
export function useGestures({ frame, placement }: Options) {
  const { store, dispatch } = useWindow();
  const { gestures, begin, pull } = useDrawing();
  const flow = useReactFlow();
  const latest = useRef({ placement });
  latest.current = { placement };
  const session = useRef<(() => void) | null>(null);

  const toFlow = useCallback((point: Point) => flow.screenToFlowPosition(point), [flow]);
  const set = useCallback((gesture: Gesture) => gestures.setState({ gesture }), [gestures]);
  const isOver = useCallback(
    ({ x, y }: Point) => {
      const box = frame.current?.getBoundingClientRect();
      return box !== undefined && x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
    },
    [frame],
  );

  const carryTo = useCallback(
    (carried: Carried, event: { readonly clientX: number; readonly clientY: number; readonly altKey: boolean }) => {
      const pointer = { x: event.clientX, y: event.clientY };
      const state = store.getState();
      const before = gestures.getState().gesture;
      // Alt: of what is there a copy; what comes from the shelf goes beside the chains.
      const now: Carried = carried.kind === 'new' ? carried : { kind: event.altKey ? 'copy' : 'move', units: carried.units };
      const beside = carried.kind === 'new' && event.altKey;
      const target = isOver(pointer) ? targetAt(state, latest.current.placement, now, toFlow(pointer), beside, pointer) : null;
      const same = before.kind === 'carry' && before.carried.kind === now.kind && JSON.stringify(before.target) === JSON.stringify(target);
      const preview = same ? before.preview : target && previewDrop(state, now, target);
      set({
        kind: 'carry',
        carried: same ? before.carried : now,
        pointer,
        target: same ? before.target : target,
        preview,
      });
    },
    [store, gestures, isOver, toFlow, set],
  );

  const pullTo = useCallback(
    (
      pulled: Pulled,
      from: Point,
      joinable: ReadonlySet<string>,
      sticky: boolean,
      event: { readonly clientX: number; readonly clientY: number },
    ) => {
      const over = socketAt(event, pulled);
      const answer = over === null ? null : whyNotInto(store.getState().cabinet, pulled, over);
      const to = toFlow({ x: event.clientX, y: event.clientY });
      const bare = over === null && isBare(event, frame.current);
      set({ kind: 'pull', pulled, from, to, over, refusal: answer === 'other-kind' ? null : answer, bare, joinable, sticky });
    },
    [store, toFlow, set, frame],
  );

  const plugIn = useCallback(
    (pulled: Pulled, over: Socket) => {
      const { cabinet, checked } = store.getState();
      if (pulled.kind === 'feed' && over.kind === 'feed') {
        const { from, to } = feedEnds(cabinet, pulled.unit, over.unit);
        dispatch('feed-units', { from: pickSource(checked.topology, from, to), units: [to] });
      }
      if (pulled.kind === 'plug' && over.kind === 'port') {
        dispatch('replug-end', { link: pulled.link, end: pulled.end, port: over.port });
      }
      if (pulled.kind === 'cable' && over.kind === 'port') {
        dispatch('replug-end', { link: pulled.link, end: endInto(over.port), port: over.port });
      }
      if (pulled.kind === 'new' && over.kind === 'port') dispatch('lay-cable', { port: over.port });
      if (pulled.kind === 'port' && over.kind === 'port') dispatch('join-ports', { a: pulled.port, b: over.port });
    },
    [store, dispatch],
  );

  /** Over the bare drawing: a plug that was pulled hangs loose there, and a new cable asks what it shall lead to. */
  const letGo = useCallback(
    ({ pulled }: { readonly pulled: Pulled }, at: Point) => {
      if (pulled.kind === 'plug') {
        const link = store.getState().cabinet.links?.find(({ id }) => id === pulled.link);
        if (link?.[pulled.end]) dispatch('replug-end', { link: pulled.link, end: pulled.end, port: null });
      }
      if (pulled.kind === 'new') dispatch('lay-cable', { port: null });
      if (pulled.kind === 'port') set({ kind: 'offer', at, spot: spotAtPort(pulled.port) });
    },
    [store, dispatch, set],
  );

  const drop = useCallback(
    (gesture: Gesture) => {
      set(noGesture);
      if (gesture.kind === 'carry' && gesture.target) {
        const { carried, target } = gesture;
        const { spot, place } = target;
        if (carried.kind === 'new') {
          dispatch('insert-units', { units: [{ kind: carried.unit }], spot, ...(place === null ? {} : { place }) });
        } else if (carried.kind === 'copy') {
          dispatch('duplicate-things', { ids: carried.units, target: copyTarget(target) });
        } else {
          dispatch('move-units', { ids: carried.units, to: place ?? spot });
        }
      }
      if (gesture.kind === 'pull' && gesture.over) plugIn(gesture.pulled, gesture.over);
      // The second click of two only ever ends it: a click beside is a slip.
      else if (gesture.kind === 'pull' && gesture.bare && !gesture.sticky) letGo(gesture, flow.flowToScreenPosition(gesture.to));
    },
    [set, dispatch, plugIn, letGo, flow],
  );

  /** Follows the pointer until it is let go; `moved` is called from the first real movement on. */
  const follow = useCallback(
    (
      start: { readonly clientX: number; readonly clientY: number },
      moved: (event: PointerEvent) => void,
      ended: (movedAtAll: boolean, event: PointerEvent) => void,
    ) => {
      session.current?.();
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
      }, 40);
      const stop = () => {
        window.clearInterval(timer);
        window.removeEventListener('pointermove', onMove);
        window.removeEventListener('pointerup', onUp);
        window.removeEventListener('pointercancel', onCancel);
        window.removeEventListener('keydown', onKey, true);
        session.current = null;
      };
      const onUp = (event: PointerEvent) => {
        stop();
        if (moving) swallowClick();
        ended(moving, event);
      };
      const onCancel = () => {
        stop();
        set(noGesture);
      };
      const onKey = (event: KeyboardEvent) => {
        if (event.key === 'Escape') {
          event.preventDefault();
          event.stopPropagation();
          if (moving) swallowClick();
          onCancel();
        }
        if (event.key === 'Alt' && last) event.preventDefault();
      };
      window.addEventListener('pointermove', onMove);
      window.addEventListener('pointerup', onUp);
      window.addEventListener('pointercancel', onCancel);
      window.addEventListener('keydown', onKey, true);
      session.current = stop;
    },
    [flow, frame, set],
  );

  useEffect(() => () => session.current?.(), []);

  const beginCarry = useCallback(
    (event: React.PointerEvent, carried: Carried) =>
      follow(
        event,
        (move) => carryTo(carried, move),
        (moved) => {
          const { gesture } = gestures.getState();
          if (moved) drop(gesture);
        },
      ),
    [follow, carryTo, gestures, drop],
  );

  useEffect(() => {
    begin.current = beginCarry;
    return () => {
      begin.current = null;
    };
  }, [begin, beginCarry]);

  const beginPull = useCallback(
    (event: React.PointerEvent, pulled: Pulled, socket: Socket | null) => {
      const { cabinet, checked } = store.getState();
      const from = anchorOf(latest.current.placement, pulled, socket, checked.topology) ?? toFlow({ x: event.clientX, y: event.clientY });
      const joinable = joinableSockets(cabinet, pulled);
      follow(
        event,
        (move) => pullTo(pulled, from, joinable, false, move),
        (moved, up) => {
          if (moved) drop(gestures.getState().gesture);
          // What has no port of its own is chosen by a click.
          else if (socket) pullTo(pulled, from, joinable, true, up);
        },
      );
    },
    [store, gestures, follow, pullTo, drop, toFlow],
  );

  useEffect(() => {
    pull.current = (event, pulled) => beginPull(event, pulled, null);
    return () => {
      pull.current = null;
    };
  }, [pull, beginPull]);

  const beginBox = useCallback(
    (event: React.PointerEvent) => {
      const from = toFlow({ x: event.clientX, y: event.clientY });
      const adds = event.shiftKey;
      follow(
        event,
        (move) => set({ kind: 'box', from, to: toFlow({ x: move.clientX, y: move.clientY }) }),
        (moved) => {
          const { gesture } = gestures.getState();
          set(noGesture);
          const ids = moved && gesture.kind === 'box' ? unitsIn(latest.current.placement, gesture) : [];
          if (moved || !adds) dispatch('choose', { ids, how: adds ? 'add' : 'only' });
        },
      );
    },
    [toFlow, follow, set, gestures, dispatch],
  );

  const onPointerDown = useCallback(
    (event: React.PointerEvent) => {
      if (gestures.getState().gesture.kind === 'offer') set(noGesture);
      if (event.button !== 0 || !(event.target instanceof Element) || event.target.closest('.canvas-head, .react-flow__minimap')) return;
      const { gesture } = gestures.getState();
      const state = store.getState();
      // The second click of click-click.
      if (gesture.kind === 'pull' && gesture.sticky) {
        event.preventDefault();
        swallowClick();
        drop(gesture);
        return;
      }
      if (state.draw.held !== null) {
        carryTo({ kind: 'new', unit: state.draw.held }, event);
        swallowClick();
        drop(gestures.getState().gesture);
        if (!event.shiftKey) dispatch('hold', { kind: null });
        return;
      }
      const own = (name: string) => (event.target as Element).closest<HTMLElement>(`[data-${name}]`)?.dataset[name];
      const socket = readSocket(own('port')) ?? readSocket(own('feed') === undefined ? undefined : `feed ${own('feed')}`);
      if (socket) return beginPull(event, socket.kind === 'feed' ? socket : pulledOut(state.cabinet, socket.port), socket);
      const loose = readLoose(own('loose'));
      if (loose) return beginPull(event, loose, null);
      const unit = own('unit');
      if (unit !== undefined) {
        const chosen = chosenThings(state);
        const ids = movable(state.checked.topology, chosen.includes(unit) ? chosen : [unit]);
        return beginCarry(event, { kind: 'move', units: ids });
      }
      const thing = own('thing');
      if (thing !== undefined) {
        const how = event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only';
        dispatch('choose', { ids: [thing], how });
        return;
      }
      // A finger moves the drawing; a mouse draws a box.
      if (own('link') === undefined && own('chain') === undefined && own('controller') === undefined && event.pointerType !== 'touch') {
        beginBox(event);
      }
    },
    [gestures, store, set, drop, carryTo, dispatch, beginPull, beginCarry, beginBox],
  );

  /** A kind that is held, and a cable that is pulled by clicks, follow the pointer without a button. */
  const onPointerMove = useCallback(
    (event: React.PointerEvent) => {
      const { gesture } = gestures.getState();
      const { held } = store.getState().draw;
      if (gesture.kind === 'pull' && gesture.sticky) pullTo(gesture.pulled, gesture.from, gesture.joinable, true, event);
      else if (held !== null) carryTo({ kind: 'new', unit: held }, event);
    },
    [gestures, store, pullTo, carryTo],
  );

  const cancel = useCallback(() => {
    session.current?.();
    set(noGesture);
  }, [set]);

  return { onPointerDown, onPointerMove, cancel };
}
