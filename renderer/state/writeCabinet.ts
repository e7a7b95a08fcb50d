import type { Draft } from 'immer';
import type { CabinetContent } from '../../engine/schema/index.ts';

/**
 * Writes a cabinet that an edit made into the draft of the one it was made from. Only what differs is touched, record by record where
 * a list only grew or kept its length, so that a step of the history stays small.
 */
export function writeCabinet(draft: Draft<CabinetContent>, before: CabinetContent, after: CabinetContent): void {
  // Members are copied by name from one content to another of the same shape.
  const target = draft as Record<string, unknown>;
  const from = before as Readonly<Record<string, unknown>>;
  const to = after as Readonly<Record<string, unknown>>;
  for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
    if (to[key] === from[key]) continue;
    if (to[key] === undefined) delete target[key];
    else if (!writeList(target[key], from[key], to[key])) target[key] = to[key];
  }
}

/** Writes a list of records whose ids stand in the same order at its beginning; says whether it was one. */
function writeList(target: unknown, before: unknown, after: unknown): boolean {
  if (!Array.isArray(target) || !Array.isArray(before) || !Array.isArray(after) || after.length < before.length) return false;
  const idOf = (record: unknown) => (record as { readonly id?: unknown }).id; // a list without ids has none in either
  if (!before.every((record, index) => idOf(record) !== undefined && idOf(record) === idOf(after[index]))) return false;
  for (const [index, record] of after.entries()) if (record !== before[index]) target[index] = record;
  return true;
}
