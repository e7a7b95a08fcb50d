import { hasGlyph } from '../paper/index.ts';

/** A piece of a line that is set in one font. */
export interface FontPiece {
  readonly text: string;
  readonly isSubstitute: boolean;
}

/** Splits a line into what the typeface has and what a substitute must give. */
export function splitByFont(text: string): readonly FontPiece[] {
  const pieces: { text: string; isSubstitute: boolean }[] = [];
  for (const sign of text) {
    const isSubstitute = !hasGlyph(sign);
    const last = pieces.at(-1);
    if (last?.isSubstitute === isSubstitute) last.text += sign;
    else pieces.push({ text: sign, isSubstitute });
  }
  return pieces;
}
