import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { CabinetContent, DisplayMeaning, Evidence } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';

/*
 * Two readings that no fault whatever can bring about (domain, section 5): the last unit of a chain has nothing below it, so it cannot
 * lose it; a unit off the chain is dark or quiet.
 */

const plain = drivesContent(3);
const content: CabinetContent = {
  ...plain,
  units: [...(plain.units ?? []), { id: 'off', kind: 'servo-drive', designation: '-TB4', onChain: false }],
  leads: [...(plain.leads ?? []), { id: 'p4', from: { unit: 's1' }, to: { unit: 'off' } }],
};
const cabinet = soundCabinet(content);
const cutAboveSecond = { u1: 'downstream-loss', u2: 'upstream-loss', u3: 'quiet', off: 'quiet' } as const;

function evidenceOf(readings: Readonly<Record<string, DisplayMeaning>>): Evidence {
  const displays = Object.entries(readings).map(([unit, meaning]) => ({ unit, meanings: [meaning] }));
  return { snapshots: [{ onset: 'while-running', halted: true, displays, reports: [{ chain: 'c1', gaps: [2] }] }] };
}
const display = (unit: string) => ({ kind: 'display', snapshot: 0, unit });

describe('a contradiction', () => {
  it('should not be told where the most probable hypothesis predicts everything', () => {
    expect(diagnose(cabinet, evidenceOf(cutAboveSecond)).contradiction).toBeNull();
  });

  it.each([
    ['u3', 'downstream-loss'],
    ['off', 'upstream-loss'],
  ] as const)('should name the one reading of %s without which all the rest is predicted, and what predicts it', (unit, wrong) => {
    const { contradiction } = diagnose(cabinet, evidenceOf({ ...cutAboveSecond, [unit]: wrong }));
    expect(contradiction?.mispredicted).toEqual([display(unit)]);
    expect(contradiction?.withoutWhich.map(({ observation }) => observation)).toEqual([display(unit)]);
    expect(contradiction?.withoutWhich[0]?.instead.map(({ item }) => item)).toEqual([expect.stringMatching(/w2/)]);
  });

  it('should be told with no reading named where two must be wrong at once: leaving out either one leaves the other', () => {
    // Wide readings and a second look: what misses two of them is then likelier than what misses a single narrow one elsewhere.
    const { snapshots } = evidenceOf({ u1: 'downstream-loss', u2: 'upstream-loss' });
    const wide = [
      { unit: 'u3', meanings: ['downstream-loss', 'both-losses'] as const },
      { unit: 'off', meanings: ['upstream-loss', 'downstream-loss', 'both-losses'] as const },
    ];
    const { contradiction } = diagnose(cabinet, {
      snapshots: [
        ...snapshots.map((snapshot) => ({
          ...snapshot,
          displays: [...(snapshot.displays ?? []), ...wide.map(({ unit, meanings }) => ({ unit, meanings: [...meanings] }))],
        })),
        { displays: [{ unit: 'u1', meanings: ['downstream-loss'] }] },
      ],
    });
    expect(contradiction?.mispredicted).toEqual([display('u3'), display('off')]);
    expect(contradiction?.withoutWhich).toEqual([]);
  });
});
