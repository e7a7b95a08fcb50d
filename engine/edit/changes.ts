import type { LinkEnd } from '../schema/index.ts';
import type { EditedList, FeedSource, Place } from './types.ts';

/** Where in a chain a unit hangs. Ids are those of its own cabinet. */
export interface ChainPosition {
  readonly chain: string;
  readonly position: number;
}

/** The upper port in which a plug sits, or the unit of a lower one. */
export type PlugPlace = { readonly chain: string } | { readonly unit: string };

/** What a change is about: ids in the first and in the second cabinet. */
export interface OfThing {
  readonly list: EditedList | 'controller' | 'cabinet';
  readonly before: string | null;
  readonly after: string | null;
}

/** One difference. `was` belongs to the first cabinet, `is` to the second; ids in them are those of their own cabinet. */
export type Change = { readonly of: OfThing } & (
  | { readonly kind: 'added' }
  | { readonly kind: 'removed' }
  | { readonly kind: 'moved-in-chain'; readonly was: ChainPosition | null; readonly is: ChainPosition | null }
  | { readonly kind: 'moved-in-row'; readonly was: Place | null; readonly is: Place | null }
  /** In another slot because something before it came or went; the order in the row is the same. */
  | { readonly kind: 'shifted'; readonly was: Place; readonly is: Place }
  /** A board (or the whole unit), known by its serial number, that sits in another unit now. */
  | { readonly kind: 'exchanged'; readonly part: 'board' | 'unit'; readonly serial: string; readonly was: string; readonly is: string }
  | { readonly kind: 'replugged'; readonly end: LinkEnd; readonly was: PlugPlace | null; readonly is: PlugPlace | null }
  | { readonly kind: 'reconnected'; readonly end: 'from' | 'to'; readonly was: FeedSource | null; readonly is: FeedSource | null }
  | { readonly kind: 'changed'; readonly path: string; readonly was: unknown; readonly is: unknown }
);
export type ChangeKind = Change['kind'];
export const changeKinds = [
  'added',
  'removed',
  'exchanged',
  'moved-in-chain',
  'moved-in-row',
  'shifted',
  'replugged',
  'reconnected',
  'changed',
] as const satisfies readonly ChangeKind[];
