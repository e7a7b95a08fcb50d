import {
  type Amperes,
  type Bytes,
  type Celsius,
  type Count,
  type Db,
  type Dbm,
  type DbPerKelvin,
  type DbPerMetre,
  db,
  dbm,
  lossDb,
  type Megabauds,
  type Metres,
  type Microfarads,
  type Microseconds,
  metres,
  type Ohms,
  type OhmsPerKilometre,
  ohms,
  type Percent,
  percent,
  ratedVolts,
  type Seconds,
  seconds,
  type Volts,
  volts,
} from './units.ts';

/** Loss of a length of fibre, dB: attenuation × length. */
export function lossOfLength(attenuation: DbPerMetre, length: Metres): Db {
  return lossDb(attenuation * length);
}

/** The length that a loss allows, m: loss / attenuation (power-budget notes of link data sheets). Endless for no attenuation: null. */
export function lengthForLoss(loss: Db, attenuation: DbPerMetre): Metres | null {
  return attenuation === 0 ? null : metres(Math.max(0, loss) / attenuation);
}

/**
 * What is left of the light at a receiver, dB: launch power − losses − sensitivity. Powers in dBm, least launch power and worst
 * losses for the margin against too little light (optical power budget, as in the textbooks and data sheets that the tests name).
 */
export function sensitivityMargin(launch: Dbm, losses: readonly Db[], sensitivity: Dbm): Db {
  return db(launch - losses.reduce((sum, loss) => sum + loss, 0) - sensitivity);
}

/** How far the strongest light stays below the receiver's overload, dB: overload − (greatest launch power − least loss). */
export function overloadMargin(launch: Dbm, leastLoss: Db, overload: Dbm): Db {
  return db(overload - (launch - leastLoss));
}

/** Launch power at a temperature, dBm: the figure for 25 °C + coefficient × (temperature − 25 °C), the coefficient in dB/K. */
export function temperatureEffect(coefficient: DbPerKelvin, temperature: Celsius): Db {
  return db(coefficient * (temperature - 25));
}

/** Power in dBm of milliwatts: 10·log10(P / 1 mW). */
export function dbmOfMilliwatts(milliwatts: number): Dbm {
  return dbm(10 * Math.log10(milliwatts));
}

/**
 * Resistance of a 24 V lead, Ω, there and back: 2 · length · R20 · (234.5 + t) / 254.5.
 *
 * R20 is the greatest conductor resistance at 20 °C (IEC 60228:2004, tables 1 to 3), t the conductor's temperature. The correction
 * is the copper form 254.5 / (234.5 + t) turned round (IEC 60228, note to its annex; α20 = 0.00393 per K); the rounded table of the
 * annex, 250 / (230 + t), differs from it by less than 0.0035 between 5 and 100 °C.
 */
export function leadResistance(perKilometre: OhmsPerKilometre, length: Metres, temperature: Celsius): Ohms {
  return ohms(((2 * length * perKilometre) / 1000) * Math.max(0, copperFactor(temperature)));
}

/** Resistance of copper at a temperature by that at 20 °C: (234.5 + t) / 254.5. */
export function copperFactor(temperature: Celsius): number {
  return (234.5 + temperature) / 254.5;
}

/** Voltage drop, V: current × resistance. */
export function voltageDrop(current: Amperes, resistance: Ohms): Volts {
  return volts(current * resistance);
}

/** To what a DC link is charged, V: √2 · line voltage · (1 + tolerance), the peak of the line-to-line voltage. */
export function chargedVoltage(line: Volts, tolerance: Percent): Volts {
  return ratedVolts(Math.SQRT2 * line * (1 + tolerance / 100));
}

/** The voltage to which a DC link must have fallen before it is touched, V (IEC 60204-1, 6.2.4). */
export const harmlessVoltage = ratedVolts(60);

/**
 * Seconds until a capacitor has discharged through a resistor to 60 V: R · C · ln(V0 / 60 V), and none at all when it is charged to
 * 60 V or less. The law of discharge v = V0·exp(−t/RC); capacitance in µF.
 */
export function dischargeTime(resistor: Ohms, capacitance: Microfarads, charged: Volts, limit: Volts = harmlessVoltage): Seconds {
  return seconds(charged <= limit ? 0 : resistor * capacitance * 1e-6 * Math.log(charged / limit));
}

/**
 * Part of a control cycle that the axes take on the wire in one direction, %: axes · bytes · 8 bits / (data rate · cycle). A line
 * never carries more bits than bauds, so more than 100 % cannot be, whatever else is sent.
 */
export function shareOfCycle(axes: Count, bytesPerAxis: Bytes, rate: Megabauds, cycle: Microseconds): Percent {
  return percent((axes * bytesPerAxis * 8 * 100) / (rate * cycle));
}

/** The greatest number of axes whose bytes fit on the wire within a cycle. */
export function axesOnWire(bytesPerAxis: Bytes, rate: Megabauds, cycle: Microseconds): number {
  // The smallest part beyond a whole number is rounding, not an axis too many.
  return bytesPerAxis === 0 ? Number.POSITIVE_INFINITY : Math.floor((rate * cycle) / (bytesPerAxis * 8) + 1e-9);
}
