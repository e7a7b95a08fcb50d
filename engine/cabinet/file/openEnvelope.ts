import { fail, makeProblem, ok, type Result } from '../../base/index.ts';
import { type FileFormat, fileFormats } from '../../schema/index.ts';
import type { OldContent } from '../migrations/index.ts';

const envelopeFields: readonly string[] = ['format', 'formatVersion', 'appVersion', 'content'];
const longestName = 60;

/** What an envelope says: the version of the format, and the content, not yet looked at. */
export interface Opened {
  readonly version: number;
  readonly content: OldContent;
}

/**
 * Looks at the envelope of a file: is it ours, of the kind that is wanted, and of a version that this program knows? The version
 * is looked at before anything that a newer version might have changed.
 */
export function openEnvelope(value: unknown, wanted: FileFormat, newest: number): Result<Opened> {
  if (!isObject(value)) return fail(makeProblem('envelope-not-object', 'refused', { facts: { expected: wanted } }));
  const { format, formatVersion, appVersion } = value;
  if (format !== wanted) {
    const facts = { format: typeof format === 'string' ? format.slice(0, longestName) : '', expected: wanted };
    const ours = fileFormats.some((known) => known === format);
    return fail(makeProblem(ours ? 'format-other-kind' : 'format-foreign', 'refused', { facts }));
  }
  if (formatVersion === undefined) return fail(makeProblem('version-missing', 'refused'));
  if (typeof formatVersion !== 'number' || !Number.isInteger(formatVersion) || formatVersion < 1) {
    return fail(makeProblem('version-invalid', 'refused', { facts: { version: JSON.stringify(formatVersion).slice(0, longestName) } }));
  }
  if (formatVersion > newest) {
    const writer = typeof appVersion === 'string' ? appVersion.slice(0, longestName) : '';
    return fail(makeProblem('version-too-new', 'refused', { facts: { version: formatVersion, supported: newest, appVersion: writer } }));
  }
  const unknown = Object.keys(value).filter((field) => !envelopeFields.includes(field));
  if (unknown.length > 0) {
    return fail(
      ...unknown
        .slice(0, 10)
        .map((field) => makeProblem('envelope-field-unknown', 'refused', { facts: { field: field.slice(0, longestName) } })),
    );
  }
  if (appVersion !== undefined && (typeof appVersion !== 'string' || appVersion.length > 100)) {
    return fail(makeProblem('envelope-app-version-invalid', 'refused'));
  }
  if (!isObject(value['content'])) return fail(makeProblem('content-missing', 'refused'));
  return ok({ version: formatVersion, content: value['content'] });
}

function isObject(value: unknown): value is OldContent {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
