/** What a damaged JSON text should have held at the place of the damage. */
export type ExpectedJson =
  | 'value'
  | 'key'
  | 'key-or-end'
  | 'colon'
  | 'comma-or-end-of-list'
  | 'comma-or-end-of-object'
  | 'escape'
  | 'closing-quote'
  | 'digit'
  | 'nothing-more';

/** Where a text is damaged, and what should have stood there. */
export interface Damage {
  readonly at: number;
  readonly expected: ExpectedJson;
}

export function isDamage(end: number | Damage): end is Damage {
  return typeof end !== 'number';
}

/** The offset of the first character from `at` on that is not white space. */
export function skipSpace(text: string, at: number): number {
  let end = at;
  for (;;) {
    const code = text.charCodeAt(end);
    if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return end;
    end += 1;
  }
}

const words = ['true', 'false', 'null'] as const;

/** The end of the text, number or word that begins at `at`. */
export function endOfScalar(text: string, at: number): number | Damage {
  const first = text[at];
  if (first === '"') return endOfString(text, at);
  if (first === '-' || isDigit(text, at)) return endOfNumber(text, at);
  const word = words.find((candidate) => text.startsWith(candidate, at));
  return word === undefined ? { at, expected: 'value' } : at + word.length;
}

/** The offset after the closing quote of the string that begins at `at`. */
export function endOfString(text: string, at: number): number | Damage {
  let end = at + 1;
  for (;;) {
    const code = text.charCodeAt(end);
    if (code === 0x22) return end + 1;
    // Not a number: the text has ended. Control characters must be escaped.
    if (Number.isNaN(code) || code < 0x20) return { at: end, expected: 'closing-quote' };
    if (code !== 0x5c) {
      end += 1;
      continue;
    }
    const after = endOfEscape(text, end);
    if (isDamage(after)) return after;
    end = after;
  }
}

function endOfEscape(text: string, at: number): number | Damage {
  const kind = text[at + 1];
  if (kind !== undefined && '"\\/bfnrt'.includes(kind)) return at + 2;
  if (kind === 'u' && /^[0-9a-fA-F]{4}$/.test(text.slice(at + 2, at + 6))) return at + 6;
  return { at, expected: 'escape' };
}

function endOfNumber(text: string, at: number): number | Damage {
  let end = text[at] === '-' ? at + 1 : at;
  if (!isDigit(text, end)) return { at: end, expected: 'digit' };
  end = text[end] === '0' ? end + 1 : endOfDigits(text, end);
  if (text[end] === '.') {
    if (!isDigit(text, end + 1)) return { at: end + 1, expected: 'digit' };
    end = endOfDigits(text, end + 1);
  }
  if (text[end] === 'e' || text[end] === 'E') {
    const sign = text[end + 1] === '+' || text[end + 1] === '-' ? 1 : 0;
    if (!isDigit(text, end + 1 + sign)) return { at: end + 1 + sign, expected: 'digit' };
    end = endOfDigits(text, end + 1 + sign);
  }
  return end;
}

function endOfDigits(text: string, at: number): number {
  let end = at;
  while (isDigit(text, end)) end += 1;
  return end;
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 0x30 && code <= 0x39;
}
