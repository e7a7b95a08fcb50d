import type { Problem } from '../../engine/base/index.ts';
import type { Debrief, Play } from '../../engine/exercise/index.ts';
import type { ExerciseContent, ExerciseMove } from '../../engine/schema/index.ts';

/** How a paper is wanted. `date`: the day that is printed; `madeAt`: the moment that stands in the file, milliseconds. */
export interface PaperForm {
  readonly as: 'pdf' | 'html';
  readonly date: string;
  readonly madeAt: number;
}

/** What the page asks the worker that keeps the answer. `run` counts the exercises that were opened: a late reply is known by it. */
export type PracticeQuestion =
  | { readonly kind: 'open'; readonly run: number; readonly exercise: ExerciseContent; readonly passphrase: string | null }
  | { readonly kind: 'play'; readonly run: number; readonly moves: readonly ExerciseMove[] }
  | { readonly kind: 'sheet'; readonly form: PaperForm; readonly exercise: ExerciseContent }
  | { readonly kind: 'answer-sheet'; readonly form: PaperForm; readonly exercise: ExerciseContent; readonly passphrase: string }
  | { readonly kind: 'debrief-paper'; readonly form: PaperForm; readonly moves: readonly ExerciseMove[]; readonly code: string };

/** What comes back: never more than was paid for, until the play has ended. */
export type PracticeReply =
  | { readonly kind: 'opened'; readonly run: number }
  | { readonly kind: 'closed'; readonly run: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'played'; readonly run: number; readonly play: Play; readonly debrief: Debrief | null }
  | { readonly kind: 'paper'; readonly bytes: Uint8Array | null; readonly problems: readonly Problem[] };
