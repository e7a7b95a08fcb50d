import { describe, expect, it } from 'vitest';
import { type Fault, faultModes, fault as faultSchema, itemKinds } from '../../engine/schema/index.ts';
import { modeKey, simulate } from '../../engine/simulation/index.ts';
import { addFault, chainOf, keepPossible, listChoices, listTargets } from '../../renderer/inject/faultChoices.ts';
import { cabinets, offered } from './samplesOfFaults.ts';

describe('listChoices', () => {
  it('should offer every mode of every item somewhere on the picture', () => {
    const kinds = new Set(cabinets.flatMap(({ cabinet }) => offered(cabinet).map(({ item, mode }) => `${item}:${mode}`)));
    const wanted = itemKinds.flatMap((item) => faultModes[item].map((mode) => `${item}:${mode}`));
    expect([...kinds].sort()).toEqual([...wanted].sort());
  });

  it.each(cabinets)('should offer only faults of the file format, and each that has an effect: $name', ({ cabinet }) => {
    const states = (faults: readonly Fault[]) => {
      const { displays, reports, now } = simulate({ cabinet, faults, onset: 'while-running' });
      return JSON.stringify([[...displays], [...reports], [...now.units], [...now.links]]);
    };
    const whole = states([]);
    const fedTwice = new Set(
      cabinet.feeds.filter(({ to }, at) => cabinet.feeds.some((other, index) => index !== at && other.to === to)).map(({ lead }) => lead),
    );
    for (const fault of offered(cabinet)) {
      expect(faultSchema.safeParse(fault).success, modeKey(fault)).toBe(true);
      // A lead beside another one may be open unnoticed.
      if (fault.item === 'lead' && fedTwice.has(fault.lead as never)) continue;
      expect(states([fault]) !== whole, modeKey(fault)).toBe(true);
    }
  });

  it('should leave out what a last unit, a unit off the chain and a supply cannot have', () => {
    for (const { cabinet } of cabinets) {
      const modesAt = (unit: string) =>
        listChoices(cabinet, { kind: 'unit', unit }).flatMap(({ faults }) => faults.map(({ item, mode }) => `${item}:${mode}`));
      for (const { units } of cabinet.chains) {
        const last = units[units.length - 1];
        if (last) expect(modesAt(last).some((mode) => mode.startsWith('board:down-'))).toBe(false);
      }
      for (const unit of cabinet.offChain) expect(modesAt(unit).some((mode) => /^(board|wiring):/.test(mode))).toBe(false);
      for (const unit of cabinet.supplies) expect(modesAt(unit).every((mode) => /^(supply|lead):/.test(mode))).toBe(true);
    }
  });
});

describe('addFault', () => {
  const cable = (mode: (typeof faultModes.cable)[number]): Fault => ({ item: 'cable', link: 'w', mode });

  it('should let each fibre of a cable have a fault of its own, and the whole cable only one', () => {
    const both = addFault([cable('outbound-cut')], cable('return-dim'));
    expect(both.map(({ mode }) => mode)).toEqual(['outbound-cut', 'return-dim']);
    expect(addFault(both, cable('outbound-dim')).map(({ mode }) => mode)).toEqual(['return-dim', 'outbound-dim']);
    expect(addFault(both, cable('cut')).map(({ mode }) => mode)).toEqual(['cut']);
    expect(addFault([cable('fibres-crossed')], cable('return-cut')).map(({ mode }) => mode)).toEqual(['return-cut']);
  });

  it('should keep faults of other items, and one of each', () => {
    const plugs = (['upper', 'lower'] as const).map((end): Fault => ({ item: 'plug', link: 'w', end, mode: 'loose' }));
    const list = [...plugs, cable('cut')].reduce<readonly Fault[]>(addFault, []);
    expect(list).toHaveLength(3);
    expect(addFault(list, { item: 'plug', link: 'w', end: 'upper', mode: 'fouled' })).toHaveLength(3);
  });
});

describe('keepPossible', () => {
  it('should keep what the cabinet has, as the same list, and leave out what it has not', () => {
    for (const { cabinet } of cabinets) {
      const own = offered(cabinet);
      expect(keepPossible(cabinet, own)).toBe(own);
      expect(keepPossible(cabinet, [...own.slice(0, 2), { item: 'fuse', unit: 'nowhere', mode: 'open' }])).toEqual(own.slice(0, 2));
    }
  });
});

describe('chainOf', () => {
  it('should name a chain of the cabinet for all that lies on one', () => {
    for (const { cabinet } of cabinets) {
      const chains = new Set<string>(cabinet.chains.map(({ id }) => id));
      for (const target of listTargets(cabinet)) {
        for (const { faults } of listChoices(cabinet, target)) {
          for (const fault of faults) {
            const chain = chainOf(cabinet, fault);
            if (chain !== null) expect(chains.has(chain)).toBe(true);
            if (target.kind === 'link') expect(chain).not.toBeNull();
          }
        }
      }
    }
  });
});
