/**
 * Advance widths of the typeface B612 (regular and bold are equal), in thousandths of the size of type. A test holds them against the
 * font files that are printed with, so that text is broken where it will stand.
 */
const signsByWidth: readonly (readonly [width: number, signs: string])[] = [
  [200, "'|¦"],
  [250, ',;·′'],
  [300, '.:Iij°²³¹ÌÍÎÏìíîï'],
  [350, ' !l\u00a0¡‘’‚'],
  [400, '"frtªº″'],
  [450, '()-J[s‹›'],
  [500, '=]cz¢§“”„↑↓'],
  [521, 'ç'],
  [525, 'a'],
  [550, '$*/?FLS\\_`ekvxy£¨©®¯´¸¿àáâãäåèéêë÷ýÿˆ˚˜–−'],
  [600, '+CEKPTYZbdghnopqu}¤¥±ÈÉÊËÝñòóôõöøùúûüþ•'],
  [649, '{'],
  [650, '0123456789<>ABDGRVXµÀÁÂÃÄÅÇÐÞßð'],
  [700, '&HU«¶»ÙÚÛÜ€'],
  [750, 'N^w~¼½¾Ñ…'],
  [800, 'OQÒÓÔÕÖ×Ø'],
  [850, '#¬Ææ™'],
  [900, '%Mm'],
  [950, 'Wœ'],
  [1000, '@Œ'],
  [1050, '—'],
];

export const glyphWidths: ReadonlyMap<string, number> = new Map(
  signsByWidth.flatMap(([width, signs]) => [...signs].map((sign) => [sign, width] as const)),
);

/** Every glyph of B612 Mono. */
export const monoWidth = 650;

/** What a sign that the typeface lacks counts for: about a capital of most others. */
export const unknownWidth = 850;

/** Whether the typeface has a sign. */
export const hasGlyph = (sign: string): boolean => glyphWidths.has(sign);
