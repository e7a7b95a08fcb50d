import type { Evidence, Snapshot } from '../schema/index.ts';

/** One step of a case as it went: what was added to the evidence, and all evidence up to then. */
export interface ReplayStep {
  readonly snapshot: number;
  readonly kind: 'state' | 'seen' | 'look';
  /** Index of the look in its snapshot, for `look`. */
  readonly look: number | null;
  readonly evidence: Evidence;
}

/**
 * The evidence of a case step by step, in the order in which it is written down: of each snapshot what was done and whether the
 * machine ran, then displays and reports together, then look after look.
 */
export function replayCase(evidence: Evidence): readonly ReplayStep[] {
  const steps: ReplayStep[] = [];
  evidence.snapshots.forEach((snapshot, index) => {
    const before = evidence.snapshots.slice(0, index);
    const add = (kind: ReplayStep['kind'], look: number | null, part: Snapshot) =>
      steps.push({ snapshot: index, kind, look, evidence: { ...evidence, snapshots: [...before, part] } });
    const { displays = [], reports = [], looks = [], ...state } = snapshot;
    if (index === 0 || (snapshot.interventions ?? []).length > 0 || snapshot.restarted === true || snapshot.halted !== undefined) {
      add('state', null, state);
    }
    const seen: Snapshot = { ...state, ...(displays.length > 0 ? { displays } : {}), ...(reports.length > 0 ? { reports } : {}) };
    if (displays.length + reports.length > 0) {
      add('seen', null, seen);
    }
    looks.forEach((_, at) => {
      add('look', at, { ...seen, looks: looks.slice(0, at + 1) });
    });
  });
  return steps;
}
