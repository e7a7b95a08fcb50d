import type { CabinetContent, DisplayMeaning, Snapshot } from '../../engine/schema/index.ts';
import type { CaseRecord } from '../state/appState.ts';
import { findLegend, readCode } from '../state/legend.ts';

/*
 * Codes are kept as they were read. When a legend changes, or another one holds, what they mean is read anew.
 */

/** A code that now means something else. */
export interface Rereading {
  readonly snapshot: number;
  readonly unit: string;
  readonly code: string;
  readonly meanings: readonly DisplayMeaning[];
}

/** What the codes of a case mean by the legends of a cabinet, where that differs from what is written. */
export function rereadings(cabinet: CabinetContent, { evidence }: Pick<CaseRecord, 'evidence'>): readonly Rereading[] {
  return evidence.snapshots.flatMap(({ displays }: Snapshot, snapshot) =>
    (displays ?? []).flatMap(({ unit, code, meanings }): readonly Rereading[] => {
      const read = code === undefined ? null : readCode(findLegend(cabinet, unit), code);
      if (!read || isSameSet(read.meanings, meanings)) return [];
      return [{ snapshot, unit, code: read.code, meanings: read.meanings }];
    }),
  );
}

function isSameSet(a: readonly DisplayMeaning[], b: readonly DisplayMeaning[]): boolean {
  return a.length === b.length && a.every((meaning) => b.includes(meaning));
}
