import { z } from 'zod';
import { evidence, fault, intervention } from './caseSchema.ts';
import { id } from './fields.ts';
import { directions, linkEnds, onsets } from './vocabulary.ts';

/*
 * One line of a batch: many simulations or diagnoses in one run of the command line. A line may carry its own cabinet (the content
 * of a cabinet file, or the whole file); that is read like any file, not by these schemas.
 */

const label = z.union([z.string().max(1_000), z.number()]).optional();

/** A look to be predicted: as in a case, without what was seen. */
export const plainLook = z.discriminatedUnion('look', [
  z.strictObject({ look: z.literal('light-at-plug'), link: id, end: z.enum(linkEnds) }),
  z.strictObject({ look: z.literal('light-at-port'), link: id, end: z.enum(linkEnds) }),
  z.strictObject({ look: z.literal('lamp'), link: id, fibre: z.enum(directions) }),
  z.strictObject({ look: z.literal('voltage'), unit: id }),
  z.strictObject({ look: z.literal('compare-plugs'), unit: id }),
  z.strictObject({ look: z.literal('compare-fibres'), link: id }),
]);

/** One simulation: which faults, when, and what was done before and since. */
export const simulateLine = z.strictObject({
  id: label,
  cabinet: z.unknown().optional(),
  faults: z.array(fault).max(1_000),
  onset: z.enum(onsets).optional(),
  halted: z.boolean().optional(),
  beforeTrip: z.array(intervention).max(1_000).optional(),
  sinceTrip: z.array(intervention).max(1_000).optional(),
  looks: z.array(plainLook).max(5_000).optional(),
});
export type SimulateLine = z.infer<typeof simulateLine>;

/** One diagnosis: the evidence as a case holds it, and how many answers are wanted of each list. */
export const diagnoseLine = z.strictObject({
  id: label,
  cabinet: z.unknown().optional(),
  evidence,
  top: z.int().positive().max(1_000_000).optional(),
});
export type DiagnoseLine = z.infer<typeof diagnoseLine>;
