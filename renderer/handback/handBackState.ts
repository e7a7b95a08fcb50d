import type { Problem } from '../../engine/base/index.ts';

/** How the report stands. */
type ReportState =
  | { readonly state: 'none' | 'making' }
  | { readonly state: 'saved'; readonly name: string }
  | { readonly state: 'failed'; readonly problems: readonly Problem[] };

export interface HandBackState {
  readonly shown: boolean;
  readonly report: ReportState;
}

export const notHandedBack: HandBackState = { shown: false, report: { state: 'none' } };
