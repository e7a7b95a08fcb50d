import { port } from './geometry.ts';
import type { LinkLine, Point } from './views.ts';

/** A line of one fibre, straight or by way of the row gap; `shift` keeps the two fibres apart, in the turns too. */
export function fibrePath({ from, to, turnY }: Pick<LinkLine, 'from' | 'to' | 'turnY'>, shift: number): string {
  const start = from.x + port.width / 2;
  const end = to.x - port.width / 2;
  if (turnY === null) return `M${start} ${from.y + shift}L${end} ${to.y + shift}`;
  const out = start + 12 - shift / 2;
  const back = end - 16 - shift / 2;
  return `M${start} ${from.y + shift}H${out}V${turnY + shift / 2}H${back}V${to.y + shift}H${end}`;
}

/** Where the words of a cable stand: in its middle, or where it comes into its lower port. */
export function linkMiddle({ from, to, turnY }: Pick<LinkLine, 'from' | 'to' | 'turnY'>): Point {
  return turnY === null ? { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 } : { x: to.x - port.width / 2 - 8, y: to.y };
}
