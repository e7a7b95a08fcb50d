/**
 * How much a problem matters.
 * - `refused`: the file or the input was not taken at all.
 * - `error`: it opened, but what it describes cannot be simulated.
 * - `incomplete`: it can be simulated, but something a cabinet must have is missing.
 * - `warning`: it works, and is probably not meant.
 */
export const severities = ['refused', 'error', 'incomplete', 'warning'] as const;
export type Severity = (typeof severities)[number];

/**
 * One thing found wrong, as data. It holds no sentence: the message catalogue (`engine/messages`) words it from `code` and `facts`.
 * `where` is a JSON pointer into the content that was read (empty for the whole file); `subjects` are ids to jump to.
 */
export interface Problem {
  readonly code: string;
  readonly severity: Severity;
  readonly where: string;
  readonly subjects: readonly string[];
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Builds a problem; everything but the code and severity may be left out. */
export function makeProblem(
  code: string,
  severity: Severity,
  rest: Partial<Omit<Problem, 'code' | 'severity'>> = {},
): Problem {
  return { code, severity, where: rest.where ?? '', subjects: rest.subjects ?? [], facts: rest.facts ?? {} };
}

/** Orders problems by place, then code, so that equal input gives an equal list. */
export function compareProblems(a: Problem, b: Problem): number {
  return compareText(a.where, b.where) || compareText(a.code, b.code) || compareText(a.subjects.join(), b.subjects.join());
}

/** Code-point order of two texts: the same on every machine, unlike a locale's. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
