import type { CabinetContent } from '../../engine/schema/index.ts';
import { type Pulled, readLoose, readSocket, type Socket } from './gesture.ts';
import { pulledOut } from './pulling.ts';

/** What lies under a press. */
export type Pressed =
  | { readonly kind: 'pull'; readonly pulled: Pulled; readonly socket: Socket | null }
  | { readonly kind: 'unit'; readonly unit: string }
  | { readonly kind: 'thing'; readonly thing: string }
  /** It is chosen by its own click. */
  | { readonly kind: 'other' }
  | { readonly kind: 'ground' };

/** Whether a press on an element is one on the drawing at all. */
export function isOnDrawing(target: EventTarget): target is Element {
  return target instanceof Element && target.closest('.canvas-head, .draw-bar, .react-flow__minimap') === null;
}

/** Reads from the elements of the drawing what was pressed: sockets first, for they lie over the units. */
export function readPressed(cabinet: CabinetContent, target: Element): Pressed {
  const own = (name: string) => target.closest<HTMLElement>(`[data-${name}]`)?.dataset[name];
  const feed = own('feed');
  const socket = readSocket(own('port')) ?? readSocket(feed === undefined ? undefined : `feed ${feed}`);
  if (socket) return { kind: 'pull', pulled: socket.kind === 'feed' ? socket : pulledOut(cabinet, socket.port), socket };
  const loose = readLoose(own('loose'));
  if (loose) return { kind: 'pull', pulled: loose, socket: null };
  const unit = own('unit');
  if (unit !== undefined) return { kind: 'unit', unit };
  const thing = own('thing');
  if (thing !== undefined) return { kind: 'thing', thing };
  return ['link', 'chain', 'controller'].some((name) => own(name) !== undefined) ? { kind: 'other' } : { kind: 'ground' };
}
