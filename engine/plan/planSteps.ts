import type { Diagnosis } from '../diagnosis/index.ts';
import { repairTable } from '../repair/index.ts';
import type { Evidence } from '../schema/index.ts';
import type { Step } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { decisionInPieces } from './buildDecision.ts';
import { Rules } from './decision.ts';
import { type Draft, exactBatches, listDrafts } from './drafts.ts';
import { endOf } from './end.ts';
import { ExactPlanner } from './exact.ts';
import { findHandlingWorlds, keepDiagnosis } from './handling.ts';
import { listDisplaced, listHandlings } from './history.ts';
import { batchKey, LookAhead } from './lookAhead.ts';
import { type Follow, Presenter } from './presenter.ts';
import type { Plan, PlanProgress } from './types.ts';

/** Up to so many situations a plan is exact. */
const exactSituations = 6_000;
/** And up to so many outcomes weighed, each times the worlds: what takes some tenths of a second. */
const exactWeighed = 1_000_000;
/** Steps looked at more closely, further ahead. */
const width = 8;

/** How much a plan may take. */
export interface PlanOptions {
  /** Situations up to which the plan is exact; 0: always look ahead. Default 6000. */
  readonly exactSituations?: number;
}

/** What to do next, best first. See `planning`. */
export function planSteps(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis, options: PlanOptions = {}): Plan {
  const work = planning(cabinet, evidence, diagnosis, options);
  for (;;) {
    const { done, value } = work.next();
    if (done === true) {
      return value;
    }
  }
}

/**
 * Every step by the expected cost to the repaired machine if it is done next (decision-theoretic troubleshooting: Heckerman, Breese
 * and Rommelse 1995). Yields better and better answers: one step ahead, then two for the best, then exact where there are few enough
 * situations. May be left off at any time. Looks and acts are predicted by the simulation of the diagnosis' hypotheses.
 */
export function* planning(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  options: PlanOptions = {},
): Generator<PlanProgress, Plan, void> {
  const { built, rules, at, ahead, presenter, ...listed } = yield* layOut(cabinet, evidence, diagnosis);
  yield progress(0.2);
  const { drafts, useless } = listed;
  const simple: Follow = (after, isClose) =>
    isClose ? ahead.best(after, 1, width) : { cost: ahead.leaveOrAct(after), option: ahead.nextAct(after) };
  const costs = new Map<Draft, number>();
  for (const share of oneAhead(ahead, drafts, costs)) {
    yield progress(0.2 + 0.2 * share);
  }
  const first = yield* unhurried(
    0.4,
    presenter.plan({ kind: 'look-ahead', depth: 1 }, costs, useless, (after) => simple(after, false)),
  );
  yield { share: 0.4, plan: first };
  for (const share of furtherAhead(ahead, costs)) {
    yield progress(0.4 + 0.3 * share);
  }
  const estimate = yield* unhurried(0.7, presenter.plan({ kind: 'look-ahead', depth: ahead.depth }, costs, useless, simple));
  yield { share: 0.7, plan: estimate };
  const exact = new ExactPlanner(rules, options.exactSituations ?? exactSituations, exactWeighed);
  const known = new Map<Draft, number>();
  for (const draft of drafts) {
    const share = 0.7 + (0.3 * known.size) / (drafts.length + 1);
    const cost = yield* unhurried(share, exact.costInPieces(draft.option));
    if (cost === null) {
      return estimate;
    }
    known.set(draft, cost);
    yield progress(share);
  }
  const batches = new Set(drafts.map(({ option }) => batchKey(option.acts ?? [])));
  for (const draft of exactBatches(built, rules, exact, at)) {
    const key = batchKey(draft.option.acts ?? []);
    const cost = batches.has(key) ? null : exact.costOf(draft.option);
    if (cost !== null) {
      batches.add(key);
      known.set(draft, cost);
    }
  }
  const toTheEnd: Follow = (after, isClose) => exact.best(after) ?? simple(after, isClose);
  return yield* unhurried(1, presenter.plan({ kind: 'exact' }, known, useless, toTheEnd));
}

/**
 * The step that `planning` puts first as long as it looks ahead, without anything said of it or of the others: quicker, where there are
 * hundreds of questions. Null: nothing tells or mends.
 */
export function bestStep(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis): Step | null {
  const work = layOut(cabinet, evidence, diagnosis);
  let made = work.next();
  while (made.done !== true) {
    made = work.next();
  }
  const { ahead, drafts, presenter } = made.value;
  const costs = new Map<Draft, number>();
  for (const _share of oneAhead(ahead, drafts, costs));
  for (const _share of furtherAhead(ahead, costs));
  return presenter.first(costs);
}

function progress(share: number): PlanProgress {
  return { share, plan: null };
}

/** Passes every pause of some work on, with the share of the whole that is done meanwhile. */
function* unhurried<T>(share: number, work: Generator<void, T, void>): Generator<PlanProgress, T, void> {
  let next = work.next();
  for (; next.done !== true; next = work.next()) {
    yield progress(share);
  }
  return next.value;
}

/** What all planning stands on: the decision, and what can be done now. */
function* layOut(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis) {
  const table = repairTable(cabinet.content);
  keepDiagnosis(cabinet, evidence, diagnosis);
  const handled = findHandlingWorlds(cabinet, evidence, diagnosis, table);
  yield progress(0.05);
  const work = decisionInPieces(cabinet, evidence, diagnosis, table, handled);
  let piece = work.next();
  for (; piece.done !== true; piece = work.next()) {
    yield progress(0.05 + 0.15 * piece.value);
  }
  const built = piece.value;
  yield progress(0.2);
  const rules = new Rules(built.decision);
  const at = { ...rules.begin(), seen: built.seen };
  const ahead = new LookAhead(rules);
  const presenter = new Presenter(diagnosis, table, built, at, rules.leave(at), {
    displaced: listDisplaced(cabinet, evidence),
    handlings: listHandlings(evidence),
    mishap: handled.reduce((sum, { probability }) => sum + probability, 0),
    end: endOf(cabinet, evidence, diagnosis),
  });
  return { built, rules, at, ahead, presenter, ...listDrafts(built, rules, ahead, at) };
}

/** Puts the cost of every step into `costs`, and yields the share that is done. */
function* oneAhead(ahead: LookAhead, drafts: readonly Draft[], costs: Map<Draft, number>): Generator<number> {
  for (const draft of drafts) {
    costs.set(draft, ahead.costOf(draft.option, 1, width));
    yield costs.size / drafts.length;
  }
}

/** Looks at the steps that come first more closely, and yields the share that is done. */
function* furtherAhead(ahead: LookAhead, costs: Map<Draft, number>): Generator<number> {
  const promising = [...costs]
    .sort(([, a], [, b]) => a - b)
    .slice(0, width)
    .entries();
  for (const [index, [draft, cost]] of promising) {
    costs.set(draft, Math.min(cost, ahead.costOf(draft.option, ahead.depth, width)));
    yield (index + 1) / width;
  }
}
