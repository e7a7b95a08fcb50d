import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { itemKey } from '../../engine/simulation/index.ts';
import { soundSamples } from './index.ts';
import { makeCase } from './makeCase.ts';

const cases = soundSamples.flatMap((sample) =>
  sample.cases.map((sampleCase, i) => ({ name: `${sample.name}.${i + 1}`, misread: sampleCase.looks[0]?.misread, sample, sampleCase, i })),
);

function answer({ sample, i }: (typeof cases)[number]) {
  const { cabinet } = checkCabinet(sample.content);
  if (cabinet === null) throw new Error('unsound');
  return diagnose(cabinet, makeCase(sample, i).evidence);
}

const nameOf = (faults: readonly { readonly item: string; readonly mode: string; readonly presence: string | undefined }[]) =>
  faults
    .map(({ item, mode, presence }) => `${item} ${mode} ${presence ?? 'steady'}`)
    .sort()
    .join(' + ');

describe('diagnose, on the cases of the samples', () => {
  it.each(cases.filter(({ misread }) => misread === undefined))('should have the true fault in its first group: $name', (sampleCase) => {
    const diagnosis = answer(sampleCase);
    const truth = nameOf(
      sampleCase.sampleCase.faults.map((fault) => ({ item: itemKey(fault), mode: fault.mode, presence: fault.presence })),
    );
    const [first] = diagnosis.groups;
    const inFirst = diagnosis.hypotheses
      .filter((hypothesis) => hypothesis.group === first?.id)
      .map((hypothesis) => nameOf(hypothesis.faults.map(({ item, fault }) => ({ item, mode: fault.mode, presence: fault.presence }))));
    expect(diagnosis.impossible).toBe(false);
    expect(diagnosis.contradiction).toBeNull();
    expect(inFirst).toContain(truth);
    if (sampleCase.sampleCase.faults.length === 1) {
      expect(first?.items.map(({ item }) => item)).toContain(sampleCase.sampleCase.faults.map(itemKey)[0]);
    }
  });

  it.each(cases.filter(({ misread }) => misread !== undefined))('should name the misread display: $name', (sampleCase) => {
    const diagnosis = answer(sampleCase);
    const misread = Object.keys(sampleCase.misread ?? {}).map((unit) => ({ kind: 'display', snapshot: 0, unit }));
    expect(diagnosis.contradiction?.mispredicted).toEqual(misread);
    expect(diagnosis.contradiction?.withoutWhich.map(({ observation }) => observation)).toEqual(misread);
    // The true item is suspected all the same.
    const [fault] = sampleCase.sampleCase.faults;
    if (fault === undefined) throw new Error('no fault');
    expect(diagnosis.groups[0]?.items.map(({ item }) => item)).toContain(itemKey(fault));
  });

  it('should have exactly one case with a misread display', () => {
    expect(cases.filter(({ misread }) => misread !== undefined).length).toBe(1);
  });
});
