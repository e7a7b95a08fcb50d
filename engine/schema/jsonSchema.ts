import { z } from 'zod';
import { diagnoseLine, simulateLine } from './batchSchema.ts';
import { fileSchemas } from './envelope.ts';

/** What has a published JSON Schema: the three kinds of files, and the lines of the two batches. */
export const schemaNames = ['cabinet', 'case', 'truth', 'simulate-line', 'diagnose-line'] as const;
export type SchemaName = (typeof schemaNames)[number];

const published = {
  cabinet: fileSchemas['linkwright-cabinet'],
  case: fileSchemas['linkwright-case'],
  truth: fileSchemas['linkwright-truth'],
  'simulate-line': simulateLine,
  'diagnose-line': diagnoseLine,
} as const satisfies Readonly<Record<SchemaName, z.ZodType>>;

/** The JSON Schema (draft 2020-12) of a file or a batch line, as an object to be written as JSON. */
export function makeJsonSchema(name: SchemaName): object {
  return z.toJSONSchema(published[name], { target: 'draft-2020-12' });
}
