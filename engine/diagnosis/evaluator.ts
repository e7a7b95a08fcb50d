import type { FaultChoice } from '../search/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type ClassBook, type ClassHandle, makeClassBook } from './classBook.ts';
import type { FaultSpace } from './elements.ts';
import { groupTrips } from './patterns.ts';
import type { PatternView } from './patternViews.ts';
import type { Plan } from './plan.ts';
import type { Scenario } from './scenarios.ts';
import { Weigher } from './weigher.ts';

/**
 * The likelihood of hypotheses of up to two faults under a plan: a mean over scenarios, and over the joint patterns of presence
 * of intermittent faults. Answers are exp(log likelihood − largest log factor − `offset`), so that they stay within range.
 */
export class Evaluator {
  /** The effect class of each mode, for merging; equal keys are predicted alike in any company. */
  readonly book: ClassBook;
  private readonly weighers: readonly Weigher[];
  private readonly shares: readonly number[];
  /** The list of the last row, and the classes of its choices. */
  private row: { readonly seconds: readonly FaultChoice[]; readonly handles: readonly ClassHandle[] } | null = null;

  constructor(
    readonly plan: Plan,
    space: FaultSpace,
    readonly scenarios: readonly Scenario[],
    cabinet: Cabinet,
    private readonly offset: number,
  ) {
    const groups = groupTrips(plan);
    this.book = makeClassBook(cabinet, plan, space, scenarios);
    this.weighers = scenarios.map((scenario) => new Weigher(this.book, plan, groups, scenario, offset));
    this.shares = scenarios.map(({ share }) => share);
  }

  /** Scaled likelihood of a set of faults, averaged over the scenarios (none, one or two). */
  likelihood(faults: readonly FaultChoice[]): number {
    const one = faults[0] === undefined ? null : this.book.handleOf(faults[0]);
    const other = faults[1] === undefined ? null : this.book.handleOf(faults[1]);
    let sum = 0;
    for (let index = 0; index < this.weighers.length; index += 1) {
      sum += (this.shares[index] ?? 0) * (this.weighers[index]?.likelihood(one, other) ?? 0);
    }
    return sum;
  }

  /** Writes the likelihood of one fault together with each of many others, from a place in their list on, to the same places. */
  weighRow(first: FaultChoice, seconds: readonly FaultChoice[], start: number, likelihoods: Float64Array): void {
    if (this.row?.seconds !== seconds) {
      this.row = { seconds, handles: seconds.map((choice) => this.book.handleOf(choice)) };
    }
    const { handles } = this.row;
    const one = this.book.handleOf(first);
    likelihoods.fill(0, start);
    this.weighers.forEach((weigher, index) => {
      weigher.addRow(one, handles, start, this.shares[index] ?? 0, likelihoods);
    });
  }

  /** Scaled likelihood under one scenario. */
  likelihoodIn(scenario: number, faults: readonly FaultChoice[]): number {
    return this.weighers[scenario]?.likelihood(...this.pairOf(faults)) ?? 0;
  }

  /** log of the scaled likelihood, `offset` added again: the greatest over the scenarios. */
  bestLog(faults: readonly FaultChoice[]): number {
    return this.weighers.reduce(
      (best, weigher) => Math.max(best, weigher.logLikelihood(...this.pairOf(faults)) + this.offset),
      Number.NEGATIVE_INFINITY,
    );
  }

  /** The joint patterns of presence that the halted rule leaves to a hypothesis under one scenario, with what each predicts. */
  patternsIn(scenario: number, faults: readonly FaultChoice[]): readonly PatternView[] {
    return this.weighers[scenario]?.listViews(...this.pairOf(faults)) ?? [];
  }

  /** The key of what a mode does, its presence included: modes of one key are predicted alike. */
  effectOf({ element, mode }: FaultChoice): string {
    return this.book.elements[element]?.modes[mode]?.effect ?? `${element}/${mode}`;
  }

  /** What a hypothesis predicts of all that was observed, for every presence and scenario, as a text: equal ones cannot be told apart. */
  signatureOf(faults: readonly FaultChoice[]): string {
    return this.weighers.map((weigher) => weigher.signature(...this.pairOf(faults))).join('/');
  }

  private pairOf(faults: readonly FaultChoice[]): [ClassHandle | null, ClassHandle | null] {
    const [one, other] = faults;
    return [one === undefined ? null : this.book.handleOf(one), other === undefined ? null : this.book.handleOf(other)];
  }
}
