import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Plan, PlannedStep, StepRisk } from '../../engine/plan/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { chooseParting, type RankedStep, type Step, type StepOutcome } from '../../engine/steps/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { stepKey } from '../state/stepCommands.ts';
import { type Spot, shareBySpot, spotKey, spotOf } from './candidates.ts';

/** The plan that holds now, or the last one while the next is worked out. */
export function selectPlan({ planned }: AppState): Plan | null {
  return planned?.plan ?? null;
}

/** The step whose card is shown: the one that was asked for as long as it is listed, else the best that is of use. */
export function selectShownStep(state: AppState): PlannedStep | null {
  const { chosenStep } = state;
  const list = selectPlan(state)?.steps ?? [];
  return list.find(({ step }) => chosenStep !== null && stepKey(step) === chosenStep.key) ?? selectBestStep(state);
}

/** The best step; null while there is none, or where nothing that is left is worth doing. */
export function selectBestStep(state: AppState): PlannedStep | null {
  const plan = selectPlan(state);
  const [first] = plan?.steps ?? [];
  return plan && !plan.exhausted && first?.useless === null ? first : null;
}

/** What tells the members of the first ambiguity group apart; null where nothing does. */
export function selectPartingStep(state: AppState): RankedStep | null {
  return chooseParting((selectPlan(state)?.steps ?? []).filter(({ useless }) => useless === null));
}

/** Minutes that a step takes before it is answered: hands and changes of state; what is only worth minutes is left aside. */
export function minutesOf({ own }: PlannedStep): number {
  return own.minutes + own.changes;
}

const bySeverity: readonly StepRisk['code'][] = ['reference-position', 'live-work', 'spoiled-part'];

/** What a step endangers most; what every handling may do is no news. */
export function worstRisk({ risks }: PlannedStep): StepRisk | null {
  return bySeverity.flatMap((code) => risks.find((risk) => risk.code === code) ?? [])[0] ?? null;
}

/** A place suspected, and how much. */
export interface SpotShare {
  readonly spot: Spot;
  readonly share: number;
}

/** The places suspected after an outcome, likeliest first: items of one place added up. */
function spotsAfter(outcome: StepOutcome, diagnosis: Diagnosis): readonly SpotShare[] {
  const spots = new Map<string, SpotShare>();
  for (const { item, probability } of outcome.suspects) {
    const fault = faultOf(item, diagnosis);
    if (!fault) continue;
    const spot = spotOf(fault);
    // Two items of one place at fault at once are counted twice; the cap keeps the figure a probability.
    spots.set(spotKey(spot), { spot, share: Math.min(1, (spots.get(spotKey(spot))?.share ?? 0) + probability) });
  }
  return [...spots.values()].sort((a, b) => b.share - a.share);
}

/** How an outcome would change what is suspected. */
export interface ShareChange {
  readonly spot: Spot;
  readonly before: number;
  readonly after: number;
}

/** Places in the picture of an outcome. */
const mostPlaces = 3;

/** The places suspected most now, and how likely each would be after an outcome: the same places for every outcome. */
export function changesAfter(outcome: StepOutcome, diagnosis: Diagnosis): readonly ShareChange[] {
  const now = shareBySpot(diagnosis);
  const after = new Map(spotsAfter(outcome, diagnosis).map(({ spot, share }) => [spotKey(spot), share]));
  const spots = new Map(diagnosis.items.map(({ item }) => [spotKey(spotOf(item.fault)), spotOf(item.fault)]));
  return [...now]
    .sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
    .slice(0, mostPlaces)
    .flatMap(([key, before]) => {
      const spot = spots.get(key);
      return spot ? [{ spot, before, after: after.get(key) ?? 0 }] : [];
    });
}

function faultOf(item: string, diagnosis: Diagnosis): Fault | undefined {
  return diagnosis.items.find((ranked) => ranked.item.key === item)?.item.fault;
}

/** What would be suspected most after an outcome, and how much. */
export function suspectAfter(
  { suspects: [first] }: StepOutcome,
  diagnosis: Diagnosis,
): { readonly fault: Fault; readonly share: number } | null {
  const fault = first && faultOf(first.item, diagnosis);
  return fault ? { fault, share: first.probability } : null;
}

/** One place this likely stands out. */
const standsOut = 0.9;

/** Whether one place stands out already. */
export function isSettled(diagnosis: Diagnosis): boolean {
  return Math.max(0, ...shareBySpot(diagnosis).values()) >= standsOut;
}

/** In how many of a hundred such cases one place stands out after the step. */
export function settledInHundred({ outcomes }: RankedStep, diagnosis: Diagnosis): number {
  const share = outcomes.reduce(
    (sum, outcome) => sum + ((spotsAfter(outcome, diagnosis)[0]?.share ?? 0) >= standsOut ? outcome.probability : 0),
    0,
  );
  return Math.round(share * 100);
}

/** Ids of the units and links at which a step is done. */
export function placesOfStep(step: Step, topology: Topology): readonly string[] {
  switch (step.do) {
    case 'read-display':
      return [step.unit];
    case 'read-report':
      return [];
    case 'look':
      return placesOf(step.look, topology);
    case 'act':
      return step.acts.flatMap((act) => placesOf(act, topology));
    case 'provoke':
      return step.subjects;
  }
}

/** A plug is at its cable and at the unit in which it sits. */
export function placesOf(subject: Readonly<Record<string, string | undefined>>, topology: Topology): readonly string[] {
  const { link, end, unit, other, lead, feedback, cable } = subject;
  const record = link === undefined ? undefined : [...topology.links.values()].find(({ id }) => id === link);
  const upper = record?.upper && 'unit' in record.upper ? record.upper.unit : undefined;
  const plugUnit = end === 'upper' ? upper : end === 'lower' ? record?.lower?.unit : undefined;
  const fed = topology.feeds.find((feed) => feed.lead === lead)?.to;
  const owner = [...topology.feedbacks.values()].find(({ id }) => id === feedback)?.unit;
  return [link, plugUnit, unit, other, cable, fed, owner].filter((id) => id !== undefined);
}
