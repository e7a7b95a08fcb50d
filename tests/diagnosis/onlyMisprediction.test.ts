import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { Evaluator } from '../../engine/diagnosis/evaluator.ts';
import { listFits, onlyMisprediction } from '../../engine/diagnosis/fit.ts';
import { prepare } from '../../engine/diagnosis/searched.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { makeEvidence } from '../generators/cases.ts';
import { Random } from '../generators/random.ts';

describe('the only misprediction of a pattern', () => {
  it('should be what listing all mispredictions finds, for hypotheses whose readings repeat', () => {
    let found = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = new Random(seed);
        const content = makeCabinet(seed, { units: 3, chains: 1, behaviours: 'default', details: true, offChain: 0, supplies: 1 });
        const { cabinet } = checkCabinet(content);
        const [first] = makeEvidence(random, content).snapshots;
        if (cabinet === null || first === undefined) return;
        const again = { ...first, interventions: [], restarted: random.chance(0.5) };
        const prepared = prepare(cabinet, { snapshots: [first, again, again] });
        const evaluator = new Evaluator(prepared.plan, prepared.space, prepared.scenarios, cabinet, 0);
        const choices = prepared.space.elements.flatMap(({ modes }, element) => modes.map((_, mode) => ({ element, mode })));
        for (let round = 0; round < 20; round += 1) {
          const [one, other] = [random.pick(choices), random.pick(choices)];
          const faults = one.element === other.element ? [one] : [one, other];
          const listed = listFits(evaluator, 0, faults).map(({ mispredicted }) => (mispredicted.length === 1 ? mispredicted[0] : null));
          const only = evaluator.patternsIn(0, faults).map((view) => onlyMisprediction(prepared.plan, view));
          expect(only).toEqual(listed);
          found += only.filter((index) => index !== null).length;
        }
      }),
      { numRuns: 15, seed: 20261126 },
    );
    expect(found).toBeGreaterThan(20);
  });
});
