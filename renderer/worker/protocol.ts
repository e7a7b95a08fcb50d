import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Plan } from '../../engine/plan/index.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';

/** One question: what the evidence says of the cabinet. `content` is only sent when it is not the one sent before. */
export interface DiagnosisQuestion {
  readonly revision: number;
  readonly content: CabinetContent | null;
  readonly evidence: Evidence;
}

/** What comes back. `ready` is said once, as soon as the worker runs. `revision` is that of the question. */
export type DiagnosisReply =
  | { readonly kind: 'ready' }
  | { readonly kind: 'progress'; readonly revision: number; readonly share: number }
  | { readonly kind: 'answer'; readonly revision: number; readonly diagnosis: Diagnosis | null; readonly milliseconds: number }
  /** Follow the answer: what to do next, better each time. `share` of the planning is done (0 to 1); at 1 nothing better follows. */
  | { readonly kind: 'plan'; readonly revision: number; readonly plan: Plan; readonly share: number }
  | { readonly kind: 'failed'; readonly revision: number; readonly detail: string };
