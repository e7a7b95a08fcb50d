import type { Problem } from './problem.ts';

/** What an operation that can fail for expected reasons answers: a value, or the problems that stood in its way (at least one). */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** Wraps a value as a success. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** Wraps one or more problems as a failure. */
export function fail<T>(...problems: readonly Problem[]): Result<T> {
  return { ok: false, problems };
}

/** Marks a branch that no value of a closed union can reach; reaching it is a bug. */
export function assertNever(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`);
}
