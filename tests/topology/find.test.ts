import { describe, expect, it } from 'vitest';
import {
  buildTopology,
  findChainByName,
  findFeedbackByName,
  findLeadByName,
  findLinkByName,
  findUnitByName,
  inMountingOrder,
} from '../../engine/topology/index.ts';
import { line } from './small.ts';

describe('findUnitByName and its like', () => {
  const base = line(3);
  const units = (base.units ?? []).map((unit) => (unit.id === 'u3' ? { ...unit, designation: 'u2' } : unit));
  const feedbacks = [{ id: 'g1', designation: '-WG1', unit: 'u1' }];
  const { topology } = buildTopology({ ...base, units, feedbacks, chains: [{ id: 'ch1', number: 7, name: 'left row' }] });

  it('should find by designation and by id, the id first', () => {
    expect(findUnitByName(topology, '-T1')).toBe('u1');
    expect(findUnitByName(topology, ' u1 ')).toBe('u1');
    expect(findUnitByName(topology, 'u2')).toBe('u2');
  });

  it('should mind capital letters only where it must', () => {
    expect(findUnitByName(topology, '-t1')).toBe('u1');
    const twins = buildTopology({ ...base, units: [...units, { id: 'x', kind: 'servo-drive', designation: '-t1' }] }).topology;
    expect(findUnitByName(twins, '-t1')).toBe('x');
    expect(findUnitByName(twins, '-T1')).toBe('u1');
  });

  it('should find nothing under a designation that two bear, nor under an unknown one', () => {
    const twins = buildTopology({ ...base, units: [...units, { id: 'x', kind: 'servo-drive', designation: '-T1' }] }).topology;
    expect(findUnitByName(twins, '-T1')).toBeUndefined();
    expect(findUnitByName(topology, '-T9')).toBeUndefined();
    expect(findUnitByName(topology, '')).toBeUndefined();
  });

  it('should find links, leads, feedback cables and chains', () => {
    expect(findLinkByName(topology, '-WH2')).toBe('w2');
    expect(findLeadByName(topology, '-WD3')).toBe('l3');
    expect(findFeedbackByName(topology, 'g1')).toBe('g1');
    expect([findChainByName(topology, '7'), findChainByName(topology, 'ch1'), findChainByName(topology, 'left row')]).toEqual([
      'ch1',
      'ch1',
      'ch1',
    ]);
    expect(findChainByName(topology, '1')).toBeUndefined();
  });
});

describe('inMountingOrder', () => {
  it('should go by row and slot, then by chain, and last by id', () => {
    const base = line(4);
    const places: Record<string, { row: number; slot: number }> = {
      u3: { row: 0, slot: 1 },
      u1: { row: 0, slot: 2 },
      u4: { row: 1, slot: 0 },
    };
    const { topology } = buildTopology({ ...base, units: (base.units ?? []).map((unit) => ({ ...unit, ...places[unit.id] })) });
    expect(inMountingOrder(topology)).toEqual(['u3', 'u1', 'u4', 'u2', 'ps']);
  });
});
