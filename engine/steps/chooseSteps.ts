import { assertNever } from '../base/index.ts';
import type { Intervention } from '../schema/index.ts';
import type { RankedStep, Step } from './types.ts';

/** An act that mends at least this often is done without asking further. */
const surelyMends = 0.9;
/** Steps whose figures differ by no more than this share of the best one tell alike. */
const alike = 0.05;
/** Bit: what tells less is not worth a step. */
const leastWorth = 0.02;

/**
 * What to do first, and what else is worth doing, best first: an act that almost surely mends; else the step that tells most. Where
 * several tell about as much, the one that interferes least comes first. Of steps that do the same at the same place (the light at the
 * one plug or the other) only the best is listed.
 */
export function chooseSteps(ranked: readonly RankedStep[]): readonly RankedStep[] {
  const worthy = ranked.filter(({ information, mends }) => information >= leastWorth || mends >= surelyMends);
  const best = pickBest(worthy);
  if (!best) {
    return [];
  }
  const rest = worthy.filter((one) => one !== best);
  const seen = new Set([sameness(best.step)]);
  const listed = [best];
  for (const one of rest) {
    const key = sameness(one.step);
    if (!seen.has(key)) {
      seen.add(key);
      listed.push(one);
    }
  }
  return listed;
}

function pickBest(ranked: readonly RankedStep[]): RankedStep | undefined {
  const mending = ranked.filter(({ mends }) => mends >= surelyMends);
  return mending.length > 0 ? gentlest(mending, ({ mends }) => mends) : gentlest(ranked, ({ information }) => information);
}

/** Bit: what tells less does not tell two places apart. */
const leastParting = 0.05;
/** A step that tells the group apart nearly as well, and interferes less, is named in the place of the best one. */
const partsAlike = 0.3;

/** What tells the members of the first ambiguity group apart: the best step for that, or a gentler one that is nearly as good. */
export function chooseParting(ranked: readonly RankedStep[]): RankedStep | null {
  const parting = ranked.filter(({ partsGroup }) => partsGroup >= leastParting);
  return gentlest(parting, ({ partsGroup }) => partsGroup, partsAlike) ?? null;
}

/** Of those that come near the greatest worth, the one that interferes least; equal ones in the order in which they stand. */
function gentlest(ranked: readonly RankedStep[], worth: (step: RankedStep) => number, near = alike): RankedStep | undefined {
  const greatest = Math.max(...ranked.map(worth));
  return ranked
    .filter((one) => worth(one) >= greatest * (1 - near))
    .reduce<RankedStep | undefined>((best, one) => (best && interference(best.step) <= interference(one.step) ? best : one), undefined);
}

/** How much a step interferes with the machine, as an order: reading, measuring, pulling a plug, handling, exchanging, replacing. */
function interference(step: Step): number {
  switch (step.do) {
    case 'read-display':
    case 'read-report':
      return 0;
    case 'look':
      return step.look.look === 'voltage' || step.look.look === 'compare-plugs' || step.look.look === 'compare-fibres'
        ? 1
        : step.look.look === 'lamp'
          ? 3
          : 2;
    case 'act':
      return Math.max(...step.acts.map(actInterference)) + step.acts.length / 100;
    case 'provoke':
      return 4;
    default:
      return assertNever(step);
  }
}

function actInterference({ do: kind }: Intervention): number {
  if (kind.startsWith('replace')) {
    return 7;
  }
  if (kind.startsWith('exchange')) {
    return 6;
  }
  return kind === 'reseat-unit' || kind === 'take-out-unit' || kind === 'bridge-unit' ? 5 : 4;
}

/** Equal for steps that do the same at the same place. */
function sameness(step: Step): string {
  switch (step.do) {
    case 'read-display':
      return `display ${step.unit}`;
    case 'read-report':
      return `report ${step.chain}`;
    case 'look':
      return `${step.look.look} ${'link' in step.look ? step.look.link : step.look.unit}`;
    case 'act':
      return step.acts.map(({ do: kind, ...rest }) => `${kind} ${Object.values(withoutEnd(rest)).sort().join()}`).join();
    case 'provoke':
      return step.how;
    default:
      return assertNever(step);
  }
}

function withoutEnd(subject: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string | undefined>> {
  const { end: _end, ...rest } = subject;
  return rest;
}
