import fc from 'fast-check';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { addFault, isOnlySteady, listChoices, listTargets } from '../../renderer/inject/faultChoices.ts';
import { soundSamples } from '../samples/index.ts';

/** The samples as cabinets that can be simulated. */
export const cabinets: readonly { readonly name: string; readonly cabinet: Cabinet }[] = soundSamples.map(({ name, content }) => {
  const { cabinet } = checkCabinet(content);
  if (!cabinet) throw new Error(`${name} is not sound`);
  return { name, cabinet };
});

/** Every fault that the window offers for a cabinet. */
export function offered(cabinet: Cabinet): readonly Fault[] {
  return listTargets(cabinet).flatMap((target) => listChoices(cabinet, target).flatMap(({ faults }) => faults));
}

/** A cabinet with some faults that may be there together, steady or not. */
export const injections: fc.Arbitrary<{ readonly cabinet: Cabinet; readonly faults: readonly Fault[] }> = fc
  .constantFrom(...cabinets)
  .chain(({ cabinet }) => {
    const fault = fc
      .tuple(fc.constantFrom(...offered(cabinet)), fc.constantFrom('steady', 'intermittent', 'gone'))
      .map(([one, how]): Fault => {
        if (how === 'steady' || isOnlySteady(one)) return one;
        return { ...one, presence: 'intermittent', ...(how === 'gone' ? { absentNow: true } : {}) };
      });
    return fc.record({
      cabinet: fc.constant(cabinet),
      faults: fc.array(fault, { maxLength: 4 }).map((list) => list.reduce<readonly Fault[]>(addFault, [])),
    });
  });

/** Seeds are fixed, so that a failure comes again. */
export const seeded = { seed: 40_205, numRuns: 300 } as const;
