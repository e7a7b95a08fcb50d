import type { ChainId, LeadId, LinkId, UnitId } from '../base/index.ts';
import type { Behaviour, Direction, DisplayMeaning, Fault, Intervention, LinkEnd, Onset } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** What is simulated: a cabinet, its faults, and when the displays are read. */
export interface SimulationInput {
  readonly cabinet: Cabinet;
  readonly faults: readonly Fault[];
  /** The faults that are there now, where `absentNow` cannot say it (one that came after the trip). Default: `faults` less the absent ones. */
  readonly faultsNow?: readonly Fault[];
  readonly onset: Onset;
  /** `false`: the machine is not halted, so there was no trip and everything is as it is now. Default true. */
  readonly halted?: boolean;
  /** Done before the trip (or the power-up that failed), in order. */
  readonly beforeTrip?: readonly Intervention[];
  /** Done since the trip without a restart, in order. */
  readonly sinceTrip?: readonly Intervention[];
  /** Takes the place of the documented behaviour of a unit; used where it is unknown. */
  readonly behaviourOf?: (unit: UnitId) => Behaviour;
}

/** The two moments of a simulation. */
export type MomentName = 'trip' | 'now';

/** Why a unit is not lit, or lit but dead, or says something of its own. */
export type UnitCause =
  | { readonly code: 'not-powered'; readonly leads: readonly LeadId[]; readonly supplies: readonly UnitId[] }
  /** The leads reach it, with less than it needs: the 24 V sums say so. */
  | { readonly code: 'voltage-too-low'; readonly volts: number; readonly minimumV: number }
  | { readonly code: 'fuse-open' }
  | { readonly code: 'contact-bad' }
  | { readonly code: 'taken-out' }
  | { readonly code: 'feedback-short'; readonly effect: Behaviour['shortEffect'] }
  | { readonly code: 'board-dead-dark' }
  | { readonly code: 'board-dead-lit' }
  | { readonly code: 'supply-dead' };

/** Why one direction of a link passes no telegrams. Physical causes come first, then the ends, then muting. */
export type FibreCause =
  | { readonly code: 'fault'; readonly fault: Fault }
  | { readonly code: 'unplugged'; readonly end: LinkEnd }
  | { readonly code: 'sender-not-alive'; readonly unit: UnitId | null }
  | { readonly code: 'receiver-not-alive'; readonly unit: UnitId | null }
  /** The sending end hears nothing on this link and therefore sends nothing on it. */
  | { readonly code: 'muted'; readonly by: UnitId | null };

/** One direction of one link at one moment. `unit: null` above means the controller. */
export interface FibreState {
  readonly direction: Direction;
  /** Valid telegrams would pass, muting left aside. */
  readonly raw: boolean;
  /** The receiving end hears valid telegrams. */
  readonly hears: boolean;
  /** Empty when it hears. */
  readonly causes: readonly FibreCause[];
}

/** One link at one moment. `index` is *i* of the domain text: it joins position *i−1* and *i*. */
export interface LinkState {
  readonly link: LinkId;
  readonly chain: ChainId;
  readonly index: number;
  readonly outbound: FibreState;
  readonly return: FibreState;
}

/** One unit at one moment. */
export interface UnitState {
  readonly unit: UnitId;
  readonly powered: boolean;
  readonly alive: boolean;
  /** Empty for a healthy unit. */
  readonly causes: readonly UnitCause[];
  readonly hearsUp: boolean;
  readonly hearsDown: boolean;
  readonly lostUp: boolean;
  readonly lostDown: boolean;
}

/** The whole cabinet at one moment. */
export interface MomentState {
  readonly units: ReadonlyMap<UnitId, UnitState>;
  readonly links: ReadonlyMap<LinkId, LinkState>;
  /** Chains, in the order in which they hang together at this moment (bridged units left out). */
  readonly chains: readonly { readonly id: ChainId; readonly units: readonly UnitId[]; readonly links: readonly LinkId[] }[];
}

/** A term of a display: what decided it. `link` is the link on which the first missing telegram is found. */
export type DisplayTerm =
  | { readonly code: 'unit'; readonly cause: UnitCause }
  | {
      readonly code: 'lost';
      readonly side: 'upstream' | 'downstream';
      readonly moment: MomentName;
      readonly scope: Behaviour['lossScope'];
      readonly link: LinkId | null;
      readonly position: number;
      readonly causes: readonly FibreCause[];
    }
  | { readonly code: 'hears-both' }
  | { readonly code: 'end-of-chain' }
  | { readonly code: 'off-chain' }
  | { readonly code: 'supply-lit' }
  /** Holds what it showed at the trip. */
  | { readonly code: 'held' }
  /** Was off at the trip and has started again: holds nothing. */
  | { readonly code: 'restarted' }
  /** Says nothing of losses, because the whole chain has not been up since power-on. */
  | { readonly code: 'never-linked' }
  /** Lost both ways, and shows only one by its type. */
  | { readonly code: 'both-shown-as'; readonly shown: Behaviour['whenBoth'] };

/** What one display shows now, and why. */
export interface DisplayPrediction {
  readonly unit: UnitId;
  readonly meaning: DisplayMeaning;
  readonly because: readonly DisplayTerm[];
}

/** What the controller reports of one chain. `gap` k: the first unit not reached is at position k. */
export interface ReportPrediction {
  readonly chain: ChainId;
  readonly gap: number | 'none';
  /** `false`: a unit is bridged and the controller does not start with fewer units, so its report tells nothing. */
  readonly speaks: boolean;
  /** Number of units on the chain at that moment. */
  readonly length: number;
  /** The fibres of the first broken link that are not heard, with their causes. */
  readonly because: readonly { readonly link: LinkId; readonly direction: Direction; readonly causes: readonly FibreCause[] }[];
}

/** The answer of the simulation. */
export interface Simulation {
  readonly displays: ReadonlyMap<UnitId, DisplayPrediction>;
  readonly reports: ReadonlyMap<ChainId, ReportPrediction>;
  readonly trip: MomentState;
  readonly now: MomentState;
}
