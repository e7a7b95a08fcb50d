import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../engine/base/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { CabinetContent, Fault } from '../../engine/schema/index.ts';
import { predictLook, simulate } from '../../engine/simulation/index.ts';
import { drive, lead, oneLink, optics, sound, supply } from './sketch.ts';

const show = (content: CabinetContent, ...faults: readonly Fault[]) =>
  simulate({ cabinet: sound(content), faults, onset: 'while-running' });
const meaningOf = (content: CabinetContent, unit: string, ...faults: readonly Fault[]) =>
  show(content, ...faults).displays.get(unit as UnitId)?.meaning; // an id of the content

describe('a dim fibre', () => {
  const dim = (lossDb?: number): Fault => ({
    item: 'cable',
    link: 'w1',
    mode: 'outbound-dim',
    ...(lossDb === undefined ? {} : { lossDb }),
  });

  it('should let telegrams pass up to margin and ageing reserve, and stop them beyond', () => {
    // Margin 6.4 dB and 2 dB of reserve: see optical.test.ts.
    expect(meaningOf(oneLink(), 'u1', dim(8.39))).toBe('quiet');
    expect(meaningOf(oneLink(), 'u1', dim(8.41))).toBe('upstream-loss');
    expect(meaningOf(oneLink({ lengthM: 9 }), 'u1', dim(8.39))).toBe('upstream-loss');
    expect(meaningOf(oneLink({ measuredLossDb: { outbound: 0.5 } }), 'u1', dim(9.8))).toBe('quiet');
  });

  it('should stop them without a figure, as a hypothesis does', () => {
    expect(meaningOf(oneLink(), 'u1', dim())).toBe('upstream-loss');
  });

  it('should stand 3 dB without data', () => {
    const bare = oneLink({}, { types: [{ id: 't', name: 'Drive' }], ageingReserveDb: 0 });
    expect(meaningOf(bare, 'u1', dim(3))).toBe('quiet');
    expect(meaningOf(bare, 'u1', dim(3.01))).toBe('upstream-loss');
  });

  it('should look weak either way', () => {
    for (const lossDb of [0.5, 20]) {
      const input = { cabinet: sound(oneLink()), faults: [dim(lossDb)], onset: 'while-running' as const };
      expect(predictLook({ look: 'light-at-plug', link: 'w1', end: 'lower' }, input)).toBe('weak');
      expect(predictLook({ look: 'lamp', link: 'w1', fibre: 'outbound' }, input)).toBe('weak');
      expect(predictLook({ look: 'lamp', link: 'w1', fibre: 'return' }, input)).toBe('clear');
    }
  });
});

/** Two drives on a chain; the second has a short and a long feed. With the short one gone the long one leaves too little. */
const twoFeeds = (rest: Partial<CabinetContent> = {}): CabinetContent => ({
  ...oneLink(),
  units: [drive('u1', { control24: { loadA: 1, minimumV: 20.4 } }), drive('u2', { control24: { loadA: 5, minimumV: 20.4 } }), supply('s')],
  types: [{ id: 't', name: 'Drive', optics }],
  links: [
    { id: 'w1', upper: { chain: 'ch1' }, lower: { unit: 'u1' } },
    { id: 'w2', upper: { unit: 'u1' }, lower: { unit: 'u2' } },
  ],
  leads: [lead('d1', 's', 'u1'), lead('d2', 's', 'u2', { lengthM: 2 }), lead('d3', 's', 'u2', { lengthM: 30 })],
  ...rest,
});

describe('a unit with too little voltage', () => {
  const open = (id: string): Fault => ({ item: 'lead', lead: id, mode: 'open' });

  it('should be dark, with the voltage as the reason, and its neighbour complain', () => {
    const { displays, now } = show(twoFeeds(), open('d2'));
    expect(displays.get('u2' as UnitId)).toMatchObject({
      meaning: 'dark',
      because: [{ code: 'unit', cause: { code: 'voltage-too-low', minimumV: 20.4 } }],
    }); // ids of the content
    expect(displays.get('u1' as UnitId)?.meaning).toBe('downstream-loss');
    const [cause] = now.units.get('u2' as UnitId)?.causes ?? [];
    expect(cause?.code === 'voltage-too-low' ? cause.volts : null).toBeCloseTo(24 - 5 * 30 * 2 * 0.0133, 9);
    expect(show(twoFeeds(), open('d3')).displays.get('u2' as UnitId)?.meaning).toBe('quiet');
  });

  it('should be found to sag, where one without any feed has none', () => {
    const look = { look: 'voltage', unit: 'u2' } as const;
    const seen = (...faults: readonly Fault[]) => predictLook(look, { cabinet: sound(twoFeeds()), faults, onset: 'while-running' });
    expect([seen(), seen(open('d2')), seen(open('d2'), open('d3'))]).toEqual(['steady', 'sags', 'absent']);
  });

  it('should stay lit while anything on the way is only assumed', () => {
    const unsure: readonly Partial<CabinetContent>[] = [
      {
        leads: [
          lead('d1', 's', 'u1'),
          lead('d2', 's', 'u2'),
          { id: 'd3', from: { unit: 's' }, to: { unit: 'u2' }, lengthM: 30, crossSectionMm2: 1.5 },
        ],
      },
      { leads: [lead('d1', 's', 'u1'), lead('d2', 's', 'u2'), lead('d3', 's', 'u2', { lengthM: 30, crossSectionMm2: 1.4 })] },
      { units: [...(twoFeeds().units ?? []).slice(0, 2), { id: 's', kind: 'supply', designation: '-S' }] },
      { units: [drive('u1', { control24: { loadA: 1, minimumV: 20.4 } }), drive('u2', { control24: { loadA: 5 } }), supply('s')] },
    ];
    for (const rest of unsure) expect(meaningOf(twoFeeds(rest), 'u2', open('d2'))).toBe('quiet');
  });

  it('should pass power on nevertheless', () => {
    const passed = twoFeeds({
      units: [drive('u1', { control24: { loadA: 5, minimumV: 24 } }), drive('u2', { control24: { loadA: 0.1, minimumV: 5 } }), supply('s')],
      leads: [lead('d1', 's', 'u1'), lead('d2', 'u1', 'u2')],
    });
    expect(['u1', 'u2'].map((unit) => show(passed).now.units.get(unit as UnitId)?.powered)).toEqual([false, true]); // ids of the content
  });

  it('should draw nothing once it is taken out', () => {
    // With the first drive out, the second one alone leaves itself enough.
    const shared = twoFeeds({
      units: [
        drive('u1', { control24: { loadA: 20, minimumV: 5 } }),
        drive('u2', { control24: { loadA: 1, minimumV: 23 } }),
        supply('s', 26),
        drive('u0', { onChain: false, control24: { loadA: 0, minimumV: 5 } }),
      ],
      leads: [lead('d0', 's', 'u0', { lengthM: 8 }), lead('d1', 'u0', 'u1'), lead('d2', 'u0', 'u2')],
    });
    const input = { cabinet: sound(shared), faults: [], onset: 'at-power-up' as const };
    const powered = (out: readonly string[]) =>
      simulate({ ...input, beforeTrip: out.map((unit) => ({ do: 'take-out-unit' as const, unit })) }).now.units.get('u2' as UnitId)
        ?.powered; // as above
    expect([powered([]), powered(['u1'])]).toEqual([false, true]);
  });

  it('should be blamed on the lead by the search, which sees what the simulation shows', () => {
    const cabinet = sound(twoFeeds());
    const found = diagnose(cabinet, {
      snapshots: [
        {
          onset: 'while-running',
          halted: true,
          displays: [
            { unit: 'u1', meanings: ['downstream-loss'] },
            { unit: 'u2', meanings: ['dark'] },
          ],
          looks: [{ look: 'voltage', unit: 'u2', outcomes: ['sags'] }],
        },
      ],
    });
    expect(found.items[0]?.item.key).toBe('lead/d2');
    expect(found.items[0]?.probability).toBeGreaterThan(0.7);
  });
});
