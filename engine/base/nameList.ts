const most = 10;

/** Joins names for a fact of a problem: at most ten of them, so that a message stays readable. */
export function nameList(names: readonly string[]): string {
  return names.slice(0, most).join(', ');
}
