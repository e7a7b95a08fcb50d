import type { Problem, Result } from '../base/index.ts';
import type { CabinetContent, FeedbackRecord, UnitRecord } from '../schema/index.ts';

/** What an edit made of a cabinet. The cabinet given is never touched; records that did not change are the same objects. */
export interface Edited {
  readonly cabinet: CabinetContent;
  /** Ids of what is new, in the order in which it was made: units, then the cables that join them. */
  readonly added: readonly string[];
  /** Ids of what was there and is different now. */
  readonly changed: readonly string[];
  /** Ids of what is gone. */
  readonly removed: readonly string[];
}

/** An edit, or the problems that say why it cannot be done. Nothing is done by halves. */
export type EditResult = Result<Edited>;

/** Why something cannot be done; null when it can. */
export type Refusal = Problem | null;

/** Where a unit stands: row and slot, counted as the file counts them. */
export interface Place {
  readonly row: number;
  readonly slot: number;
}

/** Where in a chain something goes. Positions count from 1; one beyond the last is the end. */
export type ChainSpot =
  | { readonly onLink: string }
  | { readonly afterUnit: string }
  | { readonly beforeUnit: string }
  | { readonly endOf: string }
  | { readonly chain: string; readonly position: number };

/** An optical port: the controller's port of a chain, or one of the two ports of a unit. */
export type Port = { readonly chain: string } | { readonly unit: string; readonly side: 'up' | 'down' };

/** A unit to be made; what is left out stays open, but for the designation, which is numbered. */
export type NewUnit = Omit<UnitRecord, 'id' | 'designation' | 'onChain' | 'row' | 'slot'> & { readonly designation?: string };

/** The end of a lead at the side of what feeds. */
export interface FeedSource {
  readonly unit: string;
  readonly output?: string | undefined;
}

/** A feedback cable to be made. */
export type NewFeedback = Omit<FeedbackRecord, 'id'>;

/** The lists of a cabinet in which things stand that have an id of their own among all of them. */
export const standingLists = ['chains', 'units', 'links', 'leads', 'feedbacks', 'spares'] as const;
export type StandingList = (typeof standingLists)[number];
/** Lists whose ids are their own: what other things refer to. */
export type SharedList = 'types' | 'legends' | 'fibres' | 'photos';
export type EditedList = StandingList | SharedList;
/** All of them, in the order in which what an edit did is told. */
export const editedLists = ['units', 'links', 'leads', 'feedbacks', 'chains', 'spares', 'types', 'legends', 'fibres', 'photos'] as const;
export type RecordOf<L extends EditedList> = NonNullable<CabinetContent[L]>[number];
