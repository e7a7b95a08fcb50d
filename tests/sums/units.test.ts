import { describe, expect, it } from 'vitest';
import * as units from '../../engine/sums/units.ts';

const { given, ...makers } = units;
const entries = Object.entries(makers);

describe('the units of the sums', () => {
  it.each(entries)('should refuse what %s cannot be', (_, make) => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => make(value)).toThrow(RangeError);
      expect(given(make as units.Maker<number>, value)).toBeNull();
    }
    expect(make(1.5)).toBe(1.5);
  });

  it('should refuse the wrong sign where there is one', () => {
    const signed = ['db', 'dbm', 'dbPerKelvin', 'volts', 'amperes', 'celsius', 'difference'];
    for (const [name, make] of entries) {
      if (signed.includes(name)) expect(make(-1)).toBe(-1);
      else expect(() => make(-1), name).toThrow(RangeError);
    }
    expect(() => units.celsius(-274)).toThrow(RangeError);
  });

  it('should refuse nothing at all where one divides by it', () => {
    for (const make of [units.squareMillimetres, units.resistorOhms, units.microseconds, units.megabauds])
      expect(() => make(0)).toThrow(RangeError);
    expect(given(units.metres, undefined)).toBeNull();
    expect(given(units.metres, 0)).toBe(0);
  });
});
