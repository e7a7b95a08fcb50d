import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../engine/base/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { cautionsDefer, cautionWords } from '../../engine/messages/index.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';
import { listCautions, listUnnoted, type Step, stateNeeded } from '../../engine/steps/index.ts';

const content: CabinetContent = {
  id: 'c',
  name: 'c',
  controller: { id: 'nc', designation: '-KF1' },
  chains: [{ id: 'c1', number: 1 }],
  units: [
    { id: 's', kind: 'supply', designation: '-TB9' },
    { id: 'a', kind: 'servo-drive', designation: '-TA1', axes: [{ name: 'Z', hanging: true }] },
    { id: 'b', kind: 'spindle-drive', designation: '-TA2', axes: [{ name: 'S' }] },
  ],
  links: [
    { id: 'w1', upper: { chain: 'c1' }, lower: { unit: 'a' } },
    { id: 'w2', upper: { unit: 'a' }, lower: { unit: 'b' } },
  ],
  leads: ['a', 'b'].map((unit) => ({ id: `l${unit}`, from: { unit: 's' }, to: { unit } })),
  feedbacks: [
    { id: 'ga', unit: 'a', positionKept: 'battery-in-unit' },
    { id: 'gb', unit: 'b', positionKept: 'none-needed' },
  ],
};
const { cabinet } = checkCabinet(content);
if (!cabinet) throw new Error('the cabinet must be sound');
const nothing: Evidence = { snapshots: [{}] };
const all: Evidence = {
  snapshots: [{ displays: ['s', 'a', 'b'].map((unit) => ({ unit, meanings: ['quiet'] })), reports: [{ chain: 'c1', gaps: ['none'] }] }],
};
const codes = (step: Step, evidence = all) => listCautions(cabinet, evidence, step).map(({ code }) => code);
const act = (...acts: Extract<Step, { do: 'act' }>['acts']): Step => ({ do: 'act', acts });

describe('listCautions', () => {
  it('should warn of nothing while the cabinet stays closed', () => {
    expect(codes({ do: 'read-report', chain: 'c1' as never })).toEqual([]);
  });

  it('should warn of the live cabinet at looks, and of light only where fibres are pulled', () => {
    expect(codes({ do: 'read-display', unit: 'a' as UnitId })).toEqual(['live-cabinet']);
    expect(codes({ do: 'look', look: { look: 'voltage', unit: 'a' } })).toEqual(['live-cabinet']);
    expect(codes({ do: 'look', look: { look: 'light-at-plug', link: 'w2', end: 'lower' } })).toEqual(['live-cabinet', 'fibre-light']);
  });

  it('should let a lamp shine through a cable only with the machine off and locked', () => {
    const lamp: Step = { do: 'look', look: { look: 'lamp', link: 'w2', fibre: 'return' } };
    expect(stateNeeded(lamp)).toBe('isolated');
    expect(codes(lamp)).toEqual(['hanging-axes', 'all-feeds', 'lock-out', 'dc-link', 'fibre-light']);
    expect(codes(lamp, nothing)[0]).toBe('note-first');
  });

  it('should name before switching off what is not noted, until it is', () => {
    const step = act({ do: 'reseat-plug', link: 'w2', end: 'upper' });
    expect(listCautions(cabinet, nothing, step)[0]).toEqual({ code: 'note-first', units: ['s', 'a', 'b'], chains: ['c1'] });
    expect(codes(step)).toEqual(['hanging-axes', 'all-feeds', 'lock-out', 'dc-link', 'fibre-light']);
    expect(listUnnoted(cabinet, all)).toEqual({ units: [], chains: [] });
  });

  it('should warn at every restart of what concerns switching off, and of the live cabinet where cables are moved in it', () => {
    const restart = (how: 'wait' | 'flex' | 'warm'): Step => ({ do: 'provoke', how, subjects: [] });
    expect(codes(restart('wait'))).toEqual(['hanging-axes', 'axes-may-start']);
    expect(codes(restart('warm'), nothing)).toEqual(['note-first', 'hanging-axes', 'axes-may-start']);
    expect(codes(restart('flex'))).toEqual(['hanging-axes', 'axes-may-start', 'live-cabinet']);
  });

  it('should take an axis as hanging until somebody has written down that it does not', () => {
    const warned = (axes: NonNullable<CabinetContent['units']>[number]['axes']) => {
      const units = (content.units ?? []).map((unit) => (unit.id === 'a' ? { ...unit, axes } : unit));
      const checked = checkCabinet({ ...content, units }).cabinet;
      if (!checked) throw new Error('the cabinet must be sound');
      return listCautions(checked, all, act({ do: 'reseat-plug', link: 'w2', end: 'upper' })).find(({ code }) => code === 'hanging-axes');
    };
    const unsaid = { axes: [], units: [] };
    expect(warned([{ name: 'Z', hanging: true }])).toEqual({ code: 'hanging-axes', axes: ['Z'], unsaid });
    expect(warned([{ name: 'X' }])).toEqual({ code: 'hanging-axes', axes: [], unsaid: { ...unsaid, axes: ['X'] } });
    expect(warned(undefined)).toEqual({ code: 'hanging-axes', axes: [], unsaid: { ...unsaid, units: ['a'] } });
    expect(warned([{ name: 'X', hanging: false }])).toBeUndefined();
  });

  it('should warn of the reference position only where it is kept by something that the act touches', () => {
    expect(listCautions(cabinet, all, act({ do: 'pull-feedback', feedback: 'ga' }))).toContainEqual({
      code: 'reference-position',
      feedbacks: ['ga'],
    });
    expect(codes(act({ do: 'pull-feedback', feedback: 'gb' }))).not.toContain('reference-position');
    expect(codes(act({ do: 'replace-board', unit: 'a' }))).toEqual(expect.arrayContaining(['reference-position', 'esd', 'safety-check']));
    expect(codes(act({ do: 'replace-fuse', unit: 'b' }))).not.toContain('esd');
  });
});

describe('cautions against published rules', () => {
  const exchange = act({ do: 'replace-unit', unit: 'a' });

  it('S9 should keep the order of the five safety rules as far as they are an operator’s: disconnect, secure, verify [READ; EN 50110-1]', () => {
    const found = codes(exchange);
    const order = ['all-feeds', 'lock-out', 'dc-link'].map((code) => found.indexOf(code as never));
    expect(order.every((at) => at >= 0)).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    // Verifying that it is dead: by measuring, after the wait.
    expect(cautionWords['dc-link'].meaning).toMatch(/measure/);
    expect(cautionsDefer).toMatch(/local codes and licensed persons/);
  });

  it('S10 should warn of light wherever a fibre end may be open, without a class that nobody has read [MEM; IEC 60825-1, IEC 62471]', () => {
    expect(codes(exchange)).toContain('fibre-light');
    expect(cautionWords['fibre-light'].meaning).not.toMatch(/class|\d/i);
  });

  it('S12 should warn of static charge at boards, without resistances or voltages [MEM; IEC 61340-5-1]', () => {
    expect(codes(act({ do: 'replace-board', unit: 'a' }))).toContain('esd');
    expect(cautionWords.esd.meaning).not.toMatch(/\d/);
  });

  it('S13 should give no number of any danger: the site’s own study does [rule; NFPA 70E, IEC 61482]', () => {
    for (const { label, meaning } of Object.values(cautionWords)) expect(`${label} ${meaning}`).not.toMatch(/\d/);
  });
});
