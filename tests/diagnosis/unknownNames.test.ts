import { describe, expect, it } from 'vitest';
import { unknownInEvidence } from '../../engine/cabinet/index.ts';
import type { Evidence, Snapshot } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';

const cabinet = soundCabinet(drivesContent(3));
const listed = (snapshot: Snapshot, more: Partial<Evidence> = {}) => unknownInEvidence(cabinet, { snapshots: [snapshot], ...more });

describe('what evidence names and the cabinet does not have', () => {
  it('should be nothing where the cabinet has all of it', () => {
    expect(
      listed({
        displays: [{ unit: 'u1', meanings: ['quiet'] }],
        provoked: { how: 'flex', subjects: ['w2', 'u3'] },
        interventions: [{ do: 'exchange-boards', unit: 'u1', other: 'u2' }],
      }),
    ).toEqual([]);
  });

  it('should be found in displays, reports, looks, acts with their partners and spares, what was moved, and circumstances', () => {
    const chain = cabinet.chains[0]?.id ?? '';
    const found = listed(
      {
        interventions: [
          { do: 'exchange-boards', unit: 'u1', other: 'x1' },
          { do: 'replace-board', unit: 'u2', spare: 'x2' },
        ],
        provoked: { how: 'warm', subjects: ['x3'] },
        displays: [{ unit: 'x4', meanings: ['quiet'] }],
        reports: [
          { chain: 'x5', gaps: [1] },
          { chain, gaps: [4, 'none'] },
        ],
        looks: [{ look: 'light-at-plug', link: 'x6', end: 'upper', outcomes: ['none'] }],
      },
      { circumstances: [{ kind: 'heat', subjects: ['x7'] }] },
    );
    expect(found).toEqual([
      { thing: 'unit', id: 'x1' },
      { thing: 'spare', id: 'x2' },
      { thing: 'any', id: 'x3' },
      { thing: 'unit', id: 'x4' },
      { thing: 'chain', id: 'x5' },
      { thing: 'gap', chain, gap: 4, length: 3 },
      { thing: 'cable', id: 'x6' },
      { thing: 'any', id: 'x7' },
    ]);
  });
});
