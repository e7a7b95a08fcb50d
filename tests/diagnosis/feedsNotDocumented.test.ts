import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { referenceLikelihood } from '../../engine/diagnosis/diagnose.reference.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import { plainContent } from '../bench/cabinets.ts';

const evidence: Evidence = {
  snapshots: [
    {
      onset: 'while-running',
      halted: true,
      displays: [
        { unit: 'u1.2', meanings: ['downstream-loss'] },
        { unit: 'u1.3', meanings: ['upstream-loss'] },
      ],
      reports: [{ chain: 'c1', gaps: [3] }],
    },
  ],
};

describe('a cabinet in which no 24 V lead is documented', () => {
  const { cabinet } = checkCabinet({ ...plainContent(1, 4), leads: [] });
  if (cabinet === null) throw new Error('the cabinet must be sound');
  const diagnosis = diagnose(cabinet, evidence);

  it('should be diagnosed as if every unit were fed, and the answer should say so', () => {
    expect(diagnosis.items[0]?.item.key).toMatch(/w1\.3/);
    expect(diagnosis.nothingBroken).toBe(0);
    expect(diagnosis.contradiction).toBeNull();
    expect(diagnosis.notes).toContainEqual({ code: 'feeds-not-documented' });
  });

  it('should weigh as the plain reading of the domain weighs', () => {
    // Likelihoods of a diagnosis are scaled by one factor.
    const ratios = diagnosis.hypotheses.slice(0, 5).map(
      ({ faults, likelihood }) =>
        referenceLikelihood(
          cabinet,
          evidence,
          faults.map(({ fault }) => fault),
        ) / likelihood,
    );
    for (const ratio of ratios) expect(ratio / (ratios[0] ?? 0)).toBeCloseTo(1, 9);
  });
});
