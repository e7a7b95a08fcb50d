import type { Patch } from 'immer';

/** One undoable step: what it did, how to take it back, and what to call it. */
export interface UndoStep {
  /** "quiet at -TB2": follows "Undo" and "Redo" in the menu. */
  readonly name: string;
  readonly patches: readonly Patch[];
  /** In the order in which they must be applied. */
  readonly inverse: readonly Patch[];
  /** Steps of an equal key that follow each other are one: typing in one field. */
  readonly mergeKey: string | null;
  /** What the step touched, to be brought into view when it is undone. */
  readonly subject: string | null;
}

export interface UndoHistory {
  readonly past: readonly UndoStep[];
  readonly future: readonly UndoStep[];
}

export const emptyHistory: UndoHistory = { past: [], future: [] };

/** What the steps may fill together: bytes of their patches, as JSON in the memory of a browser (two bytes a sign at most). */
export const historyLimitBytes = 64 * 1024 * 1024;
const bytesPerSign = 2;

/** Adds a step; it ends what could be redone. A step of the same merge key as the last one becomes part of it. */
export function pushStep(history: UndoHistory, step: UndoStep, limitBytes = historyLimitBytes): UndoHistory {
  const last = history.past[history.past.length - 1];
  const joined =
    last && step.mergeKey !== null && last.mergeKey === step.mergeKey
      ? [...history.past.slice(0, -1), joinSteps(last, step)]
      : [...history.past, step];
  return { past: withinLimit(joined, limitBytes), future: [] };
}

/** Ends the last step: what is typed next is a step of its own. So undo finds the state that was saved. */
export function sealLast(history: UndoHistory): UndoHistory {
  const last = history.past[history.past.length - 1];
  if (!last || last.mergeKey === null) return history;
  const sealed = { ...last, mergeKey: null };
  sizes.set(sealed, sizeOf(last));
  return { ...history, past: [...history.past.slice(0, -1), sealed] };
}

/** Takes the last step off; the caller applies its `inverse`. */
export function popPast(history: UndoHistory): { readonly step: UndoStep; readonly history: UndoHistory } | null {
  const step = history.past[history.past.length - 1];
  if (!step) return null;
  return { step, history: { past: history.past.slice(0, -1), future: [step, ...history.future] } };
}

/** Takes the next step to redo; the caller applies its `patches`. */
export function popFuture(history: UndoHistory): { readonly step: UndoStep; readonly history: UndoHistory } | null {
  const [step, ...future] = history.future;
  if (!step) return null;
  // A redone step stays a step of its own: typing on after a redo does not melt into it.
  return { step, history: sealLast({ past: [...history.past, step], future }) };
}

/** What the history fills, in bytes. */
export function historyBytes(history: UndoHistory): number {
  return [...history.past, ...history.future].reduce((sum, step) => sum + sizeOf(step), 0);
}

function joinSteps(first: UndoStep, second: UndoStep): UndoStep {
  const joined = { ...second, patches: [...first.patches, ...second.patches], inverse: [...second.inverse, ...first.inverse] };
  sizes.set(joined, sizeOf(first) + sizeOf(second));
  return joined;
}

function withinLimit(steps: readonly UndoStep[], limitBytes: number): readonly UndoStep[] {
  let size = 0;
  let first = steps.length;
  while (first > 0) {
    const step = steps[first - 1];
    size += step ? sizeOf(step) : 0;
    // The newest step is kept whatever its size: what was just done can always be undone.
    if (size > limitBytes && first < steps.length) break;
    first -= 1;
  }
  return first === 0 ? steps : steps.slice(first);
}

const sizes = new WeakMap<UndoStep, number>();

function sizeOf(step: UndoStep): number {
  const known = sizes.get(step);
  if (known !== undefined) return known;
  const size = JSON.stringify([step.patches, step.inverse]).length * bytesPerSign;
  sizes.set(step, size);
  return size;
}
