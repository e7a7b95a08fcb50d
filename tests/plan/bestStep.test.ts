import { describe, expect, it } from 'vitest';
import { diagnose, listFaultSpace } from '../../engine/diagnosis/index.ts';
import { bestStep, planning, planSteps } from '../../engine/plan/index.ts';
import type { Evidence, Fault } from '../../engine/schema/index.ts';
import { fullEvidence, plainCabinet } from '../bench/cabinets.ts';
import { readCabinet } from '../support/sampleCabinets.ts';

describe('the best step alone', () => {
  it.each(['two-chains', 'bench'])('should be the first of a whole plan that looks ahead: %s', (name) => {
    const cabinet = name === 'bench' ? plainCabinet(1, 9) : readCabinet(name);
    const { faults } = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: 7, withWiringMistakes: false });
    // A few are enough: neighbours are alike.
    const picked = faults.flat().filter(({ presence }, index) => presence === 'steady' && index % 17 === 0);
    for (const fault of picked) {
      const evidence: Evidence = fullEvidence(cabinet, fault as Fault);
      const diagnosis = diagnose(cabinet, evidence);
      const whole = planSteps(cabinet, evidence, diagnosis, { exactSituations: 0 });
      const first = whole.steps.find(({ useless }) => useless === null)?.step ?? null;
      expect(bestStep(cabinet, evidence, diagnosis), JSON.stringify(fault)).toEqual(first);
    }
  });
});

describe('planning', () => {
  it('should pause at every world, act and step before its first answer, so that a newer question need not wait', () => {
    const cabinet = plainCabinet(1, 12);
    const evidence = fullEvidence(cabinet, { item: 'cable', link: 'w1.6', mode: 'cut' });
    const work = planning(cabinet, evidence, diagnose(cabinet, evidence));
    const shares: number[] = [];
    let next = work.next();
    for (; next.done !== true && next.value.plan === null; next = work.next()) {
      shares.push(next.value.share);
    }
    const steps = next.done !== true ? (next.value.plan?.steps.filter(({ useless }) => useless === null).length ?? 0) : 0;
    expect(shares.length).toBeGreaterThan(2 * steps + 20);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});
