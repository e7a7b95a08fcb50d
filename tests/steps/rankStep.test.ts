import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { makeSetting, predictStep, rankStep } from '../../engine/steps/index.ts';
import { fullEvidence, middleCut, plainCabinet } from '../bench/cabinets.ts';

describe('what a step tells', () => {
  it('should not depend on whether equal predictions are the same object, which ranks looks that tell nothing quickly', () => {
    const cabinet = plainCabinet(1, 6);
    const { snapshots } = fullEvidence(cabinet, middleCut(6));
    const evidence = { snapshots: snapshots.map(({ displays: _displays, ...rest }) => rest) };
    const hypotheses = diagnose(cabinet, evidence).hypotheses.slice(0, 10);
    const setting = makeSetting(cabinet, evidence);
    let telling = 0;
    for (const unit of cabinet.units.keys()) {
      const step = { do: 'read-display', unit } as const;
      const spreads = hypotheses.map(({ faults }) =>
        predictStep(
          step,
          setting,
          faults.map(({ fault }) => fault),
        ),
      );
      const ranked = rankStep(step, setting, hypotheses, spreads, []);
      const copied = spreads.map((spread) => new Map(spread));
      expect(rankStep(step, setting, [...hypotheses], copied, [])).toEqual(ranked);
      expect(rankStep(step, setting, hypotheses, spreads, [])).toEqual(ranked);
      telling += ranked.information > 0 ? 1 : 0;
    }
    expect([telling > 0, telling < cabinet.units.size]).toEqual([true, true]);
  });
});
