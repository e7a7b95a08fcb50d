/** Writes a JSON pointer (RFC 6901): `jsonPointer(['units', 3])` is `/units/3`. No parts: the whole document, an empty text. */
export function jsonPointer(parts: readonly (string | number | symbol)[]): string {
  return parts.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}
