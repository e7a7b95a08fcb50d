import type { SumTerm, TermUnit } from '../sums/index.ts';

/** Decimals that a quantity is worth; the figures behind it are no better. */
const decimals: { readonly [U in TermUnit]: number } = {
  dB: 2,
  dBm: 2,
  'dB/m': 3,
  'dB/K': 4,
  m: 2,
  MBd: 2,
  '1': 1,
  µs: 2,
  B: 1,
  '%': 1,
  V: 2,
  A: 2,
  'mm²': 2,
  'Ω/km': 2,
  Ω: 4,
  '°C': 1,
  kW: 2,
  µF: 1,
  s: 0,
};

/** A number with at most so many decimals, without trailing zeros, and with a real minus sign. It never reads as zero unless it is. */
export function wordNumber(value: number | string, digits = 2): string {
  if (typeof value === 'string') return value;
  if (!Number.isFinite(value)) return '–';
  const rounded = Number(value.toFixed(digits));
  const shown = rounded === 0 && value !== 0 ? Number(value.toPrecision(1)) : rounded;
  // What is smaller than any figure of a cabinet is rounding of the computation.
  const text = Math.abs(value) < 1e-9 ? '0' : shown.toString();
  return text.replace('-', '\u2212');
}

/** A value with its unit: "3.07 dB", "12 m", "2" for a count. */
export function wordQuantity(value: number, unit: TermUnit): string {
  if (unit === 's') return wordDuration(value);
  const number = wordNumber(value, decimals[unit]);
  return unit === '1' ? number : `${number} ${unit}`;
}

/** The value of a term: "3.07 dB", "at least 4 A", "–" for one that is not known. */
export function wordTermValue({ value, unit, bound }: Pick<SumTerm, 'value' | 'unit' | 'bound'>): string {
  if (value === null) return '–';
  const quantity = wordQuantity(value, unit);
  return bound === null ? quantity : `${bound === 'at-least' ? 'at least' : 'at most'} ${quantity}`;
}

/** A time in seconds, rounded up, so that nobody waits too short: "45 s", "6 min 34 s", "1 h 2 min". */
export function wordDuration(seconds: number): string {
  if (!Number.isFinite(seconds) || seconds < 0) return '–';
  // A whole second that rounding made a little more is still that second.
  const whole = Math.ceil(seconds - 1e-9);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min${whole % 60 === 0 ? '' : ` ${whole % 60} s`}`;
  return wordHours(Math.ceil(whole / 60));
}

/** A time in whole minutes, an hour at least: "1 h", "1 h 20 min". */
export function wordHours(minutes: number): string {
  return `${Math.floor(minutes / 60)} h${minutes % 60 === 0 ? '' : ` ${minutes % 60} min`}`;
}

/** A price or a sum of prices in minutes, to a tenth, as it is reckoned in exercises: "8.1 min". */
export function wordPrice(minutes: number): string {
  return `${wordNumber(Math.round(minutes * 10) / 10)} min`;
}
