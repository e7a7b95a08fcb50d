import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../../engine/cabinet/index.ts';
import { onsets } from '../../../engine/schema/index.ts';
import { simulate } from '../../../engine/simulation/index.ts';
import { smallCabinet, someFaults } from '../smallCabinets.ts';
import { poweredUnits, reachedUnits } from './lightWays.ts';

// Source of the expectations: graphology, a general graph library (breadth-first search, strongly connected components).
const seed = 20_261_125;

const input = smallCabinet({ chains: 2, unitsPerChain: 5 }).chain((content) =>
  fc.record({ content: fc.constant(content), faults: someFaults(content, 5), onset: fc.constantFrom(...onsets) }),
);

describe('simulate, against a graph library', () => {
  it('should power at the trip exactly what a walk along the closed leads reaches', () => {
    fc.assert(
      fc.property(input, ({ content, faults, onset }) => {
        const { cabinet } = checkCabinet(content);
        if (cabinet === null) throw new Error('unsound');
        const { trip } = simulate({ cabinet, faults, onset });
        const expected = poweredUnits(content, faults);
        const supplies = new Set<string>(cabinet.supplies);
        const found = [...trip.units.values()].filter((state) => state.powered && !supplies.has(state.unit)).map((state) => state.unit);
        expect(found.sort()).toEqual([...expected].sort());
      }),
      { seed, numRuns: 400 },
    );
  });

  it('should report the first unit that the controller does not reach there and back', () => {
    fc.assert(
      fc.property(input, ({ content, faults, onset }) => {
        const { cabinet } = checkCabinet(content);
        if (cabinet === null) throw new Error('unsound');
        const { reports } = simulate({ cabinet, faults, onset });
        for (const chain of cabinet.chains) {
          const reached = reachedUnits(content, chain.id, faults);
          const first = chain.units.findIndex((unit) => !reached.has(unit));
          expect(reports.get(chain.id)?.gap).toBe(first === -1 ? 'none' : first + 1);
        }
      }),
      { seed, numRuns: 400 },
    );
  });
});
