import { compareNatural } from './naturalOrder.ts';
import type { ProblemCode, ProblemFacts } from './problemCodes.ts';

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
  readonly code: ProblemCode;
  readonly severity: Severity;
  readonly where: string;
  readonly subjects: readonly string[];
  readonly facts: Readonly<Record<string, string | number>>;
}

type Rest<C extends ProblemCode> = Partial<Pick<Problem, 'where' | 'subjects'>> &
  ([keyof ProblemFacts<C>] extends [never] ? { readonly facts?: Record<string, never> } : { readonly facts: ProblemFacts<C> });

/** Builds a problem. The facts that the code asks for (`problemFacts`) must be given; place and subjects may be left out. */
export function makeProblem<C extends ProblemCode>(
  code: C,
  severity: Severity,
  ...[rest]: [keyof ProblemFacts<C>] extends [never] ? [rest?: Rest<C>] : [rest: Rest<C>]
): Problem {
  return { code, severity, where: rest?.where ?? '', subjects: rest?.subjects ?? [], facts: rest?.facts ?? {} };
}

/** Orders problems by place, then code, so that equal input gives an equal list. */
export function compareProblems(a: Problem, b: Problem): number {
  return compareNatural(a.where, b.where) || compareText(a.code, b.code) || compareText(a.subjects.join(), b.subjects.join());
}

/** Code-point order of two texts: the same on every machine, unlike a locale's. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
