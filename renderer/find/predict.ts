import type { Diagnosis, HypothesisFault } from '../../engine/diagnosis/index.ts';
import type { DisplayMeaning, Evidence, Fault, Intervention, Onset, Snapshot } from '../../engine/schema/index.ts';
import { type Simulation, simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

/** Does what was seen agree with what is predicted? `open`: nobody has looked. */
export type Agreement = 'fits' | 'against' | 'open';

/** What a candidate predicts of the snapshot that is being filled in. */
export interface Prediction {
  readonly simulation: Simulation;
  /** The onset it was worked out for, where that is not known: the one that fits better. */
  readonly assumedOnset: Onset | null;
  readonly fitting: number;
  readonly against: number;
}

type Moment = Pick<Parameters<typeof simulate>[0], 'onset' | 'halted' | 'beforeTrip' | 'sinceTrip'>;

/** Agreement of one display. A set that contains "other" fits whatever is lit: nobody can predict a code that is not ours. */
export function displayAgreement(seen: readonly DisplayMeaning[], predicted: DisplayMeaning): Agreement {
  if (seen.length === 0) return 'open';
  return seen.includes(predicted) || (seen.includes('other') && predicted !== 'dark') ? 'fits' : 'against';
}

export function reportAgreement(seen: readonly (number | 'none')[] | undefined, predicted: number | 'none'): Agreement {
  if (!seen) return 'open';
  return seen.includes(predicted) ? 'fits' : 'against';
}

/** The moments at which the last snapshot may have been taken: one, or two where the onset is not known. */
function momentsOf(evidence: Evidence): readonly { readonly moment: Moment; readonly assumed: Onset | null }[] {
  const beforeTrip: Intervention[] = [];
  let sinceTrip: Intervention[] = [];
  let trip: Snapshot = {};
  for (const snapshot of evidence.snapshots) {
    if (snapshot.restarted) {
      beforeTrip.push(...sinceTrip, ...(snapshot.interventions ?? []));
      sinceTrip = [];
      trip = snapshot;
    } else {
      sinceTrip = [...sinceTrip, ...(snapshot.interventions ?? [])];
      trip = { ...trip, ...snapshot };
    }
  }
  const rest = { beforeTrip, sinceTrip, halted: trip.halted ?? true };
  const onset = trip.restarted ? 'at-power-up' : (trip.onset ?? 'unknown');
  if (onset !== 'unknown') return [{ moment: { ...rest, onset }, assumed: null }];
  const either: readonly Onset[] = ['while-running', 'at-power-up'];
  return either.map((one) => ({ moment: { ...rest, onset: one }, assumed: one }));
}

/** An intermittent fault may be there now or not; both are tried. */
function presencesOf(faults: readonly HypothesisFault[]): readonly (readonly Fault[])[] {
  return faults.reduce<readonly (readonly Fault[])[]>(
    (sets, { fault }) =>
      sets.flatMap((set) =>
        fault.presence === 'intermittent'
          ? [
              [...set, fault],
              [...set, { ...fault, absentNow: true }],
            ]
          : [[...set, fault]],
      ),
    [[]],
  );
}

/**
 * What a hypothesis predicts. Where its onset is not known, or an intermittent fault may be gone, the reading that agrees best with
 * what was seen is shown, the first one where several agree alike.
 */
export function predict(cabinet: Cabinet, evidence: Evidence, faults: readonly HypothesisFault[]): Prediction | null {
  const seen = evidence.snapshots[evidence.snapshots.length - 1] ?? {};
  let best: Prediction | null = null;
  for (const { moment, assumed } of momentsOf(evidence)) {
    for (const set of presencesOf(faults)) {
      const simulation = simulate({ cabinet, faults: set, ...moment });
      const { fitting, against } = countAgreement(seen, simulation);
      if (!best || against < best.against) best = { simulation, assumedOnset: assumed, fitting, against };
    }
  }
  return best;
}

function countAgreement(seen: Snapshot, simulation: Simulation) {
  const agreements: Agreement[] = [
    // Ids in a file are plain texts; the maps are keyed by the same texts, branded.
    ...(seen.displays ?? []).map(({ unit, meanings }) => {
      const predicted = simulation.displays.get(unit as never);
      return predicted ? displayAgreement(meanings, predicted.meaning) : 'open';
    }),
    ...(seen.reports ?? []).map(({ chain, gaps }) => {
      const predicted = simulation.reports.get(chain as never);
      return predicted ? reportAgreement(gaps, predicted.gap) : 'open';
    }),
  ];
  return {
    fitting: agreements.filter((one) => one === 'fits').length,
    against: agreements.filter((one) => one === 'against').length,
  };
}

/** Whether the evidence leaves anything to rank; before that a list of suspects would only repeat the rates. */
export function isRankedByEvidence(diagnosis: Diagnosis): boolean {
  return !diagnosis.notes.some(({ code }) => code === 'nothing-observed');
}
