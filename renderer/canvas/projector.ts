import type { Edge, Node } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import type { Box, Placement } from './placement.ts';
import { makeProjectionCache } from './projectionCache.ts';
import type { CaptionView, ControllerView, FrameView, LeadLine, LinkLine } from './views.ts';

export const controllerNodeId = 'controller';
export const nodeId = (unit: string) => `unit/${unit}`;

const still = { draggable: false, selectable: false, connectable: false, focusable: false } as const;

/** Everything that React Flow draws. */
export interface Projection {
  readonly nodes: Node[];
  readonly edges: Edge[];
  readonly captions: readonly CaptionView[];
}

/** What is drawn of a cabinet, as views. */
export interface Picture<U, C, L, D> {
  readonly units: readonly U[];
  readonly controller: C | null;
  readonly links: readonly L[];
  readonly leads: readonly D[];
}

interface Placed<V> {
  readonly view: V;
  readonly at: Box;
}

/** The components that draw one workspace's picture, by their names in React Flow. */
export interface PictureTypes {
  readonly unit: string;
  readonly controller: string;
  readonly link: string;
  readonly lead: string;
}

/**
 * Makes nodes and edges of views, from caches that give the same object for the same picture. Every workspace has one of its own:
 * what differs is which components draw the views.
 */
export function makeProjector<
  U extends FrameView,
  C extends Pick<ControllerView, 'width' | 'height'>,
  L extends LinkLine,
  D extends LeadLine,
>(types: PictureTypes): (picture: Picture<U, C, L, D>, placement: Placement) => Pick<Projection, 'nodes' | 'edges'> {
  const node = <V extends object>(id: (view: V) => string, type: string) =>
    makeProjectionCache(({ view, at }: Placed<V>): Node => ({ id: id(view), type, ...boxed(at), ...still, data: { view } }));
  const edge = <V extends { readonly spoken: string }>(
    make: (view: V) => Pick<Edge, 'id' | 'source' | 'target' | 'sourceHandle' | 'targetHandle'>,
    type: string,
    kind: string,
  ) => {
    const constant = { type, focusable: false, selectable: false, domAttributes: { 'aria-roledescription': kind } };
    return makeProjectionCache((view: V): Edge => ({ ...make(view), ...constant, ariaLabel: view.spoken, data: { view } }));
  };
  const units = node<U>(({ id }) => nodeId(id), types.unit);
  const controllers = node<C>(() => controllerNodeId, types.controller);
  const links = edge<L>(
    ({ id, chain, upper, lower }) => ({
      id: `link/${id}`,
      source: upper === null ? controllerNodeId : nodeId(upper),
      target: nodeId(lower),
      sourceHandle: upper === null ? chain : 'down',
      targetHandle: 'up',
    }),
    types.link,
    windowTexts.cabinet.edgeKinds.link,
  );
  const leads = edge<D>(
    ({ id, from, to }) => ({ id: `lead/${id}`, source: nodeId(from), target: nodeId(to), sourceHandle: 'feeds', targetHandle: 'fed' }),
    types.lead,
    windowTexts.cabinet.edgeKinds.lead,
  );
  return (picture, placement) => {
    const boxes = new Map<string, Box>(placement.units);
    const placed = picture.units.flatMap((view) => {
      const at = boxes.get(view.id);
      return at ? [{ view, at: { x: at.x, y: at.y, width: at.width, height: at.height } }] : [];
    });
    const { controller } = picture;
    const head = controller && placement.controller ? [{ view: controller, at: placement.controller }] : [];
    return {
      nodes: [...controllers(head, () => controllerNodeId), ...units(placed, ({ view }) => view.id)],
      edges: [...leads(picture.leads, ({ id }) => id), ...links(picture.links, ({ id }) => id)],
    };
  };
}

/** React Flow is told the size as measured, so that a changed node keeps its ends and is never hidden for a moment. */
function boxed({ x, y, width, height }: Box) {
  return { position: { x, y }, width, height, measured: { width, height } };
}
