import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type Diagnosis, diagnose } from '../../engine/diagnosis/index.ts';
import { findCandidate, listCandidates, shareBySpot, spotKey } from '../../renderer/find/candidates.ts';
import { arbitraryCase } from '../generators/cases.ts';
import { soundSamples } from '../samples/index.ts';
import { makeCase } from '../samples/makeCase.ts';

function diagnoseSample(name: string, number: number) {
  const sample = soundSamples.find((one) => one.name === name);
  const seen = sample && makeCase(sample, number - 1);
  const cabinet = seen && checkCabinet(seen.cabinet).cabinet;
  if (!seen || !cabinet) throw new Error(`no sample ${name} ${number}`);
  return { cabinet, evidence: seen.evidence, diagnosis: diagnose(cabinet, seen.evidence) };
}

/** Diagnoses of random cases, worked out once for all laws. */
const diagnoses: readonly Diagnosis[] = fc.sample(arbitraryCase(6), { seed: 20261125, numRuns: 24 }).flatMap(({ cabinet, evidence }) => {
  const checked = checkCabinet(cabinet).cabinet;
  return checked ? [diagnose(checked, evidence)] : [];
});

function overDiagnoses(law: (diagnosis: Diagnosis) => void): void {
  expect(diagnoses.length).toBeGreaterThan(12);
  for (const diagnosis of diagnoses) law(diagnosis);
}

describe('listCandidates', () => {
  it('should name a cable with its plugs as one place, and members of one group beside each other', () => {
    const candidates = listCandidates(diagnoseSample('two-chains', 1).diagnosis);
    const [first, second, third] = candidates;
    expect(first?.spots.map(spotKey)).toEqual(['link/WH3']);
    expect(new Set(first?.parts.map(({ kind }) => kind))).toEqual(new Set(['cable', 'plug', 'route']));
    expect([second, third].map((one) => one?.spots.map(spotKey).join()).sort()).toEqual(['unit/TB2', 'unit/TB3']);
    expect([second?.group, third?.group]).toEqual([first?.group, first?.group]);
  });

  it('should name two faults at once as one candidate of two places', () => {
    const [first] = listCandidates(diagnoseSample('forty-units', 2).diagnosis);
    expect(first?.spots.map(spotKey)).toEqual(['link/WH36', 'link/WH5']);
  });

  it('should keep members of a group together, list nothing twice, and never exceed the whole', () => {
    overDiagnoses((diagnosis) => {
      const candidates = listCandidates(diagnosis);
      const runs = candidates.map(({ group }) => group).filter((group, index, all) => group !== all[index - 1]);
      expect(new Set(runs).size).toBe(runs.length);
      expect(new Set(candidates.map(({ key }) => key)).size).toBe(candidates.length);
      expect(candidates.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThanOrEqual(1 + 1e-9);
    });
  });

  it('should put the most probable candidate first', () => {
    overDiagnoses((diagnosis) => {
      const [first, ...others] = listCandidates(diagnosis);
      if (first) for (const other of others) expect(other.probability).toBeLessThanOrEqual(first.probability + 1e-12);
    });
  });

  it('should give shares that are probabilities', () => {
    overDiagnoses((diagnosis) => {
      for (const share of shareBySpot(diagnosis).values()) expect(share >= 0 && share <= 1).toBe(true);
    });
  });
});

describe('findCandidate', () => {
  it('should find every candidate by its own key, and nothing by a foreign one', () => {
    overDiagnoses((diagnosis) => {
      const candidates = listCandidates(diagnosis);
      for (const candidate of candidates) expect(findCandidate(candidates, candidate.key)).toBe(candidate);
      expect(findCandidate(candidates, 'link/nowhere cable/nowhere:cut')).toBeUndefined();
    });
  });
});
