import type { ChainId, UnitId } from '../base/index.ts';
import type { Intervention, Provocation } from '../schema/index.ts';
import type { Look } from '../simulation/index.ts';

/** Something that can be done next, and whose outcome tells something. */
export type Step =
  | { readonly do: 'read-display'; readonly unit: UnitId }
  | { readonly do: 'read-report'; readonly chain: ChainId }
  | { readonly do: 'look'; readonly look: Look }
  /** Does the acts, restarts, and sees whether the machine runs. */
  | { readonly do: 'act'; readonly acts: readonly Intervention[] }
  /** Restarts, and makes a fault that comes and goes show itself: waits, moves cables, lets it get warm; `subjects` are moved or warmed. */
  | { readonly do: 'provoke'; readonly how: Provocation; readonly subjects: readonly string[] };

/** One outcome of a step, how likely it is, and what would be suspected after it (most probable first, shares of the whole). */
export interface StepOutcome {
  /** A display meaning, a gap (`2`, `none`), a look's outcome, or `runs` / `halts`. */
  readonly outcome: string;
  readonly probability: number;
  readonly suspects: readonly { readonly item: string; readonly probability: number }[];
}

/** A step with what it is expected to tell. */
export interface RankedStep {
  readonly step: Step;
  /** Expected information in bit: how much less uncertain the suspects are expected to be afterwards. */
  readonly information: number;
  /** The same about one question only: at which place lies the fault, if it is one of the first ambiguity group. */
  readonly partsGroup: number;
  /** Probability that the act mends what is at fault, also what comes and goes; 0 for a step that only looks. */
  readonly mends: number;
  readonly outcomes: readonly StepOutcome[];
  /** A look for light that a healthy link would answer with "none" too. */
  readonly darkIsNormal: boolean;
}
