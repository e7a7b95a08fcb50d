import { strip } from './geometry.ts';

/** Words above a strip mark: on which line (0 is the lowest), and to which side of the mark they run. */
export interface CalloutPlace {
  readonly level: number;
  readonly side: 'left' | 'right';
}

export interface CalloutRequest {
  readonly id: string;
  /** Middle of the mark, screen pixels. */
  readonly x: number;
  readonly words: string;
}

/** Width of 11 px words in our typeface, about; a little too much rather than too little. */
const characterWidth = 6.6;
const padding = 14;
const levels = 4;

/**
 * Gives every callout of a row a place where it covers no other one and lies between two edges: the lowest line first, then to the left,
 * then to the right.
 */
export function placeCallouts(
  requests: readonly CalloutRequest[],
  { leftmost = Number.NEGATIVE_INFINITY, rightmost = Number.POSITIVE_INFINITY } = {},
): ReadonlyMap<string, CalloutPlace> {
  const taken: { readonly level: number; readonly from: number; readonly to: number }[] = [];
  const places = new Map<string, CalloutPlace>();
  for (const { id, x, words } of [...requests].sort((a, b) => a.x - b.x)) {
    const width = words.length * characterWidth + padding;
    const tries = Array.from({ length: levels }, (_, level) => (['left', 'right'] as const).map((side) => ({ level, side }))).flat();
    const spans = tries.map(({ level, side }) => {
      const edge = side === 'left' ? x + strip.width / 2 : x - strip.width / 2;
      return { level, side, from: side === 'left' ? edge - width : edge, to: side === 'left' ? edge : edge + width };
    });
    const free = spans.find(
      ({ level, from, to }) =>
        from >= leftmost && to <= rightmost && !taken.some((other) => other.level === level && other.from < to && from < other.to),
    );
    const place = free ?? spans[0];
    if (!place) continue;
    taken.push(place);
    places.set(id, { level: place.level, side: place.side });
  }
  return places;
}
