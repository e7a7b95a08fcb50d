import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose, ratedModes, rateOf } from '../../engine/diagnosis/index.ts';
import { confirmCase, gatherExperience, ratesFor, withStrength } from '../../engine/experience/index.ts';
import type { CaseContent, Fault } from '../../engine/schema/index.ts';
import { makeCase } from '../generators/cases.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { provedCase } from './provedCase.ts';

const content = readContent('three-units');
const [link = ''] = (content.links ?? []).map(({ id }) => id);
const [first] = (content.units ?? []).filter(({ kind }) => kind !== 'supply');
const unit = first?.id ?? '';

const cut: Fault = { item: 'cable', link, mode: 'cut' };
const newCable = { do: 'replace-cable', link } as const;
const deadBoard: Fault = { item: 'board', unit, mode: 'dead-dark' };
const newBoard = { do: 'replace-board', unit } as const;
const cutCase = (id: string, more: Partial<Parameters<typeof provedCase>[1]> = {}) =>
  provedCase(content, { fault: cut, act: newCable, id, ...more });
const boardCase = (id: string) => provedCase(content, { fault: deadBoard, act: newBoard, id });

const confirmed = (one: CaseContent) => {
  const read = confirmCase(one);
  if ('reason' in read) throw new Error(JSON.stringify(read.reason));
  return read;
};
const whyNot = (one: CaseContent) => {
  const read = confirmCase(one);
  return 'reason' in read ? read.reason : null;
};

describe('confirmCase', () => {
  it('should share a case among what was mended and may have been the cause, and count it once in all', () => {
    const { causes, exposures, fixedWeight } = confirmed(cutCase('a'));
    expect(causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    // A new cable brings new plugs: cut, or a loose or fouled plug, all dark alike.
    expect(new Set(causes.map(({ item }) => item))).toEqual(new Set(['cable', 'plug']));
    expect(exposures.some(({ item }) => item === 'board')).toBe(true);
    expect(fixedWeight).toBe(0);
  });

  it('should count only what the result names, where it names it', () => {
    const named = (item: string, mode: string) => cutCase('a', { result: { end: 'proved', item, mode } });
    expect(confirmed(named(`cable/${link}`, 'cut')).causes).toEqual([
      { item: 'cable', mode: 'cut', share: expect.closeTo(1, 12) as number },
    ]);
    expect(whyNot(named(`board/${unit}`, 'dead-dark'))).toEqual({ why: 'cause-unclear' });
  });

  it('should not count what is not handed back running, and say why', () => {
    const one = cutCase('a');
    const { result: _, ...open } = one;
    expect(whyNot(open)).toEqual({ why: 'no-result' });
    for (const end of ['running-provisionally', 'open'] as const) {
      expect(whyNot({ ...one, result: { end } })).toEqual({ why: 'other-end', end });
    }
    const [halted] = one.evidence.snapshots;
    expect(whyNot({ ...one, evidence: { snapshots: halted ? [halted] : [] } })).toMatchObject({ why: 'not-proved-by-acts' });
  });

  const loose: Fault = { item: 'plug', link, end: 'lower', mode: 'loose' };
  const seated = { do: 'reseat-plug', link, end: 'lower' } as const;

  it('should not count what was only handled where much else may have been the cause, unless somebody saw it', () => {
    const handled = cutCase('a', { fault: loose, act: seated, result: { end: 'not-proved' } });
    expect(whyNot(handled)).toMatchObject({ why: 'not-proved-by-acts', because: ['only-handled', 'comes-and-goes'] });
    const seen = confirmed({ ...handled, result: { end: 'not-proved', item: `plug/${link}/lower`, mode: 'loose' } });
    expect(seen.causes).toEqual([{ item: 'plug', mode: 'loose', share: expect.closeTo(1, 12) as number }]);
    // What was not touched cannot have been mended.
    const elsewhere = { ...handled, result: { end: 'not-proved' as const, item: `plug/${link}/upper`, mode: 'loose' } };
    expect(whyNot(elsewhere)).toEqual({ why: 'cause-unclear' });
  });

  it('should count what was only handled where that mended nearly all it may have been, shared out among it', () => {
    // It ran after one plug was seated and the cable with the rest of it was cleaned at both ends, and is steady by what was seen.
    const handled = cutCase('a', { fault: loose, act: seated, result: { end: 'not-proved' } });
    const [halted] = handled.evidence.snapshots;
    if (halted === undefined) throw new Error('nothing seen');
    const both = (['upper', 'lower'] as const).map((end) => ({ do: 'clean-plug' as const, link, end }));
    const look = { look: 'light-at-plug' as const, link, end: 'lower' as const, outcomes: ['weak' as const] };
    const evidence = {
      snapshots: [
        { ...halted, looks: [look] },
        { interventions: both, restarted: true, onset: 'at-power-up' as const, halted: false },
        { restarted: true, onset: 'at-power-up' as const, halted: false },
        { restarted: true, onset: 'at-power-up' as const, halted: false },
      ],
    };
    const { causes } = confirmed({ ...handled, evidence });
    expect(causes[0]).toMatchObject({ item: 'plug' });
    expect(causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('should never count what was taken over from a simulation, however well the rest proves it', () => {
    const one = cutCase('a');
    expect('reason' in confirmCase(one)).toBe(false);
    for (const marked of one.evidence.snapshots.keys()) {
      const snapshots = one.evidence.snapshots.map((snapshot, index) =>
        index === marked ? { ...snapshot, simulated: true as const } : snapshot,
      );
      expect(whyNot({ ...one, evidence: { ...one.evidence, snapshots } })).toEqual({ why: 'simulated' });
    }
    const simulated = { ...one, evidence: { snapshots: one.evidence.snapshots.map((each) => ({ ...each, simulated: true as const })) } };
    const both = gatherExperience([boardCase('b'), { ...simulated, id: 'c' }]);
    expect(ratesFor(both)).toEqual(ratesFor(gatherExperience([boardCase('b')])));
  });

  it('should learn more of a case whose cause was named than of one that is shared out', () => {
    const factor = (one: CaseContent) =>
      gatherExperience([one]).rates.find(({ item, mode }) => item === 'cable' && mode === 'cut')?.factor ?? 0;
    const named = factor(cutCase('a', { result: { end: 'proved', item: `cable/${link}`, mode: 'cut' } }));
    const item = factor(cutCase('a', { result: { end: 'proved', item: `cable/${link}` } }));
    expect(named).toBeGreaterThan(item);
    expect(item).toBeGreaterThan(factor(cutCase('a')));
  });

  it('should not read a cabinet that is not sound', () => {
    expect(whyNot({ ...cutCase('a'), cabinet: { ...content, links: [] } })).toEqual({ why: 'cabinet-not-sound' });
  });

  it('should answer something for whatever case is read, and never throw', () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const drawn = makeCase(seed, { units: 3 });
      const read = confirmCase({ ...drawn, result: { end: 'proved' } });
      expect('reason' in read || read.causes.length > 0).toBe(true);
    }
  });

  it('should weigh exposure with the circumstances of the case', () => {
    const share = (one: CaseContent) => {
      const { exposures } = confirmed(one);
      const whole = exposures.reduce((sum, { weight }) => sum + weight, 0);
      return exposures.filter(({ item }) => item === 'plug').reduce((sum, { weight }) => sum + weight, 0) / whole;
    };
    expect(share(cutCase('a', { circumstances: [{ kind: 'transport-or-crash' }] }))).toBeGreaterThan(share(cutCase('a')));
  });

  it('should learn nothing of a rate that somebody wrote into the cabinet', () => {
    const written = { ...content, rates: [{ item: 'cable' as const, mode: 'cut', perYear: 0.3, source: 'our own count' }] };
    const known = confirmed(provedCase(written, { fault: cut, act: newCable }));
    expect(known.fixedWeight).toBeGreaterThan(0);
    expect(known.exposures.some(({ item, mode }) => item === 'cable' && mode === 'cut')).toBe(false);
  });
});

describe('gatherExperience', () => {
  it('should count a case once by its id: the one handed back last', () => {
    const old = cutCase('a', { result: { end: 'not-proved', at: '2026-01-01T00:00:00Z' } });
    const { confirmed: counted, uncounted } = gatherExperience([old, cutCase('a'), cutCase('a')]);
    expect(counted).toHaveLength(1);
    expect(uncounted.map(({ reason }) => reason)).toEqual([{ why: 'counted-already' }, { why: 'counted-already' }]);
    expect(ratesFor(gatherExperience([cutCase('a'), cutCase('a')]))).toEqual(ratesFor(gatherExperience([cutCase('a')])));
  });

  it('should be the same with another strength given at once or afterwards', () => {
    const cases = [cutCase('a'), boardCase('b')];
    expect(withStrength(gatherExperience(cases), 7)).toEqual(gatherExperience(cases, 7));
    expect(withStrength(gatherExperience(cases), 2)).toEqual(gatherExperience(cases));
  });

  it('should not care about the order of cases', () => {
    const cases = [cutCase('a'), cutCase('b'), boardCase('c'), cutCase('a', { result: { end: 'open' } })];
    const sorted = ratesFor(gatherExperience(cases));
    fc.assert(
      fc.property(fc.shuffledSubarray(cases, { minLength: cases.length }), (shuffled) => {
        expect(ratesFor(gatherExperience(shuffled))).toEqual(sorted);
      }),
      { seed: 3, numRuns: 4 },
    );
  });

  it('should not count for more because a case stood on sharpened rates', () => {
    const rates = ratesFor(gatherExperience([boardCase('x'), boardCase('y')]));
    const plain = cutCase('a');
    const sharpened = { ...plain, evidence: { ...plain.evidence, ...(rates && { rates }) } };
    expect(confirmed(sharpened).causes).toEqual(confirmed(plain).causes);
  });
});

describe('rates of confirmed cases in the diagnosis', () => {
  const rates = ratesFor(gatherExperience([boardCase('a'), boardCase('b'), boardCase('c')]));
  const fresh = cutCase('z').evidence.snapshots.slice(0, 1);

  it('should be the assumed ones exactly without a confirmed case', () => {
    expect(ratesFor(gatherExperience([]))).toBeUndefined();
    expect(ratesFor(gatherExperience([{ ...cutCase('a'), result: { end: 'open' } }]))).toBeUndefined();
  });

  it('should move the probabilities towards what was confirmed, and say so', () => {
    const { cabinet } = checkCabinet(content);
    if (!cabinet || !rates) throw new Error('no cabinet, no rates');
    const before = diagnose(cabinet, { snapshots: [{ halted: true }] });
    const after = diagnose(cabinet, { snapshots: [{ halted: true }], rates });
    const boards = ({ items }: typeof before) =>
      items.filter(({ item }) => item.kind === 'board').reduce((sum, { probability }) => sum + probability, 0);
    expect(boards(after)).toBeGreaterThan(boards(before));
    expect(before.notes).toContainEqual({ code: 'rates-assumed' });
    expect(after.notes).toContainEqual({ code: 'rates-sharpened', cases: 3 });
    expect(after.notes).not.toContainEqual({ code: 'rates-assumed' });
    // What was seen still decides.
    expect(diagnose(cabinet, { snapshots: fresh, rates }).items[0]?.item.kind).toBe(
      diagnose(cabinet, { snapshots: fresh }).items[0]?.item.kind,
    );
  });

  it('should leave alone a rate that somebody wrote, and sharpen one that is marked as assumed', () => {
    const row = { item: 'board' as const, mode: 'dead-dark' as const, perYear: 0.02 };
    const perYear = (source?: string) =>
      rateOf(row, { ...content, rates: [{ ...row, ...(source === undefined ? {} : { source }) }] }, rates).perYear;
    expect(perYear('count of 2025')).toBe(0.02);
    expect(perYear()).toBe(0.02);
    expect(perYear('assumed')).toBeGreaterThan(0.02);
  });

  it('should be multiples that are known by their modes', () => {
    for (const { item, mode, factor } of rates?.factors ?? []) {
      expect(ratedModes.some((one) => one.item === item && one.mode === mode)).toBe(true);
      expect(factor).toBeGreaterThan(0);
    }
  });
});
