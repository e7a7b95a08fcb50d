import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import { plainContent } from '../bench/cabinets.ts';

/** Three drives, the middle one lit and silent between two that complain; then it was bridged past and the machine switched on. */
function diagnoseBridged(tolerates: boolean, halted: boolean) {
  const content = plainContent(1, 3);
  const { cabinet } = checkCabinet({ ...content, chains: [{ id: 'c1', number: 1, ...(tolerates ? { toleratesFewerUnits: true } : {}) }] });
  if (cabinet === null) throw new Error('the cabinet must be sound');
  const evidence: Evidence = {
    snapshots: [
      {
        onset: 'while-running',
        halted: true,
        displays: [
          { unit: 'u1.1', meanings: ['downstream-loss'] },
          { unit: 'u1.2', meanings: ['quiet'] },
          { unit: 'u1.3', meanings: ['upstream-loss'] },
        ],
        reports: [{ chain: 'c1', gaps: [2] }],
      },
      { restarted: true, onset: 'at-power-up', halted, interventions: [{ do: 'bridge-unit', unit: 'u1.2', cable: 'w1.2' }] },
    ],
  };
  const share = new Map(diagnose(cabinet, evidence).items.map(({ item, probability }) => [item.key, probability]));
  return share.get('board/u1.2') ?? 0;
}

describe('a unit that is bridged past', () => {
  it('should stay suspected when the machine halts, where the control halts with fewer units in any case', () => {
    expect(diagnoseBridged(false, true)).toBeGreaterThan(0.75);
  });

  it('should be suspected far less when the machine halts all the same, where the control starts with fewer units', () => {
    expect(diagnoseBridged(true, true)).toBeLessThan(0.5);
  });

  it('should stay suspected when the machine runs without it', () => {
    expect(diagnoseBridged(true, false)).toBeGreaterThan(0.75);
    expect(diagnoseBridged(false, false)).toBeGreaterThan(0.75);
  });
});
