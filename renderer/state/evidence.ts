import type { Draft } from 'immer';
import type { DisplayMeaning, Snapshot } from '../../engine/schema/index.ts';
import type { CaseRecord } from './appState.ts';

/*
 * Reading and changing the snapshot that is being filled in: the last one of the case.
 */

export type DisplayObservation = NonNullable<Snapshot['displays']>[number];
export type ReportObservation = NonNullable<Snapshot['reports']>[number];

const emptySnapshot: Snapshot = {};

/** The snapshot that is being filled in. */
export function currentSnapshot(record: CaseRecord): Snapshot {
  const { snapshots } = record.evidence;
  return snapshots[snapshots.length - 1] ?? emptySnapshot;
}

/** The same, to be changed; a case without any gets its first. */
export function draftSnapshot(record: Draft<CaseRecord>): Draft<Snapshot> {
  const { snapshots } = record.evidence;
  const last = snapshots[snapshots.length - 1];
  if (last) return last;
  const first: Draft<Snapshot> = {};
  snapshots.push(first);
  return first;
}

export function findDisplay(snapshot: Snapshot, unit: string): DisplayObservation | undefined {
  return snapshot.displays?.find((display) => display.unit === unit);
}

export function findReport(snapshot: Snapshot, chain: string): ReportObservation | undefined {
  return snapshot.reports?.find((report) => report.chain === chain);
}

/** What a display was seen to say; empty when nobody has looked. */
export function seenMeanings(snapshot: Snapshot, unit: string): readonly DisplayMeaning[] {
  return findDisplay(snapshot, unit)?.meanings ?? [];
}

/** Whether anything at all was seen in the case. */
export function hasObservations(record: CaseRecord): boolean {
  return record.evidence.snapshots.some(
    ({ displays, reports, looks }) => (displays?.length ?? 0) + (reports?.length ?? 0) + (looks?.length ?? 0) > 0,
  );
}
