import type { Problem } from '../../engine/base/index.ts';
import type { Debrief, Play } from '../../engine/exercise/index.ts';
import type { ExerciseContent, ExerciseMove } from '../../engine/schema/index.ts';

/** What the page asks the worker that keeps the answer. */
export type PracticeQuestion =
  | { readonly kind: 'open'; readonly exercise: ExerciseContent; readonly passphrase: string | null }
  | { readonly kind: 'play'; readonly moves: readonly ExerciseMove[] };

/** What comes back: never more than was paid for, until the play has ended. */
export type PracticeReply =
  | { readonly kind: 'opened' }
  | { readonly kind: 'closed'; readonly problems: readonly Problem[] }
  | { readonly kind: 'played'; readonly play: Play; readonly debrief: Debrief | null };
