import { type RepairTable, type StateChange, stateChange } from '../repair/index.ts';
import type { MachineState } from '../schema/index.ts';
import { type Step, stateNeeded } from '../steps/index.ts';
import type { Built } from './buildDecision.ts';
import { sumOf } from './costs.ts';
import type { Named, Option, Rules, Situation } from './decision.ts';
import type { ExactPlanner } from './exact.ts';
import type { LookAhead } from './lookAhead.ts';
import type { StepCosts, UselessReason } from './types.ts';

/** A step of the cabinet as an option of the decision. */
export interface Draft {
  readonly step: Step;
  readonly option: Option;
  readonly state: MachineState;
}

/** Steps that are worth nothing, with the reason. */
export interface UselessDraft extends Draft {
  readonly reason: UselessReason;
}

/** What a step of the decision is in the cabinet. */
export function stepOf(built: Built, option: Named): Step {
  switch (option.kind) {
    case 'look':
      return built.looks[option.index]?.step ?? restart;
    case 'act':
      return { do: 'act', acts: [...actsOf(built, option), ...plugsWith(built, option).map(({ act }) => act)] };
    case 'provoke':
      return built.provocations[option.index]?.step ?? restart;
    case 'restart':
      return restart;
  }
}

function actsOf(built: Built, { acts, index }: Named) {
  return (acts ?? [index]).flatMap((one) => built.acts[one]?.act ?? []);
}

/** The feedback plugs that go in again with some acts; a cable that is exchanged is plugged in by that. */
function plugsWith(built: Built, option: Named): Built['plugs'] {
  const exchanged = built.plugs.length === 0 ? [] : actsOf(built, option).flatMap((act) => ('feedback' in act ? act.feedback : []));
  return built.plugs.filter(({ act }) => 'feedback' in act && !exchanged.includes(act.feedback));
}

function plugMinutes(plugs: Built['plugs']): number {
  return plugs.reduce((sum, { minutes }) => sum + minutes, 0);
}

const restart = { do: 'provoke', how: 'wait', subjects: [] } as const;

/** Everything that can be done now, and everything that would be useless. */
export function listDrafts(
  built: Built,
  rules: Rules,
  ahead: LookAhead,
  at: Situation,
): { readonly drafts: readonly Draft[]; readonly useless: readonly UselessDraft[] } {
  const { drafts, useless } = notedFirst(
    built,
    at,
    ahead.steps(at).map((option) => draftOf(built, option)),
  );
  built.looks.forEach(({ step, own, spreads }, look) => {
    if (rules.look(at, look) === null) {
      const id = built.decision.looks[look]?.spread('')?.id;
      const isKnown = id !== undefined && built.seen.includes(id);
      const reason: UselessReason = isKnown ? { code: 'done-already' } : { code: 'same-for-all', outcome: likeliest(spreads) };
      useless.push({ step, option: { kind: 'look', index: look, cost: 0, outcomes: [] }, state: own.state, reason });
    }
  });
  built.acts.forEach(({ act, own }, index) => {
    if (rules.act(at, index) === null) {
      const option: Option = { kind: 'act', index, acts: [index], cost: 0, outcomes: [] };
      useless.push({ step: { do: 'act', acts: [act] }, option, state: own.state, reason: { code: 'mends-nothing' } });
    }
  });
  return { drafts, useless };
}

/**
 * A restart for its own sake erases what a halted machine shows. As long as a display or report that nobody has noted would tell
 * something, or nobody said whether it is halted at all, it waits.
 */
function notedFirst(
  built: Built,
  { state }: Situation,
  drafts: readonly Draft[],
): { readonly drafts: readonly Draft[]; readonly useless: UselessDraft[] } {
  const { halted, isHaltedSaid, sinceTrip } = built.setting.state;
  const isUnnoted = !isHaltedSaid || drafts.some(({ step }) => step.do === 'read-display' || step.do === 'read-report');
  if (!halted || !isUnnoted || state === 'isolated' || sinceTrip.length > 0) {
    return { drafts, useless: [] };
  }
  const [waiting, rest] = [true, false].map((isRestart) => drafts.filter(({ step }) => (step.do === 'provoke') === isRestart));
  return { drafts: rest ?? [], useless: (waiting ?? []).map((draft) => ({ ...draft, reason: { code: 'note-first' } })) };
}

function draftOf(built: Built, option: Option): Draft {
  const step = stepOf(built, option);
  const state =
    option.kind === 'look'
      ? (built.looks[option.index]?.own.state ?? 'open')
      : option.kind === 'act'
        ? (built.acts[option.index]?.own.state ?? 'isolated')
        : stateNeeded(step);
  // Whoever looks first plugs in later.
  const more = plugMinutes(option.kind === 'act' ? plugsWith(built, option) : built.plugs);
  return { step, option: more === 0 ? option : { ...option, cost: option.cost + more }, state };
}

function likeliest(spreads: readonly ReadonlyMap<string, number>[]): string {
  return [...(spreads[0] ?? [])].reduce((best, one) => (one[1] > best[1] ? one : best), ['', -1])[0];
}

/** For every act the batch that the exact plan makes of it, where that is more than the act alone. */
export function exactBatches(built: Built, rules: Rules, exact: ExactPlanner, at: Situation): readonly Draft[] {
  return built.acts.flatMap((_, index) => {
    const first = rules.act(at, index);
    let next = first;
    const acts: number[] = [];
    let cost = 0;
    while (next?.kind === 'act') {
      acts.push(next.index);
      cost += next.cost;
      const after: Situation | undefined = next.outcomes[0]?.after;
      next = after === undefined ? null : (exact.best(after)?.option ?? null);
    }
    return acts.length < 2 || next?.kind !== 'restart'
      ? []
      : [draftOf(built, { kind: 'act', index, acts, cost: cost + next.cost, outcomes: next.outcomes })];
  });
}

/** What a step costs by itself. */
export function ownCosts(built: Built, at: Situation, option: Option): StepCosts {
  const entries =
    option.kind === 'look'
      ? [built.looks[option.index]]
      : option.kind === 'act'
        ? (option.acts ?? []).map((index) => built.acts[index])
        : [];
  const owns = entries.flatMap((entry) => entry?.own ?? []);
  const sum = (of: (own: (typeof owns)[number]) => number) => owns.reduce((total, own) => total + of(own), 0);
  const provoking = option.kind === 'provoke' ? (built.provocations[option.index]?.minutes ?? 0) : 0;
  const minutes = sum((own) => own.minutes) + provoking + (option.kind === 'act' ? plugMinutes(plugsWith(built, option)) : 0);
  const { change, restart: toRestart, acts } = built.decision;
  const state = owns[0]?.state ?? at.state;
  const changes = change[at.state][state] + (option.kind === 'look' ? 0 : toRestart[state]);
  const later =
    option.kind === 'act'
      ? (option.acts ?? []).reduce((total, index) => total + (acts[index]?.cost ?? 0), 0) - sum((own) => sumOf(own))
      : 0;
  const parts = sum((own) => own.parts);
  return { minutes, changes, parts, risks: sum(sumOf) - sum((own) => own.minutes) - parts, later: Math.max(0, later) };
}

/** The changes of state that a step makes, in their order. */
export function changesOf(table: RepairTable, from: MachineState, option: Option, state: MachineState): readonly StateChange[] {
  const listed = (list: readonly (StateChange | null)[]) => list.filter((change) => change !== null);
  if (option.kind === 'look') {
    return listed([stateChange(table, from, state)]);
  }
  if (option.kind === 'act' && state === 'isolated') {
    return listed([stateChange(table, from, 'isolated'), stateChange(table, 'isolated', 'closed')]);
  }
  // A restart is one from the closed cabinet; a door that is opened to move cables is counted in the minutes of provoking.
  const reached = option.kind === 'act' ? state : 'closed';
  const powerCycle: StateChange = {
    from: 'closed',
    to: 'closed',
    minutes: table.changes.boot.value,
    effects: ['erases-displays', 'restarts'],
  };
  return listed([
    stateChange(table, from, reached),
    reached === 'closed' ? null : stateChange(table, reached, 'closed'),
    ...(from === 'isolated' ? [] : [powerCycle]),
  ]);
}
