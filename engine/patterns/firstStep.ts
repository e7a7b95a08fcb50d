import { compareText } from '../base/index.ts';
import type { Diagnosis, RankedHypothesis, RankedItem } from '../diagnosis/index.ts';
import { bestStep } from '../plan/index.ts';
import type { Evidence } from '../schema/index.ts';
import type { Step } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { PatternGroup } from './types.ts';

/** What to do first when the pattern of a group is seen and one of its faults is the cause; null where nothing tells or mends. */
export function firstStep(cabinet: Cabinet, group: PatternGroup): Step | null {
  const evidence: Evidence = {
    snapshots: [
      {
        onset: 'while-running',
        halted: true,
        displays: [...group.displays].map(([unit, meaning]) => ({ unit, meanings: [meaning] })),
        reports: [...group.reports].map(([chain, gap]) => ({ chain, gaps: [gap] })),
      },
    ],
  };
  // Looking ahead is enough for the first step, and a large cabinet has many groups.
  return bestStep(cabinet, evidence, diagnosisOf(group));
}

/** The group as a diagnosis: its faults alone, by their rates. Nothing else is known, and nothing else is asked of it. */
function diagnosisOf({ faults, ratePerYear }: PatternGroup): Diagnosis {
  const hypotheses = faults.map(
    ({ fault, item, ratePerYear: rate }): RankedHypothesis => ({
      faults: [{ item, fault: { ...fault, presence: 'steady' } }],
      probability: ratePerYear === 0 ? 1 / faults.length : rate / ratePerYear,
      priorOdds: rate,
      likelihood: 1,
      group: 0,
    }),
  );
  const items = new Map<string, RankedItem>();
  for (const { faults: one, probability } of hypotheses) {
    for (const { item, fault } of one) {
      const known = items.get(item);
      const modes = [...(known?.modes ?? []), { mode: fault.mode, probability, intermittent: 0 }];
      items.set(item, { item: { key: item, kind: fault.item, fault }, probability: (known?.probability ?? 0) + probability, modes });
    }
  }
  const ranked = [...items.values()].sort((a, b) => b.probability - a.probability || compareText(a.item.key, b.item.key));
  return {
    items: ranked,
    hypotheses,
    groups: [
      {
        id: 0,
        probability: 1,
        items: ranked.map(({ item, probability }) => ({ item: item.key, probability })),
        hypotheses: hypotheses.length,
      },
    ],
    nothingBroken: 0,
    unvisitedShare: 0,
    contradiction: null,
    impossible: false,
    behaviours: [],
    notes: [],
    hypothesesVisited: hypotheses.length,
  };
}
