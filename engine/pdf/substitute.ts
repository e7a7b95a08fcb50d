/// <reference path="./libraries.d.ts" />
import { create, type FontkitFont } from 'fontkit';
import { fontFiles } from './fonts.ts';

let known: FontkitFont | null = null;

/** Fetches the substitute font, once; answers its file. */
export async function fetchSubstitute(): Promise<Uint8Array> {
  const file = await fontFiles.substitute();
  known ??= create(file);
  return file;
}

/** Whether the substitute font, once fetched, has a sign. */
export function substituteHas(sign: string): boolean {
  return known?.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0) ?? false;
}

/** Width of a text in the substitute font, once fetched, for type of 1 mm. */
export function substituteWidth(text: string): number {
  const font = known;
  if (font === null) return 0;
  return [...text].reduce((sum, sign) => sum + font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth / font.unitsPerEm, 0);
}
