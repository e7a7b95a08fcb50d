/*
 * Numbers with their unit in the type, so that metres never pass for decibels. A value is made by the function of its unit, which
 * refuses what cannot be: NaN, infinities, and less than the least value that the quantity can have.
 */

declare const unit: unique symbol;
type Quantity<U extends string> = number & { readonly [unit]: U };

export type Db = Quantity<'dB'>;
export type Dbm = Quantity<'dBm'>;
export type DbPerMetre = Quantity<'dB/m'>;
export type DbPerKelvin = Quantity<'dB/K'>;
export type Metres = Quantity<'m'>;
export type Volts = Quantity<'V'>;
export type Amperes = Quantity<'A'>;
export type Ohms = Quantity<'Ω'>;
export type OhmsPerKilometre = Quantity<'Ω/km'>;
export type SquareMillimetres = Quantity<'mm²'>;
export type Celsius = Quantity<'°C'>;
export type Kilowatts = Quantity<'kW'>;
export type Microfarads = Quantity<'µF'>;
export type Seconds = Quantity<'s'>;
export type Microseconds = Quantity<'µs'>;
export type Megabauds = Quantity<'MBd'>;
export type Bytes = Quantity<'B'>;
export type Percent = Quantity<'%'>;
export type Count = Quantity<'1'>;

/** Makes a value of one unit; throws a RangeError for what the quantity cannot be. */
export type Maker<Q extends number> = (value: number) => Q;

function maker<Q extends number>(symbol: string, least: number, mayEqual = true): Maker<Q> {
  return (value) => {
    if (!Number.isFinite(value) || value < least || (!mayEqual && value === least)) throw new RangeError(`${value} ${symbol}`);
    return value as Q; // The line above is what the brand says.
  };
}

const any = Number.NEGATIVE_INFINITY;
/** A difference of powers; a margin may be negative. */
export const db = maker<Db>('dB', any);
/** A loss: zero or more. */
export const lossDb = maker<Db>('dB', 0);
export const dbm = maker<Dbm>('dBm', any);
export const dbPerMetre = maker<DbPerMetre>('dB/m', 0);
export const dbPerKelvin = maker<DbPerKelvin>('dB/K', any);
export const metres = maker<Metres>('m', 0);
/** A voltage; a computed one may be negative where a lead cannot carry what it should. */
export const volts = maker<Volts>('V', any);
export const ratedVolts = maker<Volts>('V', 0);
/** A current; that in a lead may be negative, flowing against the lead's direction. */
export const amperes = maker<Amperes>('A', any);
export const loadAmperes = maker<Amperes>('A', 0);
export const ohms = maker<Ohms>('Ω', 0);
/** A resistor that discharges something cannot be of no ohms. */
export const resistorOhms = maker<Ohms>('Ω', 0, false);
export const ohmsPerKilometre = maker<OhmsPerKilometre>('Ω/km', 0, false);
export const squareMillimetres = maker<SquareMillimetres>('mm²', 0, false);
export const celsius = maker<Celsius>('°C', -273.15);
export const kilowatts = maker<Kilowatts>('kW', 0);
export const microfarads = maker<Microfarads>('µF', 0);
export const seconds = maker<Seconds>('s', 0);
export const microseconds = maker<Microseconds>('µs', 0, false);
export const megabauds = maker<Megabauds>('MBd', 0, false);
export const bytes = maker<Bytes>('B', 0);
export const percent = maker<Percent>('%', 0);
export const count = maker<Count>('1', 0);
/** A count that may be short of zero: places left over. */
export const difference = maker<Count>('1', any);

/** A figure from a file; null when it is not given, or is nothing that the quantity can be. */
export function given<Q extends number>(make: Maker<Q>, value: number | undefined): Q | null {
  if (value === undefined) return null;
  try {
    return make(value);
  } catch {
    return null;
  }
}
