import { z } from 'zod';
import { plainLook } from './batchSchema.ts';
import { cabinetContent } from './cabinetSchema.ts';
import { circumstance, fault, intervention } from './caseSchema.ts';
import { amount, id, line, moment, text } from './fields.ts';
import { displayMeanings, onsets } from './vocabulary.ts';

/*
 * Exercises and results of them, version 1. What is hidden in an exercise is sealed: `sealed` holds it in the open age format
 * (age-encryption.org/v1, armored), locked with a passphrase. All else stands there in the open.
 */

/** Something a trainee may do: read a display or a report, look at something, or act and restart. */
export const exerciseStep = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('read-display'), unit: id }),
  z.strictObject({ do: z.literal('read-report'), chain: id }),
  z.strictObject({ do: z.literal('look'), look: plainLook }),
  /** Done with the machine switched off; then it is switched on again. No acts: only off and on. */
  z.strictObject({ do: z.literal('act'), acts: z.array(intervention).max(20) }),
]);

/** What kind of thing an exercise teaches; a set of exercises differs in it. */
export const exerciseKinds = [
  'counting',
  'neighbours',
  'quiet-unit',
  'first-hop',
  'one-fibre',
  'power',
  'do-not-switch-off',
  'two-faults',
  'intermittent',
  'place',
] as const;
export type ExerciseKind = (typeof exerciseKinds)[number];

/** What must be right in the end: the item named, the place named (a cable with its plugs and route, a unit with all in it), or the machine mended. */
export const solvedBy = ['item', 'place', 'mended'] as const;
export type SolvedBy = (typeof solvedBy)[number];

const allowedStep = z.strictObject({
  id,
  step: exerciseStep,
  minutes: amount,
  /** The spare that it uses up. */
  spare: id.optional(),
  /** How often it may be done in all. Left out: an act once; a look as often as the machine is started anew. */
  most: z.int().positive().max(20).optional(),
});
export type AllowedStep = z.infer<typeof allowedStep>;

/** What may be wrong, openly: one of these is. The weight says how likely it is beforehand, against the others. */
const possibility = z.strictObject({ faults: z.array(fault).min(1).max(4), weight: z.number().positive() });
export type Possibility = z.infer<typeof possibility>;

/** How hard an exercise is, in things that can be measured. */
const figures = z.strictObject({
  /** Answers that what is known at the start cannot tell apart. */
  firstGroup: z.int().positive(),
  /** Expected minutes of the best plan. */
  bestMinutes: amount,
  /** Whether that plan is proved to be the best one. */
  exact: z.boolean(),
  faults: z.int().positive(),
  intermittent: z.boolean(),
  /** Displays that point away from what is wrong. */
  misleading: z.int().nonnegative(),
  level: z.int().positive().max(4),
});
export type ExerciseFigures = z.infer<typeof figures>;

export const exerciseContent = z.strictObject({
  id,
  name: line,
  kind: z.enum(exerciseKinds),
  task: text,
  /** From which it was generated. */
  seed: z.int().nonnegative().optional(),
  onset: z.enum(onsets),
  /** What everybody knows before the first step. */
  given: z.strictObject({
    displays: z
      .array(z.strictObject({ unit: id, meaning: z.enum(displayMeanings) }))
      .max(5_000)
      .optional(),
    reports: z
      .array(z.strictObject({ chain: id, gap: z.union([z.int().positive().max(5_000), z.literal('none')]) }))
      .max(200)
      .optional(),
    /** What makes some of it likelier beforehand. */
    circumstances: z.array(circumstance).max(50).optional(),
  }),
  possible: z.array(possibility).min(1).max(200),
  steps: z.array(allowedStep).min(1).max(200),
  /** Minutes of a change of state: opening the live cabinet; switching off, locking and discharging; switching on again. */
  times: z.strictObject({ openMinutes: amount, isolateMinutes: amount, bootMinutes: amount }),
  spares: z
    .array(z.strictObject({ id, name: line, partNumber: line.optional(), count: z.int().positive().max(100) }))
    .max(100)
    .optional(),
  limits: z.strictObject({ minutes: amount.optional(), steps: z.int().positive().max(1_000).optional() }).optional(),
  hints: z
    .array(z.strictObject({ text, minutes: amount }))
    .max(20)
    .optional(),
  solved: z.enum(solvedBy),
  figures: figures.optional(),
  sealed: z.string().max(200_000),
  cabinet: cabinetContent,
});
export type ExerciseContent = z.infer<typeof exerciseContent>;

/** What is sealed in an exercise. */
export const answerContent = z.strictObject({
  exercise: id,
  /** Checksum of what stands in the open, so that a seal does not stand on another exercise. */
  check: line,
  faults: z.array(fault).min(1).max(4),
  /** Decides when a fault that comes and goes is there. */
  seed: z.int().nonnegative(),
  /** What had happened, and what to take home; shown at the end. */
  story: text.optional(),
  lesson: text.optional(),
});
export type AnswerContent = z.infer<typeof answerContent>;

/** Cautions that a trainee says to have heeded before a step. */
const heeded = z.array(line).max(20);

/** One thing a trainee did. */
export const exerciseMove = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('step'),
    step: id,
    /** The answers that he suspected, and the outcome that he expected. */
    suspects: z.array(line).max(200),
    predicted: line.optional(),
    heeded,
  }),
  z.strictObject({ do: z.literal('hint') }),
  z.strictObject({ do: z.literal('name'), answer: line }),
  /** Hands the machine over as mended. */
  z.strictObject({ do: z.literal('hand-over') }),
  z.strictObject({ do: z.literal('give-up') }),
]);
export type ExerciseMove = z.infer<typeof exerciseMove>;

export const unsafeKinds = ['live-work', 'unequal-boards', 'lost-reference'] as const;
export type UnsafeKind = (typeof unsafeKinds)[number];

/** How one trainee went through one exercise. A free code stands for the person. */
export const resultContent = z.strictObject({
  exercise: id,
  name: line,
  code: line,
  startedAt: moment.optional(),
  seconds: amount.optional(),
  moves: z.array(exerciseMove).max(2_000),
  solved: z.boolean(),
  minutes: amount,
  bestMinutes: amount,
  predictions: z.int().nonnegative(),
  predictionsRight: z.int().nonnegative(),
  unsafe: z.array(z.enum(unsafeKinds)).max(2_000),
  /** Of all the above: against accidents, not against forgery. */
  checksum: line,
});
export type ResultContent = z.infer<typeof resultContent>;
