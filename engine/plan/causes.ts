import type { Diagnosis } from '../diagnosis/index.ts';
import type { Evidence, Fault } from '../schema/index.ts';
import { itemKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { mendedBy } from './mended.ts';

/** One thing that was mended and may have been the cause: an item, and what was wrong with it. */
export interface PossibleCause {
  /** The item, as `result.item` of a case names it, e.g. `plug/w3/lower`. */
  readonly key: string;
  /** Its reference and mode; its presence says nothing. */
  readonly fault: Fault;
  /** Probability of the hypotheses that hold it; those of all causes need not add up to 1. */
  readonly share: number;
}

/** Everything that was mended and may have been the cause, likeliest first, ties by item and mode. */
export function listCauses(cabinet: Cabinet, evidence: Evidence, { hypotheses }: Diagnosis): readonly PossibleCause[] {
  const isMended = mendedBy(cabinet, evidence);
  const causes = new Map<string, PossibleCause>();
  for (const { faults, probability } of hypotheses) {
    for (const { fault } of faults) {
      if (!isMended(fault)) continue;
      const key = itemKey(fault);
      const name = `${key} ${fault.mode}`;
      causes.set(name, { key, fault, share: (causes.get(name)?.share ?? 0) + probability });
    }
  }
  return [...causes].sort(([a, one], [b, other]) => other.share - one.share || Number(a > b) - Number(a < b)).map(([, cause]) => cause);
}
