import { textWidth } from './measure.ts';
import type { Face, Shape } from './shapes.ts';

/** A piece of text in one face. */
export interface Run {
  readonly text: string;
  readonly face?: Face;
}

/** Text, plain or in pieces of several faces. */
export type RichText = string | readonly Run[];

/** One line, wrapped. */
export interface RichLine {
  readonly runs: readonly Run[];
  /** mm */
  readonly width: number;
}

export const runsOf = (text: RichText): readonly Run[] => (typeof text === 'string' ? [{ text }] : text);
/** The text without its faces. */
export const plainText = (text: RichText): string =>
  runsOf(text)
    .map((run) => run.text)
    .join('');

interface Piece {
  readonly text: string;
  readonly face: Face;
  readonly width: number;
  readonly isSpace: boolean;
}

/**
 * Breaks text into lines no wider than `width` mm: at spaces, after a hyphen within a word, and inside a word only where it alone is
 * wider than the line. A line break in the text is kept. A designation (it begins with a sign, as in IEC 81346) is broken only where it
 * alone is wider than the line.
 */
export function wrapText(text: RichText, size: number, width: number): readonly RichLine[] {
  const lines: RichLine[] = [];
  let pieces: Piece[] = [];
  let used = 0;
  const end = () => {
    while (pieces.at(-1)?.isSpace === true) pieces.pop();
    lines.push({ runs: joinPieces(pieces), width: pieces.reduce((sum, piece) => sum + piece.width, 0) });
    pieces = [];
    used = 0;
  };
  const put = (piece: Piece) => {
    pieces.push(piece);
    used += piece.width;
  };
  for (const paragraph of splitLines(runsOf(text))) {
    for (const word of splitWords(paragraph, size)) {
      const wide = word.reduce((sum, piece) => sum + piece.width, 0);
      if (word[0]?.isSpace === true) {
        if (used > 0) word.forEach(put);
        continue;
      }
      if (used > 0 && used + wide > width + slack) end();
      if (wide <= width + slack) {
        word.forEach(put);
        continue;
      }
      for (const piece of word.flatMap((one) => (one.width <= width + slack ? one : splitSigns(one, size)))) {
        if (used > 0 && used + piece.width > width + slack) end();
        put(piece);
      }
    }
    end();
  }
  return lines;
}

/** What rounding may add, mm. */
const slack = 1e-6;

/** The widest piece of a text that is not broken, mm. */
export function widestWord(text: RichText, size: number): number {
  const words = splitLines(runsOf(text)).flatMap((line) => splitWords(line, size));
  return words.reduce((most, word) => Math.max(most, word[0]?.isSpace ? 0 : word.reduce((sum, { width }) => sum + width, 0)), 0);
}

/** Width of a text on one line, mm. */
export const richWidth = (text: RichText, size: number): number =>
  runsOf(text).reduce((sum, run) => sum + textWidth(run.text, size, run.face), 0);

/** The shapes of one line that begins at x. */
export function placeLine(line: RichLine, x: number, y: number, size: number, colour?: string): readonly Shape[] {
  let at = x;
  return line.runs.map((run): Shape => {
    const shape: Shape = {
      kind: 'text',
      x: at,
      y,
      text: run.text,
      size,
      ...(run.face === undefined ? {} : { face: run.face }),
      ...(colour === undefined ? {} : { colour }),
    };
    at += textWidth(run.text, size, run.face);
    return shape;
  });
}

function splitLines(runs: readonly Run[]): readonly (readonly Run[])[] {
  const lines: Run[][] = [[]];
  for (const run of runs) {
    run.text.split(/\r\n|\r|\n/).forEach((text, index) => {
      if (index > 0) lines.push([]);
      if (text !== '') lines.at(-1)?.push({ ...run, text });
    });
  }
  return lines;
}

/** Words and spaces in turn; a word may consist of pieces of several faces. */
function splitWords(runs: readonly Run[], size: number): readonly (readonly Piece[])[] {
  const words: Piece[][] = [];
  let isOpen = false;
  let isDesignation = false;
  for (const run of runs) {
    const face = run.face ?? 'regular';
    for (const text of run.text.match(breakable) ?? []) {
      const isSpace = /^[ \t]/.test(text);
      const piece = { text: isSpace ? ' ' : text, face, width: textWidth(isSpace ? ' ' : text, size, face), isSpace };
      if (isOpen && !isSpace) words.at(-1)?.push(piece);
      else {
        words.push([piece]);
        isDesignation = /^[=+-]./.test(text);
      }
      isOpen = !isSpace && (isDesignation || !/[-/]$/.test(text.slice(1)));
    }
  }
  return words;
}

/** Spaces; or a word up to a hyphen or slash inside it. A no-break space is part of its word. */
const breakable = /[ \t]+|[^ \t][^ \t/-]*[/-]?/g;

function splitSigns(piece: Piece, size: number): readonly Piece[] {
  return [...piece.text].map((text) => ({ ...piece, text, width: textWidth(text, size, piece.face) }));
}

function joinPieces(pieces: readonly Piece[]): readonly Run[] {
  const runs: { text: string; face: Face }[] = [];
  for (const { text, face } of pieces) {
    const last = runs.at(-1);
    if (last?.face === face) last.text += text;
    else runs.push({ text, face });
  }
  return runs.map(({ text, face }) => (face === 'regular' ? { text } : { text, face }));
}
