import { z } from 'zod';
import { diagnoseLine, simulateLine } from './batchSchema.ts';
import { fileSchemas, formatVersions } from './envelope.ts';

/** What has a published JSON Schema: the kinds of files, and the lines of the two batches. */
export const schemaNames = ['cabinet', 'case', 'truth', 'exercise', 'result', 'simulate-line', 'diagnose-line'] as const;
export type SchemaName = (typeof schemaNames)[number];

interface Published {
  readonly schema: z.ZodType;
  readonly title: string;
  readonly version: number;
}

const file = (format: keyof typeof fileSchemas, title: string): Published => ({
  schema: fileSchemas[format],
  title,
  version: formatVersions[format],
});

const published: { readonly [N in SchemaName]: Published } = {
  cabinet: file('linkwright-cabinet', 'Linkwright cabinet file'),
  case: file('linkwright-case', 'Linkwright case file'),
  truth: file('linkwright-truth', 'Linkwright truth file'),
  exercise: file('linkwright-exercise', 'Linkwright exercise file'),
  result: file('linkwright-result', 'Linkwright result of an exercise'),
  'simulate-line': { schema: simulateLine, title: 'Line of a batch of simulations', version: 1 },
  'diagnose-line': { schema: diagnoseLine, title: 'Line of a batch of diagnoses', version: 1 },
};

/** The JSON Schema (draft 2020-12) of a file or a batch line, as an object to be written as JSON. */
export function makeJsonSchema(name: SchemaName): object {
  const { schema, title, version } = published[name];
  const { $schema, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12' });
  return { $schema, $id: `urn:linkwright-${name}:${version}`, title: `${title}, version ${version}`, ...rest };
}
