import type { Problem } from '../../engine/base/index.ts';
import type { Experience } from '../../engine/experience/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';

/** A case of the collection. */
export interface KeptCase {
  /** Names its file. */
  readonly key: string;
  readonly content: CaseContent;
}

/** The user's own collection of confirmed cases, as the window knows it. */
export interface ConfirmedState {
  readonly shown: boolean;
  readonly state: 'unread' | 'reading' | 'read';
  readonly cases: readonly KeptCase[];
  /** Files that do not open; they are left untouched. */
  readonly damaged: readonly { readonly name: string; readonly problems: readonly Problem[] }[];
  /** Null while it is worked out. */
  readonly experience: Experience | null;
  /** What was taken out last, and can be put back. */
  readonly removed: CaseContent | null;
  /** Why the last change was not made. */
  readonly trouble: readonly Problem[];
}

export const nothingConfirmed: ConfirmedState = {
  shown: false,
  state: 'unread',
  cases: [],
  damaged: [],
  experience: null,
  removed: null,
  trouble: [],
};
