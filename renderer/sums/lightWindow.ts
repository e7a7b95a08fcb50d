import type { FibreBudget, SumTerm } from '../../engine/sums/index.ts';

/** The light of one fibre in the window of its receiver, in dB from the least light that the receiver needs. */
export interface LightWindow {
  /** Width of the window: from too weak to too strong. Null where the receiver's figures are not given. */
  readonly width: number | null;
  /** Where the weakest light arrives after everything, the ageing reserve too, is taken off: the margin. */
  readonly least: number;
  /** The same without the ageing reserve. */
  readonly leastNow: number;
  /** Where the strongest light arrives. Null: not known. */
  readonly most: number | null;
  /** The margin is taken, not worked out. */
  readonly assumed: boolean;
}

export function lightWindow({ margin, overloadMargin, reserve }: FibreBudget): LightWindow {
  const sensitivity = findTerm(margin, 'sensitivity');
  const overload = findTerm(overloadMargin, 'overload-power');
  const width = sensitivity === null || overload === null || margin.status !== 'computed' ? null : overload - sensitivity;
  const least = margin.value ?? 0;
  return {
    width: width !== null && width > 0 ? width : null,
    least,
    leastNow: least + (reserve.value ?? 0),
    most: width === null || overloadMargin.value === null ? null : width - overloadMargin.value,
    assumed: margin.status !== 'computed',
  };
}

function findTerm(term: SumTerm, code: SumTerm['code']): number | null {
  return term.from.find((one) => one.code === code)?.value ?? null;
}

/** The scale, dB, that all pictures of a page share, so that they can be compared: every window and every bar fits in. */
export function lightScale(windows: readonly LightWindow[]): { readonly from: number; readonly to: number } {
  const edges = windows.flatMap(({ width, least, leastNow, most }) => [
    least,
    leastNow,
    ...(width === null ? [] : [width]),
    ...(most === null ? [] : [most]),
  ]);
  // A window of which nothing is known is drawn as wide as an ordinary one.
  const from = Math.min(0, ...edges);
  const to = Math.max(windows.some(({ width }) => width !== null) ? 0 : 20, ...edges);
  const play = (to - from) * 0.06;
  return { from: from - play, to: to + play };
}
