import { type LookOutcome, outcomeAt, type PlacedEffect } from '../simulation/index.ts';
import type { ClassBook, EffectOps } from './classBook.ts';
import type { Plan, PlanObservation } from './plan.ts';
import type { Scenario } from './scenarios.ts';

/** What looks would show under one scenario; worked out by the plain simulation and kept, since few classes concern a look. */
export class LookPredictions {
  private readonly known = new Map<string, number>();
  private readonly variant: number;

  constructor(
    private readonly book: ClassBook,
    private readonly plan: Plan,
    private readonly scenario: Scenario,
  ) {
    this.variant = book.variantOf(scenario);
  }

  /** Index of the outcome that a look has when the given classes are there; 0 for what is no look. */
  outcome(index: number, one: EffectOps | null, other: EffectOps | null): number {
    const seen = this.plan.observations[index];
    if (seen?.kind !== 'look') {
      return 0;
    }
    const relevant = [one, other].filter((ops): ops is EffectOps => ops?.looks.includes(index) === true);
    const key = `${index}/${relevant.map(({ id }) => id).join()}`;
    let outcome = this.known.get(key);
    if (outcome === undefined) {
      outcome = Math.max(0, seen.outcomes.indexOf(this.predict(seen, relevant)));
      this.known.set(key, outcome);
    }
    return outcome;
  }

  private predict(seen: Extract<PlanObservation, { kind: 'look' }>, relevant: readonly EffectOps[]): LookOutcome {
    const snapshot = this.plan.snapshots[seen.snapshot];
    const arrangement = this.plan.arrangements[snapshot?.nowArrangement ?? 0];
    const placed: PlacedEffect[] = relevant.flatMap((ops) =>
      (ops.effects[this.variant]?.[snapshot?.nowArrangement ?? 0] ?? []).map((effect) => ({ effect, fault: ops.fault })),
    );
    if (arrangement === undefined) {
      throw new Error('a snapshot without its arrangement');
    }
    const moment = { cabinet: this.book.compiled.cabinet, arrangement, placed, behaviourOf: this.scenario.behaviourOf, hasBeenUp: true };
    return outcomeAt(seen.look, moment) ?? seen.outcomes[0] ?? 'none';
  }
}
