import type { Problem } from '../../engine/base/index.ts';
import type { ExerciseWish, KindTexts, MadeExercise, PlanStep, Proposal } from '../../engine/exercise/index.ts';
import type { AnswerContent, CabinetContent, ExerciseContent, ExerciseKind } from '../../engine/schema/index.ts';
import type { DraftSpare, StepDecision } from './makeDraft.ts';

/** What the page asks the worker that makes exercises. */
export type MakerQuestion =
  | {
      readonly kind: 'make';
      readonly wish: ExerciseWish;
      readonly decisions: Readonly<Record<string, StepDecision>>;
      readonly spares: readonly DraftSpare[];
    }
  | { readonly kind: 'generate'; readonly wish: GenerateQuestion; readonly count: number }
  | { readonly kind: 'seal'; readonly exercise: ExerciseContent; readonly answer: AnswerContent; readonly passphrase: string }
  | { readonly kind: 'lock'; readonly text: string; readonly passphrase: string }
  | { readonly kind: 'unlock'; readonly locked: string; readonly passphrase: string };

interface GenerateQuestion {
  readonly cabinet: CabinetContent;
  readonly seed: number;
  readonly texts: KindTexts;
  readonly level?: number;
}

/** What comes back, in this order; the last of each question is `made`, `refused`, `generated`, `sealed`, `locked` or `unlocked`. */
export type MakerReply =
  | { readonly kind: 'proposed'; readonly proposal: Proposal }
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'made'; readonly made: MadeExercise; readonly plan: readonly PlanStep[] }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'tried'; readonly exerciseKind: ExerciseKind; readonly made: MadeExercise | null }
  | { readonly kind: 'generated' }
  | { readonly kind: 'sealed'; readonly exercise: ExerciseContent }
  | { readonly kind: 'locked'; readonly locked: string }
  /** Null: the passphrase is another one. */
  | { readonly kind: 'unlocked'; readonly text: string | null };
