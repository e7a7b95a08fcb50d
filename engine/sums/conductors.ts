import type { LeadRecord } from '../schema/index.ts';
import { leadResistance } from './formulas.ts';
import { assumed, computed, documented, type FigureCode, type SumTerm, unknown } from './terms.ts';
import { type Celsius, celsius, given, metres, type Ohms, type OhmsPerKilometre, ohmsPerKilometre, squareMillimetres } from './units.ts';

/** For this temperature the table of resistances holds. */
export const tableTemperature = celsius(20);

/** How a conductor is built: solid or stranded (classes 1 and 2), flexible (class 5), flexible and tinned. */
export type ConductorClass = NonNullable<LeadRecord['conductorClass']>;

/** Cross-sections of the table below, mm². */
export const tableSizes = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10] as const;

/** Greatest resistance of a conductor at 20 °C, Ω/km, by class and cross-section: IEC 60228:2004, tables 1 to 3. */
export const conductorTable: { readonly [C in ConductorClass]: readonly number[] } = {
  'class-1-2': [36.0, 24.5, 18.1, 12.1, 7.41, 4.61, 3.08, 1.83],
  'class-5': [39.0, 26.0, 19.5, 13.3, 7.98, 4.95, 3.3, 1.91],
  'class-5-tinned': [40.1, 26.7, 20.0, 13.7, 8.21, 5.09, 3.39, 1.95],
};

/**
 * Resistance per kilometre at 20 °C. Of a size that the table does not have: that of the next smaller one (of the smallest, where
 * there is none) scaled by area, and then `exact` is false.
 */
export function resistancePerKilometre(
  conductorClass: ConductorClass,
  sizeMm2: number,
): { readonly value: OhmsPerKilometre; readonly exact: boolean } {
  const at = Math.max(0, tableSizes.filter((size) => size <= sizeMm2).length - 1);
  const size = tableSizes[at] ?? tableSizes[0];
  const value = conductorTable[conductorClass][at] ?? 0;
  const exact = size === sizeMm2;
  // A value of the table is given as it is printed there, without a rounding on the way.
  return { value: ohmsPerKilometre(exact ? value : (value * size) / sizeMm2), exact };
}

/** What is known of a lead's resistance. */
export interface LeadResistance {
  readonly term: SumTerm<Ohms>;
  /** Length, size and class are documented and in the table: what follows may be relied on. */
  readonly sure: boolean;
  readonly missing: readonly FigureCode[];
}

/**
 * Resistance of a lead, there and back. Without a class it is taken as flexible; without a temperature of its own the conductor is
 * taken to be as warm as the cabinet, else 20 °C. Not known without length and cross-section.
 */
export function findLeadResistance(record: LeadRecord, ambient: Celsius | null): LeadResistance {
  const of = record.id;
  const length = given(metres, record.lengthM);
  const size = given(squareMillimetres, record.crossSectionMm2);
  const missing: FigureCode[] = [];
  if (length === null) missing.push('lead-length');
  if (size === null) missing.push('cross-section');
  if (record.conductorClass === undefined) missing.push('conductor-class');
  const lengthTerm = documented('lead-length', length, of);
  const sizeTerm = documented('cross-section', size, of);
  if (length === null || size === null) return { term: unknown('lead-resistance', of, [lengthTerm, sizeTerm]), sure: false, missing };
  const table = resistancePerKilometre(record.conductorClass ?? 'class-5', size);
  const [basis, status] = !table.exact
    ? (['scaled-conductor', assumed] as const)
    : record.conductorClass === undefined
      ? (['flexible-conductor', assumed] as const)
      : (['conductor-table', null] as const);
  const conductor =
    status === null
      ? computed('conductor-resistance', table.value, basis, [sizeTerm], { of })
      : assumed('conductor-resistance', table.value, basis, { of, from: [sizeTerm] });
  const temperature = conductorTemperature(record, ambient);
  const resistance = leadResistance(table.value, length, temperature.value ?? tableTemperature);
  return {
    term: computed('lead-resistance', resistance, 'copper-temperature', [lengthTerm, conductor, temperature], { of }),
    sure: status === null,
    missing,
  };
}

function conductorTemperature(record: LeadRecord, ambient: Celsius | null): SumTerm<Celsius> {
  const own = given(celsius, record.conductorTemperatureC);
  if (own !== null) return documented('conductor-temperature', own, record.id);
  if (ambient !== null) return assumed('conductor-temperature', ambient, 'ambient-of-cabinet', { of: record.id });
  return assumed('conductor-temperature', tableTemperature, 'table-temperature', { of: record.id });
}
