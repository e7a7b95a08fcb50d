import { assertNever } from '../base/index.ts';
import type { Intervention } from '../schema/index.ts';
import type { RankedStep, Step } from './types.ts';

/** Bit: what tells less does not tell two places apart. */
const leastParting = 0.05;
/** A step that tells the group apart nearly as well, and interferes less, is named in the place of the best one. */
const partsAlike = 0.3;

/** What tells the members of the first ambiguity group apart: the best step for that, or a gentler one that is nearly as good. */
export function chooseParting(ranked: readonly RankedStep[]): RankedStep | null {
  const most = Math.max(leastParting, ...ranked.map(({ partsGroup }) => partsGroup));
  const near = ranked.filter(({ partsGroup }) => partsGroup >= Math.max(leastParting, most * (1 - partsAlike)));
  // Equal ones in the order in which they stand.
  return near.reduce<RankedStep | null>((best, one) => (best && interference(best.step) <= interference(one.step) ? best : one), null);
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
