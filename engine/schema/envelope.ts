import { z } from 'zod';
import { cabinetContent } from './cabinetSchema.ts';
import { caseContent, truthContent } from './caseSchema.ts';
import { exerciseContent, resultContent } from './exerciseSchema.ts';

/** The names by which our files tell what they are. */
export const fileFormats = [
  'linkwright-cabinet',
  'linkwright-case',
  'linkwright-truth',
  'linkwright-exercise',
  'linkwright-result',
] as const;
export type FileFormat = (typeof fileFormats)[number];

/** The version in which each format is written. A new one needs a migration (`engine/cabinet/migrations`). */
export const formatVersions = {
  'linkwright-cabinet': 1,
  'linkwright-case': 1,
  'linkwright-truth': 1,
  'linkwright-exercise': 1,
  'linkwright-result': 1,
} as const satisfies Readonly<Record<FileFormat, number>>;

const envelope = <F extends FileFormat, S extends z.ZodType>(format: F, content: S) =>
  z.strictObject({
    format: z.literal(format),
    formatVersion: z.literal(formatVersions[format]),
    /** The version of the program that wrote the file; for information only. */
    appVersion: z.string().max(100).optional(),
    content,
  });

/** Whole files, as they are published as JSON Schemas. */
export const fileSchemas = {
  'linkwright-cabinet': envelope('linkwright-cabinet', cabinetContent),
  'linkwright-case': envelope('linkwright-case', caseContent),
  'linkwright-truth': envelope('linkwright-truth', truthContent),
  'linkwright-exercise': envelope('linkwright-exercise', exerciseContent),
  'linkwright-result': envelope('linkwright-result', resultContent),
} as const;
