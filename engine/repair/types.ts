import type { ActKind, MachineState } from '../schema/index.ts';
import type { Look } from '../simulation/index.ts';

/** A number with where it comes from: "assumed", a source, "cabinet" where the cabinet file gives it without one, or "sums" where they do. */
export interface Figure {
  readonly value: number;
  readonly origin: string;
}

/** What an act costs. All costs are minutes, or worth so many minutes. */
export interface ActRow {
  readonly act: ActKind;
  /** Id of the unit, link, lead, chain or feedback cable concerned; null: all of them. */
  readonly subject: string | null;
  readonly minutes: Figure;
  /** What the parts are worth that it uses up. */
  readonly partMinutes: Figure;
  readonly state: MachineState;
}

/** What can be looked at: one of the looks, a display, or a report. */
export type LookName = Look['look'] | 'display' | 'report';

/** What a look costs, in minutes, and the state it needs. */
export interface LookRow {
  readonly minutes: Figure;
  readonly state: MachineState;
}

/** Parts of the changes of the machine's state. */
export const changeParts = ['open', 'close', 'lockOut', 'discharge', 'boot', 'referencing'] as const;
export type ChangePart = (typeof changeParts)[number];

/** What cannot be timed: each is worth so many minutes. */
export const weightNames = ['liveWork', 'referencePosition', 'spoiledPart', 'partWait', 'comeback', 'outsideHelp'] as const;
export type WeightName = (typeof weightNames)[number];

/** Probabilities, 0 to 1: an act leaves a fault behind, a spare is bad, a part of unknown fit fits. */
export const chanceNames = ['handlingFault', 'badSpare', 'unknownFit'] as const;
export type ChanceName = (typeof chanceNames)[number];

/** All figures of repair: the usual ones with the cabinet's own in their place. Plain data; edited in the cabinet (`repair`, `times`). */
export interface RepairTable {
  /** Rows with a subject come before the general row of their act. */
  readonly acts: readonly ActRow[];
  readonly looks: { readonly [L in LookName]: LookRow };
  readonly changes: { readonly [C in ChangePart]: Figure };
  readonly weights: { readonly [W in WeightName]: Figure };
  readonly chances: { readonly [C in ChanceName]: Figure };
}
