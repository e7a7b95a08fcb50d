/** Where an arrow key leads in lines of things: along the line, on to the next one at its end, to the nearest above and below. Null at the edge. */
export function walkLines<T>(lines: readonly (readonly T[])[], isHere: (thing: T) => boolean, key: string): T | null {
  const row = lines.findIndex((line) => line.some(isHere));
  const line = lines[row] ?? [];
  const at = line.findIndex(isHere);
  const nearest = (other: readonly T[] | undefined) => other?.[Math.min(at, other.length - 1)] ?? null;
  switch (key) {
    case 'ArrowRight':
      return line[at + 1] ?? lines[row + 1]?.[0] ?? null;
    case 'ArrowLeft':
      return line[at - 1] ?? lines[row - 1]?.[(lines[row - 1]?.length ?? 0) - 1] ?? null;
    case 'ArrowDown':
      return nearest(lines[row + 1]);
    case 'ArrowUp':
      return nearest(lines[row - 1]);
    case 'Home':
      return line[0] ?? null;
    case 'End':
      return line[line.length - 1] ?? null;
    default:
      return null;
  }
}
