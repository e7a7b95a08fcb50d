import { changeCost, repairTable, rowOf } from '../repair/index.ts';
import type { AllowedStep, ExerciseContent, Fault, Possibility } from '../schema/index.ts';
import { modeKey } from '../simulation/index.ts';
import { type Step, stepsFor } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type GameStep, isIntermittent, makeGame, type Stand, startBelief, startStand } from './game.ts';
import { isMended, Predictions } from './outcomes.ts';

/** Minutes of changes of state, from the repair table of the cabinet. */
export function usualTimes({ content }: Cabinet): ExerciseContent['times'] {
  const table = repairTable(content);
  const open = changeCost(table, 'closed', 'open');
  return {
    openMinutes: open,
    isolateMinutes: changeCost(table, 'closed', 'isolated') - open,
    bootMinutes: changeCost(table, 'isolated', 'closed'),
  };
}

/** Minutes of a step itself, from the repair table; editable in the exercise. Parts and weights are not counted: only minutes are. */
export function usualMinutes({ content }: Cabinet, step: Step): number {
  const table = repairTable(content);
  switch (step.do) {
    case 'read-display':
      return table.looks.display.minutes.value;
    case 'read-report':
      return table.looks.report.minutes.value;
    case 'look':
      return table.looks[step.look.look].minutes.value;
    case 'act':
      return step.acts.reduce((sum, act) => sum + rowOf(table, act).minutes.value, 0);
    default:
      return 0;
  }
}

/** Steps that concern what may be wrong, and the displays and reports that are not given; ids are numbers in order. */
export function listAllowed(
  cabinet: Cabinet,
  given: ExerciseContent['given'],
  possible: readonly Possibility[],
): readonly { readonly step: Step; readonly minutes: number }[] {
  const shown = new Set((given.displays ?? []).map(({ unit }) => unit));
  const told = new Set((given.reports ?? []).map(({ chain }) => chain));
  const steps = new Map<string, Step>();
  const add = (step: Step) => steps.set(JSON.stringify(step), step);
  for (const unit of cabinet.units.keys()) if (!shown.has(unit)) add({ do: 'read-display', unit });
  for (const { id, units } of cabinet.chains) if (units.length > 0 && !told.has(id)) add({ do: 'read-report', chain: id });
  for (const { faults } of possible) for (const fault of faults) for (const step of stepsFor(fault, cabinet)) add(step);
  return [...steps.values()].map((step) => ({ step, minutes: usualMinutes(cabinet, step) }));
}

/** The same, with the restart alone; without lamps where something may come and go, since their outcome would not say what is there. */
export function listOffered(
  cabinet: Cabinet,
  given: ExerciseContent['given'],
  possible: readonly Possibility[],
): readonly { readonly step: Step; readonly minutes: number }[] {
  const changes = possible.some(({ faults }) => faults.some(isIntermittent));
  return [...listAllowed(cabinet, given, possible), { step: { do: 'act', acts: [] } satisfies Step, minutes: 0 }].filter(
    ({ step }) => !(changes && step.do === 'look' && step.look.look === 'lamp'),
  );
}

/** Most steps that a trainee can oversee, and most of those that only distract. */
const mostSteps = 22;
const mostDistracting = 4;
/** Fewer looks where acts must mend as well. */
const mostLooksBeforeMending = 6;

/**
 * Chooses from all that could be done what an exercise allows: looks that can tell something at the start, a few that cannot, and acts only
 * where the looks do not decide (or where the machine is to be mended: then one act for each thing that may be wrong).
 */
export function chooseAllowed(exercise: Omit<ExerciseContent, 'steps'>, cabinet: Cabinet): AllowedStep[] {
  const changes = exercise.possible.some(({ faults }) => faults.some(isIntermittent));
  const all = listAllowed(cabinet, exercise.given, exercise.possible)
    .filter(({ step }) => !(changes && step.do === 'look' && step.look.look === 'lamp'))
    .map((one, index) => ({ id: `s${index + 1}`, ...one }));
  const game = makeGame({ ...exercise, steps: all as AllowedStep[] }, cabinet); // steps of the engine are steps of the file
  const predictions = new Predictions(game);
  const stand = startStand(game.exercise);
  const belief = startBelief(game);
  const tells = (step: GameStep) => predictions.branchesOf(step, stand, belief).length > 1;
  const isLook = ({ step }: { readonly step: Step }) => step.do === 'look';
  const isAct = ({ step }: { readonly step: Step }) => step.do === 'act';
  const reads = all.filter((one) => !isLook(one) && !isAct(one));
  const looks = all.filter(isLook);
  const telling = distinct(looks.filter(tells), (step) => signature(game.possible.length, step, predictions, stand).join());
  const idle = looks.filter((step) => !tells(step)).slice(0, mostDistracting);
  const chosen = [
    ...reads.slice(0, mostSteps),
    ...telling.slice(0, exercise.solved === 'mended' ? mostLooksBeforeMending : mostSteps),
    ...idle,
  ];
  const acts = all.filter(isAct);
  const { length } = game.possible;
  const needed =
    exercise.solved === 'mended'
      ? mendingActs(acts, cabinet, exercise.possible)
      : partingActs(
          acts,
          game.possible.map(({ answer }) => answer),
          chosen,
          (step) => signature(length, step, predictions, stand),
        );
  return [...chosen, ...needed].map(({ step, minutes }, index) => ({ id: `s${index + 1}`, step: step as AllowedStep['step'], minutes }));
}

/** What a step shows for each possibility: steps with equal ones tell the same. */
function signature(count: number, step: GameStep, predictions: Predictions, stand: Stand): readonly string[] {
  return Array.from({ length: count }, (_, index) => index).map((index) =>
    predictions
      .turnsOf(step, stand, { index, present: everything })
      .map(({ outcome }) => outcome)
      .join('/'),
  );
}

/** At the first trip all faults are there, however many. */
const everything = 15;

/** The cheapest step of each signature. */
function distinct(steps: readonly GameStep[], key: (step: GameStep) => string): readonly GameStep[] {
  const seen = new Set<string>();
  return [...steps]
    .sort((a, b) => a.minutes - b.minutes)
    .filter((step) => {
      const name = key(step);
      const isNew = !seen.has(name);
      seen.add(name);
      return isNew;
    });
}

/** Acts, the most useful first, until two possibilities of different answers never show the same all along. */
function partingActs(
  acts: readonly GameStep[],
  answers: readonly string[],
  looks: readonly GameStep[],
  shows: (step: GameStep) => readonly string[],
): readonly GameStep[] {
  let groups = regroup([answers.map((_, index) => index)], looks.map(shows), answers);
  const left = acts.map((act) => ({ act, shown: shows(act) }));
  const chosen: GameStep[] = [];
  while (groups.length > 0) {
    const worth = left
      .map((one) => ({ ...one, groups: regroup(groups, [one.shown], answers) }))
      .map((one) => ({ ...one, value: (undecided(groups) - undecided(one.groups)) / (one.act.minutes + usualOverhead) }))
      .sort((a, b) => b.value - a.value);
    const [best] = worth;
    if (best === undefined || best.value <= 0) break;
    chosen.push(best.act);
    groups = best.groups;
  }
  return chosen;
}

/** Minutes that every act costs besides: switching off and on. */
const usualOverhead = 15;

/** Groups that still hold different answers, after further steps have parted them. */
function regroup(
  groups: readonly (readonly number[])[],
  shown: readonly (readonly string[])[],
  answers: readonly string[],
): readonly (readonly number[])[] {
  const parted = groups.flatMap((group) => {
    const byShown = new Map<string, number[]>();
    for (const index of group) {
      const key = shown.map((list) => list[index] ?? '').join('|');
      byShown.set(key, [...(byShown.get(key) ?? []), index]);
    }
    return [...byShown.values()];
  });
  return parted.filter((group) => new Set(group.map((index) => answers[index])).size > 1);
}

/** Pairs that stand together in a group. */
function undecided(groups: readonly (readonly number[])[]): number {
  return groups.reduce((sum, { length }) => sum + (length * (length - 1)) / 2, 0);
}

/** Acts until each fault that may be there is mended by one of them, most for the minute first; and for each the cheapest one. */
function mendingActs(acts: readonly GameStep[], cabinet: Cabinet, possible: readonly Possibility[]): readonly GameStep[] {
  const faults = possible.flatMap((one) => one.faults);
  const areSeveral = possible.some((one) => one.faults.length > 1);
  const each = [...new Map(faults.map((fault) => [modeKey(fault), fault])).values()];
  const mends = acts.map((act) => {
    const done = act.step.do === 'act' ? act.step.acts : [];
    return { act, mended: each.filter((fault) => isMended(cabinet, { acts: done }, [fault])) };
  });
  const done = new Set<Fault>();
  const chosen: GameStep[] = [];
  for (;;) {
    const worth = mends
      .map(({ act, mended }) => ({ act, fresh: mended.filter((fault) => !done.has(fault)) }))
      .map((one) => ({ ...one, value: one.fresh.length / (one.act.minutes + usualOverhead) }))
      .sort((a, b) => b.value - a.value);
    const [best] = worth;
    if (best === undefined || best.value <= 0) break;
    chosen.push(best.act);
    for (const fault of best.fresh) done.add(fault);
  }
  // What mends most is seldom what mends one thing at the least cost: to know which it is, one has to look. Of several faults at once the
  // orders of all these acts would be too many for an exact plan.
  const cheapest = (areSeveral ? [] : each).flatMap((fault) => {
    const [least] = mends.filter(({ mended }) => mended.includes(fault)).sort((a, b) => a.act.minutes - b.act.minutes);
    return least === undefined ? [] : [least.act];
  });
  return [...new Set([...chosen, ...cheapest])];
}
