import type { FigureChange } from '../../engine/sums/index.ts';

/** The page of sums. It belongs to the sitting: what is tried there is never saved and never undone, until it is taken over. */
export interface SumsState {
  /** The page is shown in place of Find. */
  readonly shown: boolean;
  /** Figures that are tried, in the order in which they were first typed; at most one for each figure of each thing. */
  readonly tried: readonly FigureChange[];
}

export const nothingTried: SumsState = { shown: false, tried: [] };

/** What a change is about: two changes of an equal key are the same figure. */
export function changeKey(change: FigureChange): string {
  return 'id' in change ? `${change.figure}/${change.id}` : change.figure;
}

/** The list with one more figure tried; a new value takes the place of the old one. */
export function tryChange(tried: readonly FigureChange[], change: FigureChange): readonly FigureChange[] {
  const key = changeKey(change);
  return tried.some((one) => changeKey(one) === key) ? tried.map((one) => (changeKey(one) === key ? change : one)) : [...tried, change];
}
