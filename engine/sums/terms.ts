/**
 * Where a value comes from: written in the cabinet's file, found with a meter, worked out from other terms, or taken because nothing
 * better is known. A value that is not known at all is null.
 */
export const termStatuses = ['documented', 'measured', 'computed', 'assumed', 'not-known'] as const;
export type TermStatus = (typeof termStatuses)[number];

/** Every quantity that a sum has, with the sign of its unit. The message catalogue words each of them. */
export const termUnits = {
  // Light.
  'ambient-temperature': '°C',
  'launch-power-least': 'dBm',
  'launch-power-most': 'dBm',
  'temperature-coefficient': 'dB/K',
  'temperature-effect': 'dB',
  sensitivity: 'dBm',
  'overload-power': 'dBm',
  'cable-length': 'm',
  attenuation: 'dB/m',
  'fibre-loss': 'dB',
  couplers: '1',
  'loss-per-coupler': 'dB',
  'coupler-loss': 'dB',
  'quarter-turns': '1',
  'quarter-turn-loss': 'dB',
  'bend-loss': 'dB',
  'loss-per-end': 'dB',
  'end-loss': 'dB',
  'cable-loss': 'dB',
  'least-cable-loss': 'dB',
  'ageing-reserve': 'dB',
  'sensitivity-margin': 'dB',
  'overload-margin': 'dB',
  'length-limit': 'm',
  'data-rate': 'MBd',
  // Axes.
  axes: '1',
  'axis-limit': '1',
  'axes-left': '1',
  'cycle-time': 'µs',
  'bytes-per-axis': 'B',
  'wire-share': '%',
  // 24 V.
  'supply-voltage': 'V',
  'feeding-voltage': 'V',
  voltage: 'V',
  'minimum-voltage': 'V',
  'maximum-voltage': 'V',
  headroom: 'V',
  load: 'A',
  inrush: 'A',
  'rated-current': 'A',
  'rated-inrush': 'A',
  'lead-length': 'm',
  'cross-section': 'mm²',
  'conductor-resistance': 'Ω/km',
  'conductor-temperature': '°C',
  'lead-resistance': 'Ω',
  'lead-current': 'A',
  'lead-drop': 'V',
  // DC link.
  'dc-power': 'kW',
  'rated-dc-power': 'kW',
  capacitance: 'µF',
  'discharge-resistor': 'Ω',
  'line-voltage': 'V',
  'line-tolerance': '%',
  'charged-voltage': 'V',
  'discharge-time': 's',
} as const;
export type TermCode = keyof typeof termUnits;
export type TermUnit = (typeof termUnits)[TermCode];

/** By which formula a value was worked out, or why it was assumed. The message catalogue words each. */
export const termBases = [
  'margin-without-data',
  'reserve-not-given',
  'coupler-loss-not-given',
  'bend-loss-not-given',
  'turn-not-given',
  'least-loss-not-given',
  'reference-temperature',
  'temperature-coefficient',
  'attenuation-times-length',
  'couplers-times-loss',
  'turns-times-loss',
  'two-ends',
  'sum-of-losses',
  'power-budget',
  'overload-budget',
  'counted-axes',
  'one-axis-each',
  'limit-less-axes',
  'axes-on-the-wire',
  'usual-24-volts',
  'load-for-inrush',
  'sum-of-loads',
  'conductor-table',
  'scaled-conductor',
  'flexible-conductor',
  'ambient-of-cabinet',
  'table-temperature',
  'copper-temperature',
  'network',
  'feeding-less-drop',
  'current-times-resistance',
  'voltage-less-minimum',
  'sum-of-powers',
  'sum-of-capacitances',
  'usual-tolerance',
  'peak-of-line',
  'discharge-curve',
] as const;
export type TermBasis = (typeof termBases)[number];

/** One value of a sum, with everything that is to be said about it. `from` is what it was worked out from, in order. */
export interface SumTerm<Q extends number = number> {
  readonly code: TermCode;
  /** Null: not known. */
  readonly value: Q | null;
  readonly unit: TermUnit;
  readonly status: TermStatus;
  /** Some figure was missing: the true value is at least, or at most, this one. */
  readonly bound: 'at-least' | 'at-most' | null;
  /** Id of the unit, link, lead or chain that it is about; null for the cabinet, and for a sum over several. */
  readonly of: string | null;
  /** Where the figure was read, in the words of the file. */
  readonly source: string | null;
  readonly basis: TermBasis | null;
  readonly from: readonly SumTerm[];
}

/** A term's value together with its code, without the rest. */
type Rest = Partial<Pick<SumTerm, 'bound' | 'of' | 'source' | 'basis' | 'from'>>;

function term<Q extends number>(code: TermCode, value: Q | null, status: TermStatus, rest: Rest): SumTerm<Q> {
  const { bound = null, of = null, source = null, basis = null, from = [] } = rest;
  return { code, value, unit: termUnits[code], status, bound, of, source, basis, from };
}

/** A figure as the file gives it. */
export function documented<Q extends number>(code: TermCode, value: Q | null, of: string | null, source?: string): SumTerm<Q> {
  return value === null ? unknown(code, of) : term(code, value, 'documented', { of, source: source?.trim() || null });
}

/** A figure found with a meter. */
export function measured<Q extends number>(code: TermCode, value: Q, of: string): SumTerm<Q> {
  return term(code, value, 'measured', { of });
}

/** A value worked out by a formula. */
export function computed<Q extends number>(
  code: TermCode,
  value: Q,
  basis: TermBasis,
  from: readonly SumTerm[],
  rest: Rest = {},
): SumTerm<Q> {
  return term(code, value, 'computed', { ...rest, basis, from });
}

/** A value taken because nothing better is known; the basis says why. */
export function assumed<Q extends number>(code: TermCode, value: Q, basis: TermBasis, rest: Rest = {}): SumTerm<Q> {
  return term(code, value, 'assumed', { ...rest, basis });
}

/** A value that is not known. `from` is what is known of it nevertheless. */
export function unknown(code: TermCode, of: string | null = null, from: readonly SumTerm[] = []): SumTerm<never> {
  return term<never>(code, null, 'not-known', { of, from });
}

/** Figures that a sum would need and the file does not give. */
export const figureCodes = [
  'launch-power',
  'sensitivity',
  'greatest-launch-power',
  'overload-power',
  'cable-length',
  'attenuation',
  'coupler-loss',
  'bend-loss',
  'ageing-reserve',
  'data-rate',
  'length-limit-at-rate',
  'cycle-class',
  'axis-limit',
  'load',
  'inrush',
  'minimum-voltage',
  'supply-voltage',
  'rated-current',
  'rated-inrush',
  'lead-length',
  'cross-section',
  'conductor-class',
  'dc-power',
  'rated-dc-power',
  'capacitance',
  'discharge-resistor',
  'line-voltage',
  'dc-link-supply',
] as const;
export type FigureCode = (typeof figureCodes)[number];

/** One figure that is missing: a note, not a problem. `of` is the id of what it belongs to; null for the cabinet as a whole. */
export interface MissingFigure {
  readonly figure: FigureCode;
  readonly of: string | null;
}
