import { describe, expect, it } from 'vitest';
import type { CabinetContent, LeadRecord } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { line } from './small.ts';

const fed = (length: number, ...leads: readonly (readonly [string, string])[]): CabinetContent => ({
  ...line(length),
  leads: leads.map(([from, to], index): LeadRecord => ({ id: `l${index + 1}`, from: { unit: from }, to: { unit: to } })),
});
const found = (content: CabinetContent) =>
  buildTopology(content).problems.map(({ code, subjects, severity }) => [code, severity, ...subjects]);

describe('buildTopology, the 24 V leads', () => {
  it('should accept a tree through other units, and a second feed', () => {
    const content = fed(3, ['ps', 'u1'], ['u1', 'u2'], ['u2', 'u3'], ['ps', 'u3']);
    expect(found(content)).toEqual([]);
    expect(buildTopology(content).topology.feeds).toEqual([
      { lead: 'l1', from: 'ps', to: 'u1' },
      { lead: 'l2', from: 'u1', to: 'u2' },
      { lead: 'l3', from: 'u2', to: 'u3' },
      { lead: 'l4', from: 'ps', to: 'u3' },
    ]);
  });

  it('should name a unit fed by nothing, and what is fed from it alone', () => {
    expect(found(fed(4, ['ps', 'u1'], ['u2', 'u3'], ['u3', 'u4']))).toEqual([
      ['unit-not-fed', 'incomplete', 'u2'],
      ['feed-without-supply', 'incomplete', 'u3', 'u2'],
      ['feed-without-supply', 'incomplete', 'u4', 'u3'],
    ]);
  });

  it('should say once that no lead is written down, and nothing of units without one', () => {
    expect(found(fed(3))).toEqual([['feeds-not-documented', 'incomplete', 'u1', 'u2', 'u3']]);
  });

  it('should name a power path that never reaches a supply', () => {
    expect(found(fed(4, ['ps', 'u1'], ['u2', 'u3'], ['u3', 'u2'], ['u3', 'u4']))).toEqual([
      ['feed-loop-without-supply', 'incomplete', 'u2', 'u3'],
      ['feed-without-supply', 'incomplete', 'u4', 'u3'],
    ]);
    expect(found(fed(1, ['u1', 'u1']))).toEqual([['feed-loop-without-supply', 'incomplete', 'u1']]);
  });

  it('should warn of a loop that a supply feeds', () => {
    expect(found(fed(2, ['ps', 'u1'], ['u1', 'u2'], ['u2', 'u1']))).toEqual([['feed-loop', 'warning', 'u1', 'u2']]);
  });

  it('should refuse a lead into a supply, and not count it', () => {
    const content = fed(1, ['ps', 'u1'], ['u1', 'ps']);
    expect(found(content)).toEqual([['lead-into-supply', 'error', 'l2', 'ps']]);
    expect(buildTopology(content).topology.feeds).toHaveLength(1);
  });

  it('should name open lead ends and unknown units', () => {
    const content = {
      ...line(1),
      leads: [...(line(1).leads ?? []), { id: 'a', to: { unit: 'u1' } }, { id: 'b', from: { unit: 'nobody' } }],
    };
    expect(buildTopology(content).problems.map(({ code, where, severity }) => [code, where, severity])).toEqual([
      ['lead-end-open', '/leads/1/from', 'incomplete'],
      ['reference-unknown', '/leads/2/from/unit', 'error'],
      ['lead-end-open', '/leads/2/to', 'incomplete'],
    ]);
  });

  it('should follow a power path through 5,000 units', () => {
    const pairs = Array.from({ length: 5_000 }, (_, index) => [index === 0 ? 'ps' : `u${index}`, `u${index + 1}`] as const);
    expect(found(fed(5_000, ...pairs))).toEqual([]);
  });
});
