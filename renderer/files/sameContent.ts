/**
 * Whether two contents are the same: members in any order, a member left out equal to one that is undefined. Parts that are one and
 * the same object are not looked into, so comparing a document with itself after a few changes costs little.
 */
export function sameContent(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, index) => sameContent(item, b[index]));
  }
  // Content is plain JSON: both are records here.
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  return (
    Object.keys(left).every((key) => sameContent(left[key], right[key])) &&
    Object.keys(right).every((key) => right[key] === undefined || left[key] !== undefined)
  );
}
