import { fail, makeProblem, ok, type Result } from '../../base/index.ts';
import { maximumFileBytes } from './limits.ts';

/** Turns the bytes of a file into text: UTF-8, a byte order mark is taken off. Text is taken as it is. Too much of either is refused. */
export function decodeText(source: string | Uint8Array): Result<string> {
  const size = typeof source === 'string' ? utf8Length(source) : source.length;
  if (size > maximumFileBytes) {
    const facts = { megabytes: Math.ceil(size / 100_000) / 10, limitMegabytes: maximumFileBytes / 1_000_000 };
    return fail(makeProblem('file-too-large', 'refused', { facts }));
  }
  if (typeof source === 'string') return ok(source.startsWith('\uFEFF') ? source.slice(1) : source);
  const text = decodeUtf8(source);
  return text === null ? fail(makeProblem('file-not-utf8', 'refused', { facts: { line: firstBadLine(source) } })) : ok(text);
}

function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** A line feed is never part of a longer UTF-8 sequence, so lines can be decoded one by one. */
function firstBadLine(bytes: Uint8Array): number {
  let line = 1;
  for (let start = 0; start <= bytes.length; line++) {
    const end = bytes.indexOf(0x0a, start);
    const stop = end === -1 ? bytes.length : end;
    if (decodeUtf8(bytes.subarray(start, stop)) === null) return line;
    start = stop + 1;
  }
  return line;
}

function utf8Length(text: string): number {
  // No text is shorter in UTF-8 than in UTF-16 units.
  if (text.length > maximumFileBytes) return text.length;
  return new TextEncoder().encode(text).length;
}
