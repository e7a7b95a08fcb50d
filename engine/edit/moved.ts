/** A sequence of things that both cabinets have, by keys that mean the same in both. */
type Order = readonly string[];

/**
 * The fewest things that must be moved to make one order of the other: what is in no longest common subsequence. Of several such sets
 * the same one is chosen whichever order is given first. Both orders hold the same keys, each once.
 */
export function findMoved(a: Order, b: Order): ReadonlySet<string> {
  const [from, to] = a.join('\n') <= b.join('\n') ? [a, b] : [b, a];
  const rank = new Map(to.map((key, index) => [key, index]));
  const staying = longestIncreasing(from.map((key) => rank.get(key) ?? -1));
  const kept = new Set(staying.map((index) => from[index]));
  return new Set(from.filter((key) => !kept.has(key)));
}

/** Indices of a longest increasing run of values, picked out in their order; by patience sorting, n log n. */
function longestIncreasing(values: readonly number[]): readonly number[] {
  const ends: number[] = [];
  const before: number[] = [];
  for (const [index, value] of values.entries()) {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[ends[middle] ?? 0] ?? 0) < value) low = middle + 1;
      else high = middle;
    }
    before[index] = low > 0 ? (ends[low - 1] ?? -1) : -1;
    ends[low] = index;
  }
  const found: number[] = [];
  for (let at = ends.at(-1) ?? -1; at >= 0; at = before[at] ?? -1) found.push(at);
  return found.reverse();
}
