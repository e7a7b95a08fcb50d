import type { ChainId, FeedbackId, UnitId } from '../base/index.ts';
import type { PartSource, StateChange } from '../repair/index.ts';
import type { DisplayMeaning, Intervention, LinkEnd, MachineState } from '../schema/index.ts';
import type { RankedStep, Step, StepOutcome } from '../steps/index.ts';

/** What may go wrong by a step, and what that counts in the costs, in minutes. */
export type StepRisk =
  | { readonly code: 'live-work'; readonly cost: number }
  | { readonly code: 'reference-position'; readonly cost: number; readonly feedbacks: readonly FeedbackId[] }
  | { readonly code: 'spoiled-part'; readonly cost: number }
  /** The chance that the handling leaves a fault behind. */
  | { readonly code: 'handling'; readonly cost: number; readonly chance: number };

/** Why a step is not worth doing. */
export type UselessReason =
  /** Every suspected cause leads to this outcome. */
  | { readonly code: 'same-for-all'; readonly outcome: string }
  /** Nothing that is suspected would be mended by it, and the machine halts again in any case. */
  | { readonly code: 'mends-nothing' }
  /** It was done already, and would say the same again. */
  | { readonly code: 'done-already' }
  /** A restart would erase what displays and report still hold and nobody has noted, or nobody said whether the machine is halted. */
  | { readonly code: 'note-first' };

/** What it costs to do a step and nothing else; all in minutes or worth so many. */
export interface StepCosts {
  /** Hands and eyes. */
  readonly minutes: number;
  /** Changes of the machine's state before, and the restart after an act. */
  readonly changes: number;
  readonly parts: number;
  readonly risks: number;
  /** What remains to be repaired properly, where an act only goes round the fault. */
  readonly later: number;
}

/** One outcome of a planned step. */
export interface PlannedOutcome extends StepOutcome {
  /** Expected cost from there to the repaired machine. */
  readonly costAfter: number;
  /** The step that would be next; null: the machine is repaired, or nothing more can be done. */
  readonly next: Step | null;
}

/** A step with what it is worth. */
export interface PlannedStep extends RankedStep {
  readonly outcomes: readonly PlannedOutcome[];
  /** Expected cost to the repaired machine if this is done next, the step itself included. */
  readonly expectedCost: number;
  readonly own: StepCosts;
  readonly stateBefore: MachineState;
  readonly stateNeeded: MachineState;
  readonly stateAfter: MachineState;
  /** In the order in which they are made; after an act also the restart. */
  readonly changes: readonly StateChange[];
  readonly risks: readonly StepRisk[];
  readonly parts: readonly PartSource[];
  readonly useless: UselessReason | null;
}

/** What was moved and has not been put back. */
export type Displaced =
  | { readonly kind: 'board'; readonly unit: string; readonly from: string }
  | { readonly kind: 'cable'; readonly link: string; readonly from: string; readonly turned: boolean }
  | { readonly kind: 'unplugged'; readonly link: string; readonly end: LinkEnd }
  | { readonly kind: 'taken-out'; readonly unit: string }
  | { readonly kind: 'bridged'; readonly unit: string; readonly cable: string }
  | { readonly kind: 'feedback-pulled'; readonly feedback: string };

/** Something that was done, newest first in lists. */
export interface Handling {
  readonly act: Intervention;
  readonly snapshot: number;
}

/** How a search ends (domain section 7). */
export interface EndState {
  /** `open`: still halted, nothing was done and nothing shows it mended, or a feedback plug is pulled. */
  readonly end: 'open' | 'proved' | 'not-proved' | 'running-provisionally';
  /** Why not proved. */
  readonly because: readonly EndReason[];
  /** The acts after which the machine ran. */
  readonly lastActs: readonly Intervention[];
  /** Everything that was touched, newest first: watch these. */
  readonly touched: readonly Handling[];
  /** What must be put back, or keeps the machine running only for now. */
  readonly displaced: readonly Displaced[];
  /** What every display and report must show now, if all is well. */
  readonly expected: {
    readonly displays: readonly { readonly unit: UnitId; readonly meaning: DisplayMeaning }[];
    readonly reports: readonly { readonly chain: ChainId; readonly gap: number | 'none' }[];
  };
  /** Probability that something that comes and goes is still there. */
  readonly mayComeBack: number;
}

/** Why a search is still open, proves nothing, or leaves the machine running for now only. */
export type EndReason =
  | 'still-halted'
  | 'nothing-done'
  | 'feedback-pulled'
  | 'only-handled'
  | 'several-acts-at-once'
  | 'comes-and-goes'
  | 'parts-displaced'
  | 'something-bypassed';

/** The answer of the planner. */
export interface Plan {
  /** Cheapest expected cost first; before all a look to be had before help is called; useless ones last. One list, one order. */
  readonly steps: readonly PlannedStep[];
  /** The expected cost of the best way on; that of stopping here where nothing better is left to do. */
  readonly expectedCost: number;
  /** `exact`: no cheaper plan exists for these steps and suspects. `look-ahead`: an estimate from so many steps ahead. */
  readonly method: { readonly kind: 'exact' } | { readonly kind: 'look-ahead'; readonly depth: number };
  /** Nothing that is left tells or mends anything at a cost below that of stopping here. */
  readonly exhausted: boolean;
  /** What stopping here means: a machine that runs is watched, for one that does not somebody else is called. */
  readonly stopping: 'watch' | 'get-help';
  readonly state: MachineState;
  /** Share of the suspects' probability that the plan reckons with. */
  readonly covered: number;
  readonly displaced: readonly Displaced[];
  readonly handlings: readonly Handling[];
  /** "It got worse": probability that the last thing touched was left loose, or that a part put in is bad. */
  readonly mishap: number;
  readonly end: EndState;
}

/** What the planner yields while it works: how much is done, and the best answer so far. */
export interface PlanProgress {
  readonly share: number;
  readonly plan: Plan | null;
}
