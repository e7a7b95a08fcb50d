import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Problem } from '../../engine/base/index.ts';
import type { Port } from '../../engine/edit/index.ts';
import type { LinkEnd } from '../../engine/schema/index.ts';
import type { Point } from '../canvas/views.ts';
import type { Spot } from './buildCommands.ts';
import type { Carried, Preview } from './preview.ts';
import type { DropTarget } from './spots.ts';

/*
 * A gesture is begun, shows what it would do, and ends with one command or without a trace. Nothing of it is in the document before.
 */

/** What is pulled: a new cable out of a port, a plug out of its port or a loose one, a cable of which no end is plugged in, a new one off the shelf, or a new lead. */
export type Pulled =
  /** Off the shelf. */
  | { readonly kind: 'new' }
  | { readonly kind: 'cable'; readonly link: string }
  | { readonly kind: 'port'; readonly port: Port }
  | { readonly kind: 'plug'; readonly link: string; readonly end: LinkEnd }
  | { readonly kind: 'feed'; readonly unit: string };

/** Where a pulled end could go: a port, or a unit that is fed. */
export type Socket = { readonly kind: 'port'; readonly port: Port } | { readonly kind: 'feed'; readonly unit: string };

export type Gesture =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'carry';
      readonly carried: Carried;
      /** On the screen. */
      readonly pointer: Point;
      readonly target: DropTarget | null;
      readonly preview: Preview | null;
    }
  | {
      readonly kind: 'pull';
      readonly pulled: Pulled;
      /** On the drawing. */
      readonly from: Point;
      readonly to: Point;
      readonly over: Socket | null;
      readonly refusal: Problem | null;
      /** The pointer is over the bare drawing. */
      readonly bare: boolean;
      /** Keys of the sockets that would take it. */
      readonly joinable: ReadonlySet<string>;
      /** It was begun by a click: the next click ends it. */
      readonly sticky: boolean;
    }
  /** A new cable was let go over the bare drawing: what could hang on it. */
  | { readonly kind: 'offer'; readonly at: Point; readonly spot: Spot }
  | { readonly kind: 'box'; readonly from: Point; readonly to: Point };

export type GestureStore = StoreApi<{ readonly gesture: Gesture }>;

export const noGesture: Gesture = { kind: 'none' };

export function makeGestureStore(): GestureStore {
  return createStore(() => ({ gesture: noGesture }));
}

/** One text for one socket: the same as stands at its element. */
export function socketKey(socket: Socket): string {
  if (socket.kind === 'feed') return `feed ${socket.unit}`;
  return 'chain' in socket.port ? `chain ${socket.port.chain}` : `unit ${socket.port.unit} ${socket.port.side}`;
}

/** The loose end that an element of the drawing stands for: link and end. */
export function readLoose(text: string | undefined): (Pulled & { readonly kind: 'plug' }) | null {
  const [link, end] = (text ?? '').split(' ');
  return link && (end === 'upper' || end === 'lower') ? { kind: 'plug', link, end } : null;
}

/** The socket that an element of the drawing stands for. */
export function readSocket(text: string | undefined): Socket | null {
  const [kind, id, side] = (text ?? '').split(' ');
  if (id === undefined) return null;
  if (kind === 'feed') return { kind: 'feed', unit: id };
  if (kind === 'chain') return { kind: 'port', port: { chain: id } };
  return side === 'up' || side === 'down' ? { kind: 'port', port: { unit: id, side } } : null;
}
