import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CabinetContent, type Fault, type Intervention, onsets } from '../../../engine/schema/index.ts';
import { smallCabinet, someFaults } from '../smallCabinets.ts';
import { allActs, faultsAfter } from './acts.ts';
import { predictByEngine } from './engine.ts';
import { predictBySolver } from './solve.ts';

// Source of the expectations: rules of what travels and what cures, written from the domain text alone, and the general solver.
const seed = 20_261_125;

/** Acts that do something to these faults; all acts if none does. */
function telling(content: CabinetContent, faults: readonly Fault[]): readonly Intervention[] {
  const acts = allActs(content);
  const effective = acts.filter((act) => JSON.stringify(faultsAfter(content, faults, act)) !== JSON.stringify(faults));
  return effective.length > 0 ? effective : acts;
}

/** First the kind of act, then the act: all kinds come up. */
function anyOf(acts: readonly Intervention[]): fc.Arbitrary<Intervention> {
  const kinds = [...new Set(acts.map((act) => act.do))];
  return fc.constantFrom(...kinds).chain((kind) => fc.constantFrom(...acts.filter((act) => act.do === kind)));
}

describe('simulate with acts done before the start, against a general solver', () => {
  it('should show what the solver derives for the faults that are left, where they then are', { timeout: 60_000 }, async () => {
    const input = smallCabinet({ chains: 2, unitsPerChain: 3 }).chain((content) =>
      someFaults(content, 4).chain((faults) =>
        fc.record({
          content: fc.constant(content),
          faults: fc.constant(faults),
          acts: fc.array(fc.oneof(anyOf(allActs(content)), anyOf(telling(content, faults))), { minLength: 1, maxLength: 3 }),
          onset: fc.constantFrom(...onsets),
        }),
      ),
    );
    let changed = 0;
    await fc.assert(
      fc.asyncProperty(input, async ({ content, faults, acts, onset }) => {
        const left = acts.reduce((before, act) => faultsAfter(content, before, act), faults);
        if (JSON.stringify(left) !== JSON.stringify(faults)) changed += 1;
        expect(predictByEngine(content, faults, onset, acts)).toEqual(await predictBySolver(content, left, onset));
      }),
      { seed, numRuns: 500 },
    );
    // Enough of the acts did something.
    expect(changed).toBeGreaterThan(250);
  });
});
