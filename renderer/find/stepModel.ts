import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { chooseParting, type RankedStep, type Step, type StepOutcome } from '../../engine/steps/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { stepKey } from '../state/stepCommands.ts';
import { type Spot, shareBySpot, spotKey, spotOf } from './candidates.ts';

/** The step whose card is shown: the one that was asked for as long as it is listed, else the best. */
export function selectShownStep({ steps, chosenStep }: AppState): RankedStep | null {
  const list = steps?.list ?? [];
  return list.find(({ step }) => chosenStep !== null && stepKey(step) === chosenStep.key) ?? list[0] ?? null;
}

/** The best step; null while there is none. */
export function selectBestStep({ steps }: AppState): RankedStep | null {
  return steps?.list[0] ?? null;
}

/** What tells the members of the first ambiguity group apart; null where nothing does. */
export function selectPartingStep({ steps }: AppState): RankedStep | null {
  return steps ? chooseParting(steps.list) : null;
}

/** A place suspected after an outcome. */
interface SpotShare {
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
export const standsOut = 0.9;

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
function placesOf(subject: Readonly<Record<string, string | undefined>>, topology: Topology): readonly string[] {
  const { link, end, unit, other, lead, feedback } = subject;
  const record = link === undefined ? undefined : [...topology.links.values()].find(({ id }) => id === link);
  const upper = record?.upper && 'unit' in record.upper ? record.upper.unit : undefined;
  const plugUnit = end === 'upper' ? upper : end === 'lower' ? record?.lower?.unit : undefined;
  const fed = topology.feeds.find((feed) => feed.lead === lead)?.to;
  const owner = [...topology.feedbacks.values()].find(({ id }) => id === feedback)?.unit;
  return [link, plugUnit, unit, other, fed, owner].filter((id) => id !== undefined);
}
