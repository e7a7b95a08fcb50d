import type { Random } from '../generators/random.ts';

/*
 * Damage for tests: of values, so that their shape is a little wrong, and of texts, so that they are hardly JSON any more.
 */

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const oddValues: readonly Json[] = [
  null,
  true,
  0,
  -1,
  1.5,
  1e308,
  9_007_199_254_740_992,
  '',
  'x',
  'two words',
  '../../etc',
  'none',
  'u1',
  'unknown',
  '2026-02-31',
  'x'.repeat(201),
  [],
  [1],
  {},
  { unit: 'u1' },
  { chain: 'ch1', unit: 'u1' },
];
const oddKeys = ['id', 'unit', 'chain', 'link', 'mode', 'do', 'look', 'extra', 'units', 'colour', ''];

/** A copy of the value with one thing wrong somewhere, or by chance with nothing wrong. */
export function mutateValue(random: Random, value: Json): Json {
  const copy = structuredClone(value);
  const holders = containersOf(copy);
  if (holders.length === 0) return random.pick(oddValues);
  const holder = random.pick(holders);
  if (Array.isArray(holder)) {
    const at = random.whole(0, Math.max(0, holder.length - 1));
    const change = random.pick(['drop', 'double', 'odd', 'many'] as const);
    if (change === 'drop') holder.splice(at, 1);
    else if (change === 'double') holder.push(structuredClone(holder[at] ?? null));
    else if (change === 'odd') holder[at] = structuredClone(random.pick(oddValues));
    else while (holder.length > 0 && holder.length < 7) holder.push(structuredClone(holder[at] ?? null));
    return copy;
  }
  const keys = Object.keys(holder);
  const key = keys.length === 0 ? 'id' : random.pick(keys);
  const change = random.pick(['drop', 'odd', 'odd', 'rename', 'add'] as const);
  if (change === 'drop') delete holder[key];
  else if (change === 'odd') holder[key] = structuredClone(random.pick(oddValues));
  else if (change === 'add') holder[random.pick(oddKeys)] = structuredClone(random.pick(oddValues));
  else {
    holder[`${key}s`] = holder[key] ?? null;
    delete holder[key];
  }
  return copy;
}

function containersOf(value: Json): (Json[] | { [key: string]: Json })[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value, ...Object.values(value).flatMap(containersOf)];
}

const snippets = [
  '"',
  '\\',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  'null',
  '1e999',
  '-',
  '\u0000',
  '\n',
  '\\ud800',
  '"__proto__":',
  '"id":',
  '💥',
  '//',
  "'",
  'Infinity',
  '0x1',
];

/** A copy of the text with up to three places cut out, doubled, swapped, or filled with something odd. */
export function mutateText(random: Random, text: string): string {
  let mutated = text;
  for (let times = random.whole(1, 3); times > 0; times--) {
    const from = random.whole(0, mutated.length);
    const to = Math.min(mutated.length, from + random.pick([0, 1, 1, 2, 10, 200]));
    const put = random.pick(['', random.pick(snippets), mutated.slice(from, to).repeat(2), mutated.slice(to, to + 40)]);
    mutated = random.chance(0.1) ? mutated.slice(0, from) : mutated.slice(0, from) + put + mutated.slice(to);
  }
  return mutated;
}

/** A copy of the bytes with a few of them changed, or cut off. */
export function mutateBytes(random: Random, bytes: Uint8Array): Uint8Array {
  const mutated = bytes.slice(0, random.chance(0.2) ? random.whole(0, bytes.length) : bytes.length);
  for (let times = random.whole(1, 4); times > 0 && mutated.length > 0; times--)
    mutated[random.whole(0, mutated.length - 1)] = random.whole(0, 255);
  return mutated;
}
