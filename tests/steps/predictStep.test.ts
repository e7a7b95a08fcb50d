import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { Evidence, Fault } from '../../engine/schema/index.ts';
import { likelyBehaviours, makeSetting, predictStep } from '../../engine/steps/index.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';

const content = drivesContent(3);
const { cabinet } = checkCabinet({
  ...content,
  units: (content.units ?? []).map((unit) => (unit.kind === 'supply' ? unit : { ...unit, type: 't' })),
  types: [{ id: 't', name: 'Invented type', behaviour: { whenBoth: 'unknown' } }],
});
if (cabinet === null) throw new Error('unsound');
/** The last two cables are cut: the drive between them has lost both ways. */
const faults: readonly Fault[] = [
  { item: 'cable', link: 'w2', mode: 'cut' },
  { item: 'cable', link: 'w3', mode: 'cut' },
];
const display = { do: 'read-display', unit: [...cabinet.units.keys()][2] ?? ('' as never) } as const;

function predicted(evidence: Evidence): ReadonlyMap<string, number> {
  if (cabinet === null) throw new Error('unsound');
  const scenarios = likelyBehaviours(cabinet, diagnose(cabinet, evidence));
  return predictStep(display, makeSetting(cabinet, evidence, scenarios), faults);
}

describe('the prediction of a look at equipment of unknown behaviour', () => {
  it('should be a mean over the ways in which it may behave', () => {
    const spread = predicted({ snapshots: [{ onset: 'while-running', halted: true }] });
    expect(spread.get('both-losses')).toBeCloseTo(spread.get('upstream-loss') ?? 0, 9);
    expect(spread.get('both-losses')).toBeCloseTo(spread.get('downstream-loss') ?? 0, 9);
    expect(spread.get('both-losses')).toBeGreaterThan(0.3);
  });

  it('should follow what another unit of the type has shown', () => {
    const snapshot = { onset: 'while-running', halted: true } as const;
    const both = predicted({ snapshots: [{ ...snapshot, displays: [{ unit: 'u2', meanings: ['both-losses'] }] }] });
    expect(both.get('both-losses')).toBeGreaterThan(0.9);
  });
});

describe('the prediction of a display that showed a code of its own', () => {
  it('should be that code again wherever the unit is lit: nothing is hoped from reading it once more', () => {
    const cabinet = soundCabinet(content);
    const seen = seenSnapshot(cabinet, [{ item: 'board', unit: 'u2', mode: 'dead-lit' }]);
    const read = (meaning: 'quiet' | 'other') => {
      const displays = (seen.displays ?? []).map((one) => (one.unit === 'u2' ? { ...one, meanings: [meaning] } : one));
      const setting = makeSetting(cabinet, { snapshots: [{ ...seen, displays }] });
      const step = { do: 'read-display', unit: [...cabinet.units.keys()][2] ?? ('' as never) } as const;
      return (mode: 'dead-lit' | 'dead-dark') => predictStep(step, setting, [{ item: 'board', unit: 'u2', mode }]);
    };
    expect(read('other')('dead-lit').get('other')).toBeGreaterThan(0.9);
    expect(read('quiet')('dead-lit').get('quiet')).toBeGreaterThan(0.9);
    expect(read('other')('dead-dark').get('dark')).toBeGreaterThan(0.9);
  });
});
