import type { ChainId, FeedbackId, LeadId, LinkId, TypeId, UnitId } from '../base/index.ts';
import type {
  CabinetContent,
  ChainRecord,
  FeedbackRecord,
  LeadRecord,
  LinkRecord,
  OrdinalGroup,
  TypeRecord,
  UnitRecord,
} from '../schema/index.ts';

/**
 * One chain as it really hangs together, controller first:
 *
 *     controller ══ link 1 ══ unit 1 ══ link 2 ══ unit 2 …        units[i-1] is position i, links[i-1] is link i
 */
export interface ChainTopology {
  readonly id: ChainId;
  readonly record: ChainRecord;
  readonly units: readonly UnitId[];
  readonly links: readonly LinkId[];
}

/** Where a chain unit stands: on which chain, at which position (1, 2, …), and its ordinal within its group on that chain. */
export interface ChainPlace {
  readonly chain: ChainId;
  readonly position: number;
  readonly group: OrdinalGroup;
  readonly ordinal: number;
}

/** A 24 V lead with both ends present. */
export interface Feed {
  readonly lead: LeadId;
  readonly from: UnitId;
  readonly to: UnitId;
}

/** The cabinet with its references resolved. Derived from the content, never stored. */
export interface Topology {
  readonly content: CabinetContent;
  /** Chains in order of their number, then id. A chain without any linked unit is present and empty. */
  readonly chains: readonly ChainTopology[];
  readonly chainById: ReadonlyMap<ChainId, ChainTopology>;
  /** Place of every unit that really hangs on a chain. */
  readonly placeOf: ReadonlyMap<UnitId, ChainPlace>;
  readonly units: ReadonlyMap<UnitId, UnitRecord>;
  readonly links: ReadonlyMap<LinkId, LinkRecord>;
  readonly leads: ReadonlyMap<LeadId, LeadRecord>;
  readonly feedbacks: ReadonlyMap<FeedbackId, FeedbackRecord>;
  readonly types: ReadonlyMap<TypeId, TypeRecord>;
  /** Units fed as documented but not on a chain: `onChain: false`. */
  readonly offChain: readonly UnitId[];
  readonly supplies: readonly UnitId[];
  /** Units that should be on a chain but that no chain reaches. */
  readonly orphans: readonly UnitId[];
  readonly feeds: readonly Feed[];
  /** Feedback cables of each unit. */
  readonly feedbacksOf: ReadonlyMap<UnitId, readonly FeedbackId[]>;
}

declare const checked: unique symbol;
/** A topology that `checkCabinet` has found fit to simulate: references resolve, no loop, no fork, no doubled chain number. */
export type Cabinet = Topology & { readonly [checked]: true };
