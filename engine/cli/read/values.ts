import { findNearest } from '../nearest.ts';
import { type Asked, refused, understood } from './asked.ts';

/** One word of a closed set; capital and small letters count as equal. `where` says where it stood. */
export function readChoice<const V extends string>(where: string, text: string, allowed: readonly V[]): Asked<V> {
  const word = text.trim().toLowerCase();
  const found = allowed.find((one) => one === word);
  return found !== undefined
    ? understood(found)
    : refused('value-not-allowed', { where, value: text.trim(), allowed, near: findNearest(word, allowed) });
}

/** A number of `least` or more, written with digits and a decimal point. */
export function readNumber(where: string, text: string, least: number, whole = false): Asked<number> {
  const trimmed = text.trim();
  const value = Number(trimmed);
  const fits =
    /^\d+(\.\d+)?$/.test(trimmed) && Number.isFinite(value) && value >= least && value <= 1e6 && (!whole || Number.isInteger(value));
  return fits ? understood(value) : refused('number-not-allowed', { where, value: trimmed, least, whole });
}

/** A number of either sign between two bounds, as a temperature. */
export function readLevel(where: string, text: string, least: number, most: number): Asked<number> {
  const trimmed = text.trim().replace('\u2212', '-');
  const value = Number(trimmed);
  const fits = /^-?\d+(\.\d+)?$/.test(trimmed) && value >= least && value <= most;
  return fits ? understood(value) : refused('number-out-of-range', { where, value: trimmed, least, most });
}
