/** What keeps a name from being a file's on Windows. The files of one plant travel between systems, so one rule serves all. */
export type NameTrouble = 'reserved' | 'ending' | 'sign';

// Device names: with any ending, in any spelling, and with the superscript digits too.
const reserved = /^(con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])(\s*\.|\s*$)/i;
const refusedSigns = /[<>:"/\\|?*]/;
const longestName = 100;

/** Says why Windows would not take `name` (without folders) as it stands; null when it would. */
export function nameTrouble(name: string): NameTrouble | null {
  if (refusedSigns.test(name) || hasControlSign(name)) return 'sign';
  if (/[. ]$/.test(name)) return 'ending';
  return reserved.test(name) ? 'reserved' : null;
}

/**
 * Makes a name that every system takes: `base` cleaned, shortened and followed by `ending` (such as `.case.json`). A base of which
 * nothing is left becomes `fallback`.
 */
export function makeFileName(base: string, ending: string, fallback: string): string {
  const cleaned = [...base.normalize('NFC')]
    .map((sign) => (refusedSigns.test(sign) || hasControlSign(sign) ? '-' : sign))
    .join('')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+/, '');
  // By code points, so that no sign is cut in two.
  const short = [...cleaned]
    .slice(0, longestName)
    .join('')
    .replace(/[. ]+$/, '');
  const kept = /[^-]/.test(short) ? short : fallback;
  return nameTrouble(kept + ending) === 'reserved' ? `${fallback}-${kept}${ending}` : kept + ending;
}

function hasControlSign(text: string): boolean {
  return [...text].some((sign) => sign < ' ' || sign === '\x7f');
}
