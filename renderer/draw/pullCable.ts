import type { Point } from '../canvas/views.ts';
import { type DrawingSurface, onDrawing, type Pointing } from './drawingSurface.ts';
import type { Gesture, Pulled, Socket } from './gesture.ts';
import { anchorOf, isBare, socketAt } from './gestureTargets.ts';
import { endInto, feedEnds, joinableSockets, pickSource, spotAtPort, whyNotInto } from './pulling.ts';

/** A pull as it was begun: what stays the same while the pointer moves. */
export type PullStart = Pick<Gesture & { readonly kind: 'pull' }, 'pulled' | 'from' | 'joinable' | 'sticky'>;

/** Out of a socket; of what has none, from where the pointer took hold of it. */
export function startPull(surface: DrawingSurface, event: Pointing, pulled: Pulled, socket: Socket | null): PullStart {
  const { cabinet, checked } = surface.store.getState();
  const from = anchorOf(surface.placement(), pulled, socket, checked.topology) ?? onDrawing(surface, event);
  return { pulled, from, joinable: joinableSockets(cabinet, pulled), sticky: false };
}

/** Shows into what the pulled end would go here, or why not. */
export function pullTo(surface: DrawingSurface, { pulled, from, joinable, sticky }: PullStart, event: Pointing): void {
  const over = socketAt(event, pulled);
  const answer = over === null ? null : whyNotInto(surface.store.getState().cabinet, pulled, over);
  const refusal = answer === 'other-kind' ? null : answer;
  const bare = over === null && isBare(event, surface.frame.current);
  surface.gestures.setState({
    gesture: { kind: 'pull', pulled, from, to: onDrawing(surface, event), over, refusal, bare, joinable, sticky },
  });
}

/** Ends a pull: into what it is over, or over the bare drawing. */
export function endPull(surface: DrawingSurface, { pulled, over, bare, sticky, to }: Gesture & { readonly kind: 'pull' }): void {
  if (over) plugIn(surface, pulled, over);
  // The second click of two only ever ends it: a click beside is a slip.
  else if (bare && !sticky) letGo(surface, pulled, surface.flow.flowToScreenPosition(to));
}

function plugIn({ store, dispatch }: DrawingSurface, pulled: Pulled, over: Socket): void {
  const { cabinet, checked } = store.getState();
  if (pulled.kind === 'feed' && over.kind === 'feed') {
    const { from, to } = feedEnds(cabinet, pulled.unit, over.unit);
    dispatch('feed-units', { from: pickSource(checked.topology, from, to), units: [to] });
  }
  if (over.kind !== 'port') return;
  const { port } = over;
  if (pulled.kind === 'plug') dispatch('replug-end', { link: pulled.link, end: pulled.end, port });
  if (pulled.kind === 'cable') dispatch('replug-end', { link: pulled.link, end: endInto(port), port });
  if (pulled.kind === 'new') dispatch('lay-cable', { port });
  if (pulled.kind === 'port') dispatch('join-ports', { a: pulled.port, b: port });
}

/** Over the bare drawing: a plug that was pulled hangs loose there, and a new cable asks what it shall lead to. */
function letGo({ store, dispatch, gestures }: DrawingSurface, pulled: Pulled, at: Point): void {
  if (pulled.kind === 'plug') {
    const link = store.getState().cabinet.links?.find(({ id }) => id === pulled.link);
    if (link?.[pulled.end]) dispatch('replug-end', { link: pulled.link, end: pulled.end, port: null });
  }
  if (pulled.kind === 'new') dispatch('lay-cable', { port: null });
  if (pulled.kind === 'port') gestures.setState({ gesture: { kind: 'offer', at, spot: spotAtPort(pulled.port) } });
}
