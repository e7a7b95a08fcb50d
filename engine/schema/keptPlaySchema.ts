import { z } from 'zod';
import { exerciseContent, exerciseMove } from './exerciseSchema.ts';

/** How a play that is not finished is kept: the exercise as sealed as it came, and what was done. The answer is no part of it. */
export const keptPlayContent = z.strictObject({
  format: z.literal('linkwright-play'),
  version: z.literal(1),
  exercise: exerciseContent,
  moves: z.array(exerciseMove).max(2_000),
  /** Milliseconds since 1970. */
  startedAt: z.number(),
  /** Left out while it goes on. */
  endedAt: z.number().optional(),
  /** Whether a passphrase opened it, which is asked for again: it is kept nowhere. */
  asksPassphrase: z.boolean(),
  /** Whether it was left for the list of exercises, to be taken up again when somebody asks for it. */
  left: z.boolean().optional(),
});
export type KeptPlayContent = z.infer<typeof keptPlayContent>;
