import { createHash } from 'node:crypto';
import { z } from 'zod';
import { type FileFormat, fileSchemas, formatVersions } from '../../engine/schema/index.ts';

const titles: Readonly<Record<FileFormat, string>> = {
  'linkwright-cabinet': 'Linkwright cabinet file',
  'linkwright-case': 'Linkwright case file',
  'linkwright-truth': 'Linkwright truth file',
};

/** Where the published schema of a format is kept, from the top folder. */
export function publishedPath(format: FileFormat): string {
  return `engine/schema/published/${format.replace('linkwright-', '')}.schema.json`;
}

/** The JSON Schema (draft 2020-12) of a whole file, as it is published. */
export function publishedSchema(format: FileFormat): string {
  const { $schema, ...schema } = z.toJSONSchema(fileSchemas[format], { target: 'draft-2020-12', unrepresentable: 'throw' });
  const head = { $schema, $id: `urn:${format}:${formatVersions[format]}`, title: `${titles[format]}, version ${formatVersions[format]}` };
  return `${JSON.stringify({ ...head, ...schema }, null, 2)}\n`;
}

/** A short name for a schema: equal only for equal schemas. Descriptions count too. */
export function fingerprint(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}
