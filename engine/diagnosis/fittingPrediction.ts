import type { ChainId, UnitId } from '../base/index.ts';
import { documentedBehaviour } from '../cabinet/index.ts';
import type { Behaviour, Evidence, Fault, Onset, Snapshot } from '../schema/index.ts';
import { type Simulation, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type Agreement, displayAgreement, reportAgreement } from './agreement.ts';
import { currentState } from './currentState.ts';
import { tripStarts } from './plan.ts';
import type { Diagnosis, HypothesisFault } from './types.ts';

/** What a hypothesis predicts of the last snapshot. */
export interface Prediction {
  readonly simulation: Simulation;
  /** The faults as they are taken to be there: one that comes and goes may be gone now, or left out. */
  readonly faults: readonly Fault[];
  /** The onset it was worked out for, where that is not known: the one that fits better. */
  readonly assumedOnset: Onset | null;
  /** How many of the observations it agrees with, and how many not. */
  readonly fitting: number;
  readonly against: number;
}

/** Whether the last trip is also the first one: at that one every fault was present. */
function isFirstTrip(evidence: Evidence): boolean {
  return tripStarts(evidence).filter(Boolean).length <= 1;
}

/** The onsets that the last trip may have had: one, or both where that is not known. */
function onsetsOf(evidence: Evidence, usual: Onset): readonly Onset[] {
  const known = evidence.snapshots.some(({ onset, restarted }) => restarted === true || (onset !== undefined && onset !== 'unknown'));
  return known ? [usual] : ['while-running', 'at-power-up'];
}

/** The ways in which faults may be there: an intermittent one may be gone now, and at a later trip may have been gone as well. */
function presencePatterns(faults: readonly HypothesisFault[], isFirst: boolean): readonly (readonly Fault[])[] {
  return faults.reduce<readonly (readonly Fault[])[]>(
    (patterns, { fault }) => {
      const present: readonly Fault[] = [fault];
      const gone: readonly Fault[] = [{ ...fault, absentNow: true }];
      const ways = fault.presence === 'steady' ? [present] : [present, gone, ...(isFirst ? [] : [[]])];
      return ways.flatMap((way) => patterns.map((pattern) => [...pattern, ...way]));
    },
    [[]],
  );
}

/** The documented behaviour of a unit, with the likeliest value of every parameter that is not known. */
function likeliestBehaviour(cabinet: Cabinet, { behaviours }: Diagnosis): (unit: UnitId) => Behaviour {
  return (unit) => {
    const type = cabinet.units.get(unit)?.type;
    const likeliest = behaviours
      .filter((belief) => belief.type === type)
      .map(({ parameter, values: [first] }) => [parameter, first?.value]);
    // Each value is one of its own parameter: the diagnosis lists them so, likeliest first.
    return { ...documentedBehaviour(cabinet, unit), ...(Object.fromEntries(likeliest) as Partial<Behaviour>) };
  };
}

/**
 * What a hypothesis predicts of the last snapshot. Where its onset is not known, or an intermittent fault may be gone, the reading
 * that agrees best with what was seen is taken; where several agree alike, the first: running, and everything present. Null where
 * there is no snapshot.
 */
export function fittingPrediction(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  faults: readonly HypothesisFault[],
): Prediction | null {
  const seen = evidence.snapshots[evidence.snapshots.length - 1];
  if (!seen) return null;
  const { onset: usual, ...input } = currentState(evidence);
  const onsets = onsetsOf(evidence, usual);
  const behaviourOf = likeliestBehaviour(cabinet, diagnosis);
  let best: Prediction | null = null;
  for (const onset of onsets) {
    for (const pattern of presencePatterns(faults, isFirstTrip(evidence))) {
      const simulation = simulate({ cabinet, faults: pattern, behaviourOf, onset, ...input });
      const { fitting, against } = countAgreement(seen, simulation);
      if (!best || against < best.against)
        best = { simulation, faults: pattern, assumedOnset: onsets.length > 1 ? onset : null, fitting, against };
    }
  }
  return best;
}

function countAgreement(seen: Snapshot, { displays, reports }: Simulation) {
  // Ids of observations are those of the cabinet; the maps are keyed by the branded ones.
  const agreements: readonly Agreement[] = [
    ...(seen.displays ?? []).map(({ unit, meanings }) => {
      const predicted = displays.get(unit as UnitId);
      return predicted ? displayAgreement(meanings, predicted.meaning) : 'open';
    }),
    ...(seen.reports ?? []).map(({ chain, gaps }) => {
      const predicted = reports.get(chain as ChainId);
      return predicted?.speaks ? reportAgreement(gaps, predicted.gap) : 'open';
    }),
  ];
  const count = (wanted: Agreement) => agreements.filter((one) => one === wanted).length;
  return { fitting: count('fits'), against: count('against') };
}
