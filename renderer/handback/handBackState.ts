import type { Problem } from '../../engine/base/index.ts';

/** How the report stands. */
type ReportState =
  | { readonly state: 'none' | 'making' }
  /** `remarks`: what could not be printed. */
  | { readonly state: 'saved'; readonly name: string; readonly remarks: readonly string[] }
  | { readonly state: 'not-made'; readonly detail: string }
  | { readonly state: 'failed'; readonly problems: readonly Problem[] };

export interface HandBackState {
  readonly shown: boolean;
  readonly report: ReportState;
}

export const notHandedBack: HandBackState = { shown: false, report: { state: 'none' } };
