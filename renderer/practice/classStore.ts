import { createStore } from 'zustand/vanilla';
import type { FileRef, SeveralFiles } from '../state/sitting.ts';
import { addResults, type ClassFiles, noClassFiles } from './classModel.ts';

export interface ClassState extends ClassFiles {
  readonly canDelete: boolean;
  /** Handles of the files that are chosen. */
  readonly chosen: readonly string[];
  /** How many were deleted last. */
  readonly deleted: number;
}

const nothing: ClassState = { ...noClassFiles, canDelete: false, chosen: [], deleted: 0 };

/** The table of a class, of this sitting. */
export const classStore = createStore<ClassState>(() => nothing);

export function takeChosen(chosen: SeveralFiles, canDelete: boolean): void {
  classStore.setState((before) => ({ ...addResults(before, chosen), canDelete, deleted: 0 }));
}

export function chooseFiles(chosen: readonly string[]): void {
  classStore.setState({ chosen, deleted: 0 });
}

export function forgetDeleted(files: readonly FileRef[]): void {
  const gone = new Set(files.map(({ handle }) => handle));
  classStore.setState(({ results, chosen }) => ({
    results: results.filter(({ file }) => !gone.has(file.handle)),
    chosen: chosen.filter((handle) => !gone.has(handle)),
    deleted: gone.size,
  }));
}

export function emptyClass(): void {
  classStore.setState(nothing);
}
