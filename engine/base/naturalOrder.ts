const runs = /\d+|\D+/g;

/**
 * Orders texts the way people number things: `u2` before `u10`. Digits are compared by value, the rest by code point; texts that
 * differ only in leading zeros are ordered by code point, so that the order is total and the same on every machine.
 */
export function compareNatural(a: string, b: string): number {
  if (a === b) return 0;
  const left = a.match(runs) ?? [];
  const right = b.match(runs) ?? [];
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const order = compareRun(left[i] ?? '', right[i] ?? '');
    if (order !== 0) return order;
  }
  return left.length - right.length || (a < b ? -1 : 1);
}

function compareRun(a: string, b: string): number {
  if (!isDigit(a) || !isDigit(b)) return a < b ? -1 : a > b ? 1 : 0;
  // By length first: digit runs may be longer than a number can hold.
  const left = a.replace(/^0+(?=\d)/, '');
  const right = b.replace(/^0+(?=\d)/, '');
  return left.length - right.length || (left < right ? -1 : left > right ? 1 : 0);
}

function isDigit(run: string): boolean {
  const first = run.charCodeAt(0);
  return first >= 48 && first <= 57;
}
