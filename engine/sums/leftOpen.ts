import type { CabinetContent } from '../schema/index.ts';
import { tableTemperature } from './conductors.ts';
import { usualTolerance } from './dcLink.ts';
import { referenceTemperature } from './opticalBudget.ts';
import type { TermBasis } from './terms.ts';

/** What a sum counts with where a field says nothing, in the unit of the field, and why. */
export interface CountedAnyway {
  readonly value: number;
  readonly basis: TermBasis;
}

/** What the sums count with where the field of this path is left open; null where they go without. */
export function countedWhenOpen({ ambientC }: CabinetContent, path: string): CountedAnyway | null {
  switch (path) {
    case 'ageingReserveDb':
      return { value: 0, basis: 'reserve-not-given' };
    case 'ambientC':
      return { value: referenceTemperature, basis: 'reference-temperature' };
    case 'conductorTemperatureC':
      return ambientC === undefined
        ? { value: tableTemperature, basis: 'table-temperature' }
        : { value: ambientC, basis: 'ambient-of-cabinet' };
    case 'couplerDb':
      return { value: 0, basis: 'coupler-loss-not-given' };
    case 'quarterBendDb':
      return { value: 0, basis: 'bend-loss-not-given' };
    case 'leastAttenuationDbPerM':
      return { value: 0, basis: 'least-loss-not-given' };
    case 'supply.dcLink.lineTolerancePercent':
      return { value: usualTolerance, basis: 'usual-tolerance' };
    default:
      return null;
  }
}
