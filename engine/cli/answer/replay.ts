import type { Diagnosis } from '../../diagnosis/index.ts';
import { type Names, wordItem, wordReplayStep } from '../../messages/index.ts';
import type { ReplayStep } from '../../plan/index.ts';

/** A replay, as the JSON interface gives it. */
export interface JsonReplay {
  readonly steps: readonly {
    readonly snapshot: number;
    readonly kind: ReplayStep['kind'];
    readonly look: number | null;
    readonly label: string;
    readonly impossible: boolean;
    readonly nothingBroken: number;
    readonly suspects: readonly { readonly item: string; readonly label: string; readonly probability: number }[];
  }[];
}

/** The steps of a case with what was suspected after each. `most` cuts the lists of suspects. */
export function jsonReplay(
  names: Names,
  steps: readonly { readonly step: ReplayStep; readonly diagnosis: Diagnosis }[],
  most = Number.POSITIVE_INFINITY,
): JsonReplay {
  return {
    steps: steps.map(({ step, diagnosis }) => ({
      snapshot: step.snapshot,
      kind: step.kind,
      look: step.look,
      label: wordReplayStep(names, step),
      impossible: diagnosis.impossible,
      nothingBroken: diagnosis.nothingBroken,
      suspects: diagnosis.items
        .slice(0, most)
        .map(({ item, probability }) => ({ item: item.key, label: wordItem(names, item.fault), probability })),
    })),
  };
}
