import type { GivenArguments } from '../options.ts';
import { type Asked, allOf, understood } from './asked.ts';
import { readChoice } from './values.ts';

/** The one value of an option as a word of a closed set; the first of the set where it was not given. */
export function readOption<const V extends string>(given: GivenArguments, option: string, allowed: readonly [V, ...V[]]): Asked<V> {
  const text = given.options.get(option)?.[0];
  return text === undefined ? understood(allowed[0]) : readChoice(`--${option}`, text, allowed);
}

/** All values of an option as words of a closed set, each once. */
export function readOptions<const V extends string>(given: GivenArguments, option: string, allowed: readonly V[]): Asked<readonly V[]> {
  const asked = allOf((given.options.get(option) ?? []).map((text) => readChoice(`--${option}`, text, allowed)));
  return asked.ok ? understood([...new Set(asked.value)]) : asked;
}
