import type { ReactFlowInstance } from 'reactflow';
import type { LinkRecord } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { port as portSize } from '../canvas/geometry.ts';
import type { Placement } from '../canvas/placement.ts';
import type { Point } from '../canvas/views.ts';
import type { AppState } from '../state/appState.ts';
import { type Pulled, readSocket, type Socket, socketKey } from './gesture.ts';
import type { Carried } from './preview.ts';
import { type DropTarget, findDropTarget } from './spots.ts';

/** Near the edge the drawing moves along, so many screen pixels at a time. */
const edge = { within: 36, step: 14 } as const;

/** Where what is carried would go at a point. Null: it would go nowhere. */
export function targetAt(
  state: AppState,
  placement: Placement,
  carried: Carried,
  at: Point,
  beside: boolean,
  pointer: Point,
): DropTarget | null {
  const { topology } = state.checked;
  const kinds =
    carried.kind === 'new'
      ? [carried.unit]
      : carried.units.map((id) => [...topology.units.values()].find((unit) => unit.id === id)?.kind ?? 'servo-drive');
  const { arrangement } = state.draw;
  // Straight onto a cable, also where the rows are those of the cabinet.
  const under = document
    .elementsFromPoint(pointer.x, pointer.y)
    .find((element) => element instanceof HTMLElement && element.dataset['link']);
  const link = under instanceof HTMLElement ? under.dataset['link'] : undefined;
  const hangs = carried.kind !== 'new' && carried.units.some((id) => (topology.placeOf as ReadonlyMap<string, unknown>).has(id));
  const target = findDropTarget({ topology, placement, arrangement, at, kinds, beside, comesOff: hangs });
  if (arrangement === 'mounting' && link !== undefined && carried.kind === 'new' && carried.unit !== 'supply' && !beside) {
    return { spot: { onLink: link }, place: null, link, mates: [], opening: null };
  }
  // What hangs on no chain cannot be taken off it.
  if (carried.kind === 'move' && target.place === null && target.spot === 'apart' && !hangs) return null;
  return target;
}

/** Whether there is nothing at a point but the drawing's ground. */
export function isBare({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }, frame: HTMLElement | null): boolean {
  const under = document.elementFromPoint(clientX, clientY);
  return (
    under !== null && frame?.contains(under) === true && under.closest('.unit, .link-labels, .loose, .canvas-head, .draw-bar') === null
  );
}

/** The socket under the pointer, or the unit's own one that fits what is pulled. */
export function socketAt({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }, pulled: Pulled): Socket | null {
  for (const element of document.elementsFromPoint(clientX, clientY)) {
    if (!(element instanceof HTMLElement)) continue;
    const { port, feed, unit } = element.dataset;
    if (pulled.kind === 'feed') {
      const id = feed ?? unit;
      if (id !== undefined) return id === pulled.unit ? null : { kind: 'feed', unit: id };
    } else if (port !== undefined) {
      const socket = readSocket(port);
      const isOwn = pulled.kind === 'port' && socket !== null && socketKey(socket) === socketKey({ kind: 'port', port: pulled.port });
      return isOwn ? null : socket;
    }
  }
  return null;
}

/** Where the pulled line begins: at the end that stays. Null: no end of it is plugged in. */
export function anchorOf(placement: Placement, pulled: Pulled, socket: Socket | null, topology: Topology): Point | null {
  const at = (one: Socket): Point => {
    const boxes = new Map<string, { x: number; y: number; width: number; height: number; port: number }>(placement.units);
    if (one.kind === 'feed') {
      const box = boxes.get(one.unit);
      return box ? { x: box.x + box.width / 2, y: box.y + box.height } : { x: 0, y: 0 };
    }
    const { port } = one;
    if ('chain' in port) {
      const chain = new Map<string, { portY: number }>(placement.chains).get(port.chain);
      return { x: (placement.controller?.width ?? 0) + portSize.width / 2, y: chain?.portY ?? 0 };
    }
    const box = boxes.get(port.unit);
    if (!box) return { x: 0, y: 0 };
    return { x: port.side === 'up' ? box.x : box.x + box.width, y: box.y + box.port };
  };
  const held = socket && at(socket);
  if (pulled.kind !== 'plug') return held;
  const link = (topology.links as ReadonlyMap<string, LinkRecord>).get(pulled.link);
  if (pulled.end === 'lower' && link?.upper) {
    return at({ kind: 'port', port: 'chain' in link.upper ? link.upper : { unit: link.upper.unit, side: 'down' } });
  }
  return pulled.end === 'upper' && link?.lower ? at({ kind: 'port', port: { unit: link.lower.unit, side: 'up' } }) : held;
}

/** Units that a box touches. */
export function unitsIn({ units }: Placement, { from, to }: { readonly from: Point; readonly to: Point }): readonly string[] {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  return [...units]
    .filter(([, box]) => box.x < right && box.x + box.width > left && box.y < bottom && box.y + box.height > top)
    .map(([id]) => id);
}

/** The click that the browser makes of the end of a drag is none. */
export function swallowClick(): void {
  const swallow = (event: MouseEvent) => {
    event.stopPropagation();
    event.preventDefault();
  };
  window.addEventListener('click', swallow, { capture: true, once: true });
  // Where the pointer was let go over something else no click comes.
  window.setTimeout(() => window.removeEventListener('click', swallow, { capture: true }), 60);
}

/** Whether a point is on the drawing, away from its edges. */
export function isInside(frame: HTMLElement | null, { clientX: x, clientY: y }: PointerEvent): boolean {
  const box = frame?.getBoundingClientRect();
  const { within } = edge;
  return box !== undefined && x > box.left + within && x < box.right - within && y > box.top + within && y < box.bottom - within;
}

/** Moves the drawing along where the pointer is near its edge. Answers whether it moved. */
export function panAtEdge(
  frame: HTMLElement | null,
  flow: Pick<ReactFlowInstance, 'getViewport' | 'setViewport'>,
  { clientX, clientY }: PointerEvent,
): boolean {
  const box = frame?.getBoundingClientRect();
  if (!box || clientX < box.left || clientX > box.right || clientY < box.top || clientY > box.bottom) return false;
  const dx = clientX < box.left + edge.within ? edge.step : clientX > box.right - edge.within ? -edge.step : 0;
  const dy = clientY < box.top + edge.within ? edge.step : clientY > box.bottom - edge.within ? -edge.step : 0;
  if (dx === 0 && dy === 0) return false;
  // Over a thing one aims at it: it does not run away.
  if (document.elementFromPoint(clientX, clientY)?.closest('.unit, .link-labels')) return false;
  const { x, y, zoom } = flow.getViewport();
  void flow.setViewport({ x: x + dx, y: y + dy, zoom });
  return true;
}
