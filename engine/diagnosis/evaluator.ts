import type { FaultChoice } from '../search/index.ts';
import { type ClassBook, type EffectOps, makeClassBook } from './classBook.ts';
import type { FaultSpace } from './elements.ts';
import { groupTrips, type TripGroup } from './patterns.ts';
import type { Plan } from './plan.ts';
import type { Scenario } from './scenarios.ts';
import { type PatternView, Weigher } from './weigher.ts';

/**
 * The likelihood of hypotheses of up to two faults under a plan: a mean over scenarios, and over the joint patterns of presence
 * of intermittent faults. Answers are exp(log likelihood − largest log factor − `offset`), so that they stay within range.
 */
export class Evaluator {
  /** The effect class of each mode, for merging; equal keys are predicted alike in any company. */
  readonly book: ClassBook;
  /** Greatest scaled log likelihood met so far. */
  bestLog = Number.NEGATIVE_INFINITY;
  private readonly weighers: readonly Weigher[];
  private readonly groups: readonly TripGroup[];

  constructor(
    readonly plan: Plan,
    space: FaultSpace,
    readonly scenarios: readonly Scenario[],
    cabinet: Parameters<typeof makeClassBook>[0],
    private readonly offset: number,
  ) {
    this.groups = groupTrips(plan);
    this.book = makeClassBook(cabinet, plan, space, scenarios);
    this.weighers = scenarios.map((scenario) => new Weigher(this.book, plan, this.groups, scenario));
  }

  /** Mean scaled likelihood of a set of faults (none, one or two). */
  likelihood(faults: readonly FaultChoice[]): number {
    let sum = 0;
    for (let index = 0; index < this.weighers.length; index += 1) {
      sum += this.likelihoodIn(index, faults);
    }
    return sum / this.weighers.length;
  }

  /** Scaled likelihood under one scenario. */
  likelihoodIn(scenario: number, faults: readonly FaultChoice[]): number {
    const weigher = this.weighers[scenario];
    const one = faults[0] === undefined ? null : this.book.opsOf(faults[0]);
    const other = faults[1] === undefined ? null : this.book.opsOf(faults[1]);
    if (weigher === undefined || !isPossible(weigher.scenario, one) || !isPossible(weigher.scenario, other)) {
      return 0;
    }
    const log = weigher.logLikelihood(
      one,
      one !== null && this.isIntermittent(faults[0]),
      other,
      other !== null && this.isIntermittent(faults[1]),
    );
    if (log > this.bestLog) {
      this.bestLog = log;
    }
    return log === Number.NEGATIVE_INFINITY ? 0 : Math.exp(log - this.offset);
  }

  /** The joint patterns of presence that the halted rule leaves to a hypothesis under one scenario, with what each predicts. */
  patternsIn(scenario: number, faults: readonly FaultChoice[]): readonly PatternView[] {
    const weigher = this.weighers[scenario];
    const one = faults[0] === undefined ? null : this.book.opsOf(faults[0]);
    const other = faults[1] === undefined ? null : this.book.opsOf(faults[1]);
    if (weigher === undefined || !isPossible(weigher.scenario, one) || !isPossible(weigher.scenario, other)) {
      return [];
    }
    return weigher.listViews(one, this.isIntermittent(faults[0]), other, this.isIntermittent(faults[1]));
  }

  private isIntermittent(choice: FaultChoice | undefined): boolean {
    return choice !== undefined && this.book.isIntermittent(choice);
  }
}

/** A wiring mistake shows at power-up: where a scenario has the machine running, there is none. */
function isPossible(scenario: Scenario, ops: EffectOps | null): boolean {
  return ops === null || !ops.onlyAtPowerUp || !scenario.onsets.includes('while-running');
}
