import type { UnitKind } from '../../engine/schema/index.ts';

/** The workspaces on one cabinet. */
export const workspaces = ['draw', 'find', 'practice'] as const;
export type Workspace = (typeof workspaces)[number];

/** Two ways to look at the same cabinet. */
export const drawViews = ['drawing', 'lists'] as const;
export type DrawView = (typeof drawViews)[number];

/** What the drawing is sorted by: how the light runs, or where the units stand. */
export type Arrangement = 'chain' | 'mounting';

/** A dialog of Draw that is open. */
export type DrawDialog = 'connect-to' | 'find-thing' | 'palette' | 'paste-rows';

/** Draw, of this sitting: what is chosen and how it is looked at. Never saved and never undone. */
export interface DrawState {
  /** Ids of units, links, leads and the controller, in the order in which they were chosen; the last one is the first to act on. */
  readonly chosen: readonly string[];
  readonly view: DrawView;
  readonly arrangement: Arrangement;
  /** Feedback cables are shown on demand only. */
  readonly feedbackShown: boolean;
  /** The kind that is placed with the next click on a cable or a free place. */
  readonly held: UnitKind | null;
  readonly dialog: DrawDialog | null;
}

export const nothingDrawn: DrawState = {
  chosen: [],
  view: 'drawing',
  arrangement: 'chain',
  feedbackShown: false,
  held: null,
  dialog: null,
};
