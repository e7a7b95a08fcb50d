/** A piece of a quick line, with the column (1, 2, …) at which it begins. */
export type Token =
  | { readonly kind: 'number'; readonly text: string; readonly column: number }
  | { readonly kind: 'word'; readonly text: string; readonly column: number }
  /** "3 × servo". */
  | { readonly kind: 'times'; readonly text: string; readonly column: number }
  /** A comma, a plus, "and": the next unit of the same row. */
  | { readonly kind: 'next-item'; readonly text: string; readonly column: number }
  /** A semicolon, a slash, a new line: the next row. */
  | { readonly kind: 'next-row'; readonly text: string; readonly column: number }
  | { readonly kind: 'colon'; readonly text: string; readonly column: number }
  | { readonly kind: 'unknown'; readonly text: string; readonly column: number };

const kindOfSign: Readonly<Record<string, Token['kind']>> = {
  ',': 'next-item',
  '+': 'next-item',
  '&': 'next-item',
  ';': 'next-row',
  '/': 'next-row',
  '|': 'next-row',
  '\n': 'next-row',
  '×': 'times',
  '*': 'times',
  ':': 'colon',
};

/** Blanks part words; so do full stops and hyphens: "off-chain" is two words. */
const blank = /[\s.\-–]/u;

/** Cuts a line into its pieces. Letters and digits part each other: "3s" is a number and a word. */
export function readTokens(line: string): readonly Token[] {
  const tokens: Token[] = [];
  // Digits, letters or any one sign; by code points, so that no sign is cut in two.
  for (const match of line.matchAll(/[0-9]+|\p{L}+|./gsu)) {
    const text = match[0].toLowerCase();
    const column = match.index + 1;
    if (/^[0-9]/.test(text)) tokens.push({ kind: 'number', text, column });
    else if (/^\p{L}/u.test(text)) tokens.push(...readWord(text, column, tokens[tokens.length - 1]));
    else if (Object.hasOwn(kindOfSign, text)) tokens.push({ kind: kindOfSign[text] ?? 'unknown', text, column });
    else if (!blank.test(text)) tokens.push({ kind: 'unknown', text, column });
  }
  return tokens;
}

function readWord(text: string, column: number, before: Token | undefined): readonly Token[] {
  if (text === 'and') return [{ kind: 'next-item', text, column }];
  // "3x servo" and "3xs": the x belongs to the number.
  if (before?.kind === 'number' && text.startsWith('x')) {
    const rest = text.slice(1);
    return [{ kind: 'times', text: 'x', column }, ...(rest === '' ? [] : [{ kind: 'word' as const, text: rest, column: column + 1 }])];
  }
  return [{ kind: 'word', text, column }];
}
