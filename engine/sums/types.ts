import type { ChainId, LeadId, LinkId, Problem, UnitId } from '../base/index.ts';
import type { Direction } from '../schema/index.ts';
import type { MissingFigure, SumTerm } from './terms.ts';
import type { Amperes, Count, Db, Kilowatts, Metres, Microfarads, Ohms, Percent, Seconds, Volts } from './units.ts';

/** A length limit that a link is held against: the fibre's own, or that of its data rate. */
export interface LengthLimit {
  readonly rule: 'fibre' | 'data-rate';
  readonly length: SumTerm<Metres>;
  readonly limit: SumTerm<Metres>;
  readonly exceeded: boolean;
}

/** The optical budget of one fibre. `transmitter` and `receiver` are null for the controller. */
export interface FibreBudget {
  readonly link: LinkId;
  readonly chain: ChainId;
  /** Number of the link on its chain, from 1. */
  readonly index: number;
  readonly direction: Direction;
  readonly transmitter: UnitId | null;
  readonly receiver: UnitId | null;
  /** What is left when everything, the ageing reserve too, is taken off. Without data: 3 dB, assumed. */
  readonly margin: SumTerm<Db>;
  /** How far the strongest light stays below what blinds the receiver. Not known without data. */
  readonly overloadMargin: SumTerm<Db>;
  /** Loss of the cable alone, computed or measured. */
  readonly loss: SumTerm<Db>;
  readonly reserve: SumTerm<Db>;
  /** Loss that a fault may add before telegrams fail: margin and ageing reserve (domain section 4). */
  readonly toleratedDb: Db;
  readonly limits: readonly LengthLimit[];
  readonly tightBends: readonly { readonly radiusMm: number; readonly minimumMm: number }[];
  readonly missing: readonly MissingFigure[];
}

/** Axes of one chain against the limit of its control-cycle class. */
export interface ChainAxes {
  readonly chain: ChainId;
  readonly cycleClass: string | null;
  readonly axes: SumTerm<Count>;
  readonly limit: SumTerm<Count>;
  readonly left: SumTerm<Count>;
  /** Drives of which no axes are documented; each counts as one axis. */
  readonly assumedDrives: number;
  /** Part of the control cycle that the axes take on the wire in one direction; null where cycle, bytes or data rate are not given. */
  readonly wireShare: SumTerm<Percent> | null;
  /** Every class of the table, and whether the chain would fit into it. */
  readonly classes: readonly { readonly cycleClass: string; readonly maximumAxes: number; readonly fits: boolean }[];
  readonly missing: readonly MissingFigure[];
}

/** The 24 V at one unit. */
export interface UnitVoltage {
  readonly unit: UnitId;
  readonly voltage: SumTerm<Volts>;
  readonly load: SumTerm<Amperes>;
  readonly inrush: SumTerm<Amperes>;
  readonly minimum: SumTerm<Volts>;
  readonly maximum: SumTerm<Volts>;
  /** Voltage less minimum: negative where it is too low. */
  readonly headroom: SumTerm<Volts>;
  readonly verdict: 'within' | 'too-low' | 'too-high' | 'not-known' | 'not-fed';
}

/** One 24 V lead: current (negative: against its direction), resistance there and back, and the drop. */
export interface LeadLoad {
  readonly lead: LeadId;
  readonly from: UnitId;
  readonly to: UnitId;
  readonly resistance: SumTerm<Ohms>;
  readonly current: SumTerm<Amperes>;
  readonly drop: SumTerm<Volts>;
}

/** A load held against a rating. `share` is load by rating, null when one of them is not known. */
export interface Loading {
  readonly load: SumTerm<Amperes>;
  readonly rated: SumTerm<Amperes>;
  readonly share: number | null;
  readonly over: boolean;
}

/** What one supply gives. */
export interface SupplyLoad {
  readonly supply: UnitId;
  readonly voltage: SumTerm<Volts>;
  readonly steady: Loading;
  readonly inrush: Loading;
  readonly outputs: readonly ({ readonly output: string; readonly name: string } & Loading)[];
  /** Another supply's voltage is so much higher that this one gives nothing. */
  readonly backFed: boolean;
}

/** The 24 V of the whole cabinet. */
export interface FeedSums {
  readonly units: readonly UnitVoltage[];
  readonly leads: readonly LeadLoad[];
  readonly supplies: readonly SupplyLoad[];
  /** The unit with the least headroom: it fails first when the supplies sag. */
  readonly firstToFail: UnitId | null;
  /** So many leads lead to so many units that the voltages were not worked out. */
  readonly tooMeshed: boolean;
  readonly missing: readonly MissingFigure[];
}

/** The DC link of one supply. */
export interface DcLinkSums {
  readonly supply: UnitId;
  readonly power: SumTerm<Kilowatts>;
  readonly rated: SumTerm<Kilowatts>;
  readonly share: number | null;
  readonly over: boolean;
  readonly capacitance: SumTerm<Microfarads>;
  /** Until 60 V after switching off, by its resistor alone. Not known unless every figure is given: then the machine's manual tells. */
  readonly discharge: SumTerm<Seconds>;
  readonly missing: readonly MissingFigure[];
}

/** Every sum of a cabinet. */
export interface Sums {
  /** Chain by chain, link by link, outbound before return. */
  readonly optical: readonly FibreBudget[];
  readonly axes: readonly ChainAxes[];
  readonly feed: FeedSums;
  readonly dcLinks: readonly DcLinkSums[];
  /**
   * The longest discharge time in the cabinet, for cautions; null when that of any DC link is not known, and then no number may be
   * said: the machine's manual tells.
   */
  readonly waitingTimeS: Seconds | null;
  /** For the list of problems. */
  readonly problems: readonly Problem[];
  /** Every missing figure once: notes, not problems. */
  readonly missing: readonly MissingFigure[];
}
