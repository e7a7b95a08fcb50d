import { compareText } from '../base/index.ts';
import type { Diagnosis, RankedHypothesis } from '../diagnosis/index.ts';
import type { RepairTable } from '../repair/index.ts';
import { itemKey } from '../simulation/index.ts';
import { type RankedStep, rankStep, type Step } from '../steps/index.ts';
import type { Built } from './buildDecision.ts';
import { mendedShare, type Named, type Option, type Situation } from './decision.ts';
import { changesOf, type Draft, ownCosts, stepOf, type UselessDraft } from './drafts.ts';
import type { Plan, PlannedOutcome, PlannedStep, StepRisk, UselessReason } from './types.ts';
import { faultsOf } from './worlds.ts';

/** The way on from a situation: what to do, and what it is expected to cost. `isClose`: of one of the first steps, so that it is worth a closer look. */
export type Follow = (after: Situation, isClose: boolean) => { readonly cost: number; readonly option: Named | null };

/** Of so many steps it is looked closely what follows. */
const mostClose = 3;
/** Before help is called: looks that add no more than this share to its cost, and tell so much, in bit. Assumed. */
const helpNeeds = { share: 0.02, information: 0.2 };
/** Below this expected cost nothing is left to do. */
const nothing = 1e-9;

/** Makes answers out of costs. What each step tells is worked out once, however often the costs get better. */
export class Presenter {
  private readonly told = new Map<string, RankedStep>();
  private readonly hypotheses: readonly RankedHypothesis[];

  constructor(
    private readonly diagnosis: Diagnosis,
    private readonly table: RepairTable,
    private readonly built: Built,
    private readonly at: Situation,
    /** What stopping here is expected to cost. */
    private readonly leave: number,
    private readonly rest: Pick<Plan, 'displaced' | 'handlings' | 'mishap' | 'end'>,
  ) {
    this.hypotheses = built.worlds.map((world) => ({
      faults: faultsOf(world).map((fault) => ({ item: itemKey(fault), fault: { ...fault, presence: fault.presence ?? 'steady' } })),
      probability: world.probability,
      priorOdds: 0,
      likelihood: 0,
      group: world.evidence === null ? this.groupOf(world.faults.map(itemKey).join()) : -1,
    }));
  }

  /** The group in which the diagnosis has put a hypothesis; −1 where it knows none. */
  private groupOf(items: string): number {
    return this.diagnosis.hypotheses.find(({ faults }) => faults.map(({ item }) => item).join() === items)?.group ?? -1;
  }

  /** Yields after every step that it words, so that it may be left off. */
  *plan(
    method: Plan['method'],
    costs: ReadonlyMap<Draft, number>,
    useless: readonly UselessDraft[],
    follow: Follow,
  ): Generator<void, Plan, void> {
    const all: PlannedStep[] = [];
    for (const [draft, cost] of [...costs].sort(([, a], [, b]) => a - b)) {
      const isClose = all.length < mostClose;
      all.push(this.step(draft, cost, (after) => follow(after, isClose)));
      yield;
    }
    const sorted = all.filter(({ useless: reason }) => reason === null).sort(byCost);
    const best = sorted[0]?.expectedCost ?? Number.POSITIVE_INFINITY;
    const cheapest = Math.min(best, this.leave);
    const beforeHelp = best >= this.leave ? this.lookBeforeHelp(sorted) : null;
    const steps = beforeHelp === null ? sorted : [beforeHelp, ...sorted.filter((step) => step !== beforeHelp)];
    const none = [...all.filter((step) => !steps.includes(step)), ...useless.map((draft) => this.uselessStep(draft, cheapest))];
    return {
      steps: [...steps, ...none.sort(byCost)],
      expectedCost: cheapest,
      method,
      exhausted: best >= this.leave && beforeHelp === null,
      stopping: this.at.running ? 'watch' : 'get-help',
      state: this.at.state,
      covered: this.built.covered,
      ...this.rest,
    };
  }

  /** The look that tells most of those to be had although none saves anything: nobody calls help for a controller before he saw its light. */
  private lookBeforeHelp(steps: readonly PlannedStep[]): PlannedStep | null {
    const looks = steps.filter(({ step, expectedCost, information }) => {
      const isLook = step.do !== 'act' && step.do !== 'provoke';
      return isLook && information >= helpNeeds.information && expectedCost <= this.leave * (1 + helpNeeds.share);
    });
    return this.at.running
      ? null
      : looks.reduce((most: PlannedStep | null, one) => (most !== null && most.information >= one.information ? most : one), null);
  }

  /** The step alone that `plan` would put first; what follows it is not looked at. Null: none tells or mends anything. */
  first(costs: ReadonlyMap<Draft, number>): Step | null {
    const rest = [...costs].sort(([, a], [, b]) => a - b);
    const alone = ([draft, cost]: readonly [Draft, number]) => this.step(draft, cost, () => ({ cost: 0, option: null }));
    if ((rest[0]?.[1] ?? 0) >= this.leave) {
      const beforeHelp = this.lookBeforeHelp(rest.map(alone).sort(byCost));
      if (beforeHelp !== null) {
        return beforeHelp.step;
      }
    }
    while (rest.length > 0) {
      const [, cost] = rest[0] ?? [null, 0];
      const equal = rest.splice(0, rest.filter(([, other]) => other === cost).length);
      const told = equal.map(alone);
      const best = told.filter(({ useless }) => useless === null).sort(byCost)[0];
      if (best !== undefined) {
        return best.step;
      }
    }
    return null;
  }

  private step({ step, option, state }: Draft, expectedCost: number, follow: (after: Situation) => ReturnType<Follow>): PlannedStep {
    const told = this.tell(step, option);
    const outcomes = told.outcomes.map((outcome): PlannedOutcome => {
      const after = option.outcomes.find(({ name }) => name.split(' ').includes(outcome.outcome))?.after;
      const way = after === undefined ? { cost: this.built.decision.outsideHelp, option: null } : follow(after);
      return { ...outcome, costAfter: way.cost, next: way.option === null || way.cost < nothing ? null : stepOf(this.built, way.option) };
    });
    const tellsNothing = told.information === 0 && told.mends === 0;
    const useless: UselessReason | null = tellsNothing ? { code: 'same-for-all', outcome: outcomes[0]?.outcome ?? '' } : null;
    return { ...told, outcomes, expectedCost, useless, ...this.frame(option, state) };
  }

  private uselessStep({ step, option, state, reason }: UselessDraft, onward: number): PlannedStep {
    const frame = this.frame(option, state);
    const told = this.tell(step, option);
    const outcomes = told.outcomes.map((outcome) => ({ ...outcome, costAfter: onward, next: null }));
    const own = frame.own.minutes + frame.own.changes + frame.own.parts + frame.own.risks + frame.own.later;
    return { ...told, outcomes, expectedCost: own + onward, useless: reason, ...frame };
  }

  /** What a step needs and costs by itself. */
  private frame(option: Option, state: Draft['state']) {
    const entries = option.kind === 'look' ? [this.built.looks[option.index]] : (option.acts ?? []).map((index) => this.built.acts[index]);
    const owns = option.kind === 'provoke' || option.kind === 'restart' ? [] : entries.flatMap((entry) => entry?.own ?? []);
    const risks = new Map<string, StepRisk>();
    for (const risk of owns.flatMap((own) => own.risks)) {
      const before = risks.get(risk.code);
      risks.set(risk.code, before === undefined ? risk : addRisks(before, risk));
    }
    return {
      own: ownCosts(this.built, this.at, option),
      stateBefore: this.at.state,
      stateNeeded: state,
      stateAfter: option.kind === 'look' ? state : ('closed' as const),
      changes: changesOf(this.table, this.at.state, option, state),
      risks: [...risks.values()],
      parts: owns.flatMap(({ sources }) => sources),
    };
  }

  private tell(step: Step, option: Option): RankedStep {
    const key = JSON.stringify(step);
    let told = this.told.get(key);
    if (told === undefined) {
      const spreads = this.spreads(option);
      // A look mends nothing, and a restart alone does not either.
      told = rankStep(step, this.built.setting, this.hypotheses, spreads, option.kind === 'act' ? this.mended(option) : []);
      this.told.set(key, told);
    }
    return told;
  }

  /** Outcomes of a step in each world: a look's as simulated, else whether the machine runs after the restart. */
  private spreads(option: Option): readonly ReadonlyMap<string, number>[] {
    if (option.kind === 'look') {
      return this.built.looks[option.index]?.spreads ?? [];
    }
    const { decision, groupOf } = this.built;
    const absent = option.kind === 'provoke' ? decision.provocations[option.index]?.absent : decision.absent;
    const stays = 1 - this.table.chances.handlingFault.value;
    const clean = stays ** (option.acts?.length ?? 0);
    return this.mended(option).map((mended, world) => {
      const runs = clean * (mended + (1 - mended) * (absent?.[groupOf[world] ?? 0] ?? 0));
      return new Map(
        [
          ['runs', runs],
          ['halts', 1 - runs],
        ].filter((entry): entry is [string, number] => Number(entry[1]) > 0),
      );
    });
  }

  /** Probability for each world that a step mends it, by the parts that its acts mend. */
  private mended(option: Option): readonly number[] {
    const { decision, groupOf, worlds } = this.built;
    const acts = (option.kind === 'act' ? (option.acts ?? [option.index]) : []).flatMap((index) => decision.acts[index] ?? []);
    return worlds.map((_, world) => {
      const group = groupOf[world] ?? 0;
      return mendedShare(acts, group, decision.parts[group] ?? 0);
    });
  }
}

function byCost(a: PlannedStep, b: PlannedStep): number {
  return a.expectedCost - b.expectedCost || b.information - a.information || compareText(JSON.stringify(a.step), JSON.stringify(b.step));
}

function addRisks(one: StepRisk, other: StepRisk): StepRisk {
  const cost = one.cost + other.cost;
  if (one.code === 'reference-position' && other.code === 'reference-position') {
    return { ...one, cost, feedbacks: [...new Set([...one.feedbacks, ...other.feedbacks])] };
  }
  return one.code === 'handling' && other.code === 'handling'
    ? { ...one, cost, chance: 1 - (1 - one.chance) * (1 - other.chance) }
    : { ...one, cost };
}
