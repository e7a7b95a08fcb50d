import { fail, makeProblem, ok, type Result } from '../base/index.ts';

/** Files of lists above this size are refused, in bytes: 5 MB. A list of ten thousand cables is below a tenth of it. */
export const maximumTableBytes = 5_000_000;

/** The text of a file of lists: UTF-8, or UTF-16 as some spreadsheets write it, or else the old western encoding of spreadsheets. */
export function readTableText(bytes: Uint8Array): Result<string> {
  if (bytes.length > maximumTableBytes) {
    const facts = { megabytes: Math.ceil(bytes.length / 1e6), limitMegabytes: maximumTableBytes / 1e6 };
    return fail(makeProblem('table-too-large', 'refused', { facts }));
  }
  const text = decode(bytes);
  if (text.replace(/[\s\ufeff]/g, '') === '') return fail(makeProblem('table-empty', 'refused'));
  return text.includes('\0') ? fail(makeProblem('table-not-text', 'refused')) : ok(text);
}

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Not UTF-8: what spreadsheets of western Europe write without being asked.
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
