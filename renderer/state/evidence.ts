import type { Draft } from 'immer';
import { isUnread } from '../../engine/diagnosis/index.ts';
import type { DisplayMeaning, LookObservation, Snapshot } from '../../engine/schema/index.ts';
import type { Look } from '../../engine/simulation/index.ts';
import type { CaseRecord, DocumentState } from './appState.ts';

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

/** What was found at a look; none where nobody has looked there in this state of the machine. */
export function findLook(snapshot: Snapshot, look: Look): LookObservation | undefined {
  return snapshot.looks?.find((one) => isSameLook(one, look));
}

/** Whether two looks are at the same place, and of the same kind. */
export function isSameLook(one: Look, other: Look): boolean {
  const keys = ['look', 'link', 'end', 'fibre', 'unit'] as const;
  const [a, b]: readonly Readonly<Record<string, unknown>>[] = [one, other];
  return keys.every((key) => a?.[key] === b?.[key]);
}

/** What a display was seen to say; empty when nobody has looked. */
export function seenMeanings(snapshot: Snapshot, unit: string): readonly DisplayMeaning[] {
  return findDisplay(snapshot, unit)?.meanings ?? [];
}

/** How many displays were read; one that was only noted or photographed is not. */
export function countRead({ displays }: Snapshot): number {
  return (displays ?? []).filter(({ meanings }) => !isUnread(meanings)).length;
}

/** Takes a photo out of the cabinet once no observation and nothing documented names it. */
export function dropPhoto({ cabinet, caseRecord }: Draft<DocumentState>, photo: string): void {
  const seen = caseRecord.evidence.snapshots.flatMap(({ displays, reports, looks }) => [
    ...(displays ?? []),
    ...(reports ?? []),
    ...(looks ?? []),
  ]);
  const documented = [...(cabinet.units ?? []), ...(cabinet.controller ? [cabinet.controller] : [])].flatMap(({ photos }) => photos ?? []);
  const named = [...seen.map((one) => one.photo), ...documented, ...(cabinet.cabinetPhotos ?? [])];
  if (named.includes(photo)) return;
  const kept = (cabinet.photos ?? []).filter(({ id }) => id !== photo);
  if (kept.length > 0) cabinet.photos = kept;
  else delete cabinet.photos;
}

/** Whether anything at all was seen in the case. */
export function hasObservations(record: CaseRecord): boolean {
  return record.evidence.snapshots.some(
    ({ displays, reports, looks }) => (displays?.length ?? 0) + (reports?.length ?? 0) + (looks?.length ?? 0) > 0,
  );
}

/** Whether the machine runs by the last look at it, after something was done to it. */
export function runsSinceHandled({ evidence: { snapshots } }: CaseRecord): boolean {
  return snapshots[snapshots.length - 1]?.halted === false && snapshots.some(({ interventions }) => (interventions?.length ?? 0) > 0);
}
