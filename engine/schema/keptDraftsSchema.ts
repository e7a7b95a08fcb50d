import { z } from 'zod';
import { fault } from './caseSchema.ts';
import { exerciseKinds, solvedBy } from './exerciseSchema.ts';
import { amount, id, line, text } from './fields.ts';
import { circumstanceKinds, onsets } from './vocabulary.ts';

/*
 * How exercises that are being made are kept. What they hide stands in the open: nobody has sealed it yet.
 */

const shown = z.union([z.enum(['complaining', 'all', 'none']), z.array(id).max(5_000)]);
const minutes = amount.nullable();

const draft = z.strictObject({
  id,
  sample: z.string().max(200).nullable(),
  faults: z.array(fault).max(20),
  onset: z.enum(onsets),
  seed: z.int().nonnegative(),
  displays: shown,
  reports: shown,
  circumstances: z.array(z.enum(circumstanceKinds)).max(50),
  steps: z.record(
    z.string().max(20_000),
    z.strictObject({
      allowed: z.boolean().optional(),
      minutes: amount.optional(),
      most: z.int().positive().nullable().optional(),
      spare: z.string().max(64).optional(),
    }),
  ),
  times: z.strictObject({ openMinutes: minutes, isolateMinutes: minutes, bootMinutes: minutes }),
  spares: z.array(z.strictObject({ id, name: line, partNumber: line.optional(), count: z.int().positive().max(100) })).max(100),
  limits: z.strictObject({ minutes, steps: z.int().positive().nullable() }),
  hints: z.array(z.strictObject({ id: z.int(), text, minutes: amount })).max(100),
  solved: z.enum(solvedBy),
  kind: z.enum(exerciseKinds),
  kindChosen: z.boolean(),
  name: line,
  task: text,
  story: text,
  lesson: text,
});

/** With the cabinet that it was made for; null: it was not known yet. */
const kept = z.strictObject({ draft, cabinet: z.strictObject({ id, name: line }).nullable() });

export const keptDraftsContent = z.strictObject({
  format: z.literal('linkwright-drafts'),
  version: z.literal(1),
  /** The one that was worked on; null: it held nothing of anybody's own. */
  current: kept.nullable(),
  aside: z.array(kept).max(100),
});
