import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { makeJsonSchema, type SchemaName } from '../../engine/schema/index.ts';

/** Where a published schema is kept. */
export function publishedPath(name: SchemaName): string {
  return fileURLToPath(new URL(`../../engine/schema/published/${name}.schema.json`, import.meta.url));
}

/** The text of a schema, as it is published. */
export function publishedText(name: SchemaName): string {
  return `${JSON.stringify(makeJsonSchema(name), null, 2)}\n`;
}

/** A short name for a schema: equal only for equal ones. */
export function fingerprint(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}
