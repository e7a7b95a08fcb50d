import type { ChainId, UnitId } from '../base/index.ts';
import type { DisplayMeaning, Fault, Onset } from '../schema/index.ts';

/** What is seen of a cabinet: the displays alone, or what the controller reports as well. */
export type SeenBy = 'displays' | 'displays-and-report';

/** One steady fault, and what the cabinet shows with it and no other. */
export interface SingleFault {
  readonly fault: Fault;
  /** Key of its item or place: `plug/w3/upper`. */
  readonly item: string;
  /** Key of what would be exchanged or mended as one: a cable with its plugs counts as one part. */
  readonly part: string;
  /** Occurrences per year, steady and intermittent together. */
  readonly ratePerYear: number;
  readonly displays: ReadonlyMap<UnitId, DisplayMeaning>;
  readonly reports: ReadonlyMap<ChainId, number | 'none'>;
}

/** Single faults that show the same: what was seen cannot tell them apart. */
export interface PatternGroup {
  readonly displays: ReadonlyMap<UnitId, DisplayMeaning>;
  readonly reports: ReadonlyMap<ChainId, number | 'none'>;
  /** Likeliest first; ties by key. */
  readonly faults: readonly SingleFault[];
  readonly ratePerYear: number;
}

/** All single faults of a cabinet by what they show. */
export interface Patterns {
  readonly onset: Onset;
  readonly seenBy: SeenBy;
  /** By chain and gap, then by what the displays show. */
  readonly groups: readonly PatternGroup[];
  /** Faults with which everything shows what it shows without any. */
  readonly unseen: readonly SingleFault[];
}
