import type { UsageCode, UsageFacts, UsageProblem } from '../../messages/index.ts';

/** What reading a piece of the command line answers: a value, or what is wrong with it. */
export type Asked<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly UsageProblem[] };

/** A piece that was understood. */
export function understood<T>(value: T): Asked<T> {
  return { ok: true, value };
}

/** A piece that was not, and why. */
export function refused<C extends UsageCode>(
  code: C,
  facts: UsageFacts[C],
): { readonly ok: false; readonly problems: readonly UsageProblem[] } {
  return { ok: false, problems: [makeUsageProblem(code, facts)] };
}

/** Builds a usage problem. */
export function makeUsageProblem<C extends UsageCode>(code: C, facts: UsageFacts[C]): UsageProblem {
  // Code and facts belong together by the signature; the union cannot be built from a generic code without saying so.
  return { code, facts } as UsageProblem;
}

/** All values, or all that is wrong with any of them. */
export function allOf<T>(asked: readonly Asked<T>[]): Asked<readonly T[]> {
  const problems = asked.flatMap((one) => (one.ok ? [] : one.problems));
  return problems.length > 0 ? { ok: false, problems } : understood(asked.flatMap((one) => (one.ok ? [one.value] : [])));
}
