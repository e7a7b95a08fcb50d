import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';

/**
 * Makes text from a file fit to be shown: control characters, which could move the cursor or recolour a terminal, and characters
 * that turn the reading direction become a visible mark. Line breaks and tabs become spaces. Letters are put into their composed
 * form (NFC), in which their width is counted.
 */
export function cleanText(text: string): string {
  return text
    .normalize()
    .replace(/[\r\n\t\u2028\u2029]+/g, ' ')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/gu, '\ufffd');
}

/**
 * Breaks a clean text into lines of at most `width` columns; a word that is longer is broken inside. Wide characters count double, and
 * a figure stays with its percent sign.
 */
export function wrapText(text: string, width: number): readonly string[] {
  const kept = text.replace(/(?<=\d) (?=%)/g, '\u00a0');
  const lines = wrapAnsi(kept, Math.max(1, width), { hard: true, trim: true }).split('\n');
  return kept === text ? lines : lines.map((line) => line.replace(/(?<=\d)\u00a0(?=%)/g, ' '));
}

/** Fills a text with spaces up to `width` columns. */
export function padText(text: string, width: number, align: 'left' | 'right' = 'left'): string {
  const fill = ' '.repeat(Math.max(0, width - stringWidth(text)));
  return align === 'left' ? text + fill : fill + text;
}

/** Columns that a text takes. */
export function textWidth(text: string): number {
  return stringWidth(text);
}

/** A paragraph wrapped to the width, each line indented; the first line may have an indent of its own. */
export function paragraph(text: string, width: number, indent = '', firstIndent = indent): string {
  const lines = wrapText(cleanText(text), width - Math.max(textWidth(indent), textWidth(firstIndent)));
  return lines.map((line, index) => `${index === 0 ? firstIndent : indent}${line}\n`).join('');
}
