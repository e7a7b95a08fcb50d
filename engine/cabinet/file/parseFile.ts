import { compareProblems, fail, makeProblem, ok, type Result } from '../../base/index.ts';
import { migrate, newestVersion, type OldContent } from '../migrations/index.ts';
import { decodeText } from './decodeText.ts';
import type { FileKind } from './fileKinds.ts';
import { openEnvelope } from './openEnvelope.ts';
import { scanJson } from './scanJson.ts';
import { shapeProblems } from './shapeProblems.ts';

/**
 * The one way in, for every source: size → UTF-8 → JSON (with depth, number of values, keys) → envelope → version → migration →
 * shape → ids. Stops at the first of these that fails, and then names all that is wrong there. Never throws, never changes
 * anything, and needs time in proportion to the size of the source.
 */
export function parseFile<T>(kind: FileKind<T>, source: string | Uint8Array): Result<T> {
  const decoded = decodeText(source);
  if (!decoded.ok) return decoded;
  const text = decoded.value;
  const scanned = scanJson(text);
  if (!scanned.ok) return scanned;
  const opened = openEnvelope(JSON.parse(text), kind.format, newestVersion(kind.migrations));
  if (!opened.ok) return opened;
  const migrated = migrate(opened.value.content, opened.value.version, kind.migrations);
  if (!migrated.ok) return migrated;
  const parsed = validate(kind, migrated.value);
  if (parsed === null) return fail(makeProblem('problems-too-many', 'refused'));
  if (!parsed.success) return fail(...[...shapeProblems(parsed.error.issues, migrated.value, text)].sort(compareProblems));
  const doubled = kind.doubledIds(parsed.data);
  return doubled.length > 0 ? fail(...doubled) : ok(parsed.data);
}

/** `null`: so much is wrong (about a hundred thousand places) that the schema library cannot list it; it then runs out of stack. */
function validate<T>(kind: FileKind<T>, content: OldContent) {
  try {
    return kind.schema.safeParse(content);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
