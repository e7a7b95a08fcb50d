import { defaultDaysSinceWhole, listFaultSpace, rateOf } from '../diagnosis/index.ts';
import type { Fault, Onset } from '../schema/index.ts';
import { itemKey, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { SingleFault } from './types.ts';

/**
 * Every single fault that can be there while the machine runs (wiring mistakes only show when it is switched on), steady, with what the
 * cabinet then shows. `onset` is when the displays are read: when it stopped, or after it was switched off and on again.
 */
export function simulateSingles(cabinet: Cabinet, onset: Onset): readonly SingleFault[] {
  const { faults } = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: defaultDaysSinceWhole, withWiringMistakes: false });
  return faults
    .flat()
    .filter(({ presence }) => presence === 'steady')
    .map((settled): SingleFault => {
      const { presence: _steady, ...rest } = settled;
      const fault = rest as Fault; // a settled fault without its presence is a fault again
      return {
        ...show(cabinet, [fault], onset),
        fault,
        item: itemKey(fault),
        part: partKey(fault),
        ratePerYear: rateOf(fault, cabinet.content).perYear,
      };
    });
}

/** What the cabinet shows with these faults. */
export function show(cabinet: Cabinet, faults: readonly Fault[], onset: Onset): Pick<SingleFault, 'displays' | 'reports'> {
  const { displays, reports } = simulate({ cabinet, faults, onset });
  return {
    displays: new Map([...displays].map(([unit, { meaning }]) => [unit, meaning])),
    reports: new Map([...reports].map(([chain, { gap }]) => [chain, gap])),
  };
}

/** A plug is exchanged with its cable. */
function partKey(fault: Fault): string {
  return fault.item === 'plug' ? `cable/${fault.link}` : itemKey(fault);
}
