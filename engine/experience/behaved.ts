import type { UnitId } from '../base/index.ts';
import { checkCabinet, documentedBehaviour, unknownParameters } from '../cabinet/index.ts';
import {
  currentState,
  type Diagnosis,
  displayAgreement,
  fittingPrediction,
  type HypothesisFault,
  reportAgreement,
} from '../diagnosis/index.ts';
import { mendedBy } from '../plan/index.ts';
import { type BehaviourParameter, behaviourParameters, behaviourValues, type CabinetContent, type Evidence } from '../schema/index.ts';
import { predictLook } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { BehaviourClue, Difference, Equipment } from './types.ts';

/*
 * Where equipment behaved otherwise than documented: what was seen that no confirmed cause predicts, and which one behaviour of which
 * equipment would explain more of it. A misreading or a wrong legend may explain it as well; a staged break settles it.
 */

/** So many of the likeliest causes are tried; where equipment behaves otherwise, the likeliest one may look worse than it is. */
const mostCauses = 12;

/** The hypotheses whose faults were all mended: what a proved case confirms. */
export function mendedCauses(cabinet: Cabinet, evidence: Evidence, { hypotheses }: Diagnosis): readonly (readonly HypothesisFault[])[] {
  const isMended = mendedBy(cabinet, evidence);
  return hypotheses
    .map(({ faults }) => faults)
    .filter((faults) => faults.length > 0 && faults.every(({ fault }) => isMended(fault)))
    .slice(0, mostCauses);
}

/** What was seen that the best of these causes mispredicts; empty where one predicts everything. */
export function findDifferences(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  causes: readonly (readonly HypothesisFault[])[],
): readonly Difference[] {
  let fewest: readonly Difference[] | null = null;
  for (const faults of causes) {
    const differences = mispredicted(cabinet, evidence, diagnosis, faults);
    if (differences.length === 0) return [];
    if (fewest === null || differences.length < fewest.length) fewest = differences;
  }
  return fewest ?? [];
}

function mispredicted(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  cause: readonly HypothesisFault[],
): readonly Difference[] {
  return evidence.snapshots.flatMap(({ displays = [], reports = [], looks = [] }, snapshot): readonly Difference[] => {
    const until = { ...evidence, snapshots: evidence.snapshots.slice(0, snapshot + 1) };
    const prediction = fittingPrediction(cabinet, until, diagnosis, cause);
    if (prediction === null) return [];
    const { simulation, faults, assumedOnset } = prediction;
    const state = currentState(until);
    const input = { cabinet, faults, ...state, onset: assumedOnset ?? state.onset };
    return [
      ...displays.flatMap(({ unit: id, meanings }) => {
        const unit = id as UnitId; // what was seen names units of the cabinet
        const predicted = simulation.displays.get(unit)?.meaning;
        if (predicted === undefined || displayAgreement(meanings, predicted) !== 'against') return [];
        return [{ observation: { kind: 'display' as const, snapshot, unit }, seen: meanings, predicted }];
      }),
      ...[...simulation.reports.values()].flatMap(({ chain, speaks, gap }) => {
        const seen = reports.find((report) => report.chain === chain)?.gaps;
        if (!speaks || reportAgreement(seen, gap) !== 'against') return [];
        return [{ observation: { kind: 'report' as const, snapshot, chain }, seen: seen ?? [], predicted: gap }];
      }),
      ...looks.flatMap((look, index) => {
        const predicted = predictLook(look, input);
        const seen: readonly string[] = look.outcomes;
        if (predicted === null || seen.includes(predicted)) return [];
        return [{ observation: { kind: 'look' as const, snapshot, index }, seen, predicted }];
      }),
    ];
  });
}

/** By equipment, every single change of its behaviour with which the confirmed cause predicts most of what was seen otherwise. */
export function findClues(
  cabinet: Cabinet,
  evidence: Evidence,
  diagnosis: Diagnosis,
  causes: readonly (readonly HypothesisFault[])[],
  differences: readonly Difference[],
): readonly BehaviourClue[] {
  return [...alikeUnits(cabinet).values()].flatMap((units) => {
    const [first] = units;
    const equipment = first === undefined ? null : equipmentOf(cabinet, first);
    if (first === undefined || equipment === null) return [];
    const documented = documentedBehaviour(cabinet, first);
    const unknown = unknownParameters(cabinet, first);
    let fewest = differences.length;
    let clues: BehaviourClue[] = [];
    for (const parameter of behaviourParameters.filter((one) => !unknown.includes(one))) {
      for (const instead of behaviourValues[parameter].filter((value) => value !== documented[parameter])) {
        const changed = checkCabinet(withBehaviour(cabinet.content, units, parameter, instead)).cabinet;
        if (changed === null) continue;
        const left = findDifferences(changed, evidence, diagnosis, causes).length;
        if (left < fewest) clues = [];
        fewest = Math.min(fewest, left);
        if (left === fewest && left < differences.length) clues.push({ equipment, parameter, assumed: documented[parameter], instead });
      }
    }
    return clues;
  });
}

/** Which equipment a unit is; null where neither a model text nor a type says. */
export function equipmentOf({ units, types }: Pick<Cabinet, 'units' | 'types'>, unit: UnitId): Equipment | null {
  const record = units.get(unit);
  const type = [...types.values()].find(({ id }) => id === record?.type);
  const model = record?.model?.trim() || type?.name;
  return record === undefined || model === undefined ? null : { kind: record.kind, model, revision: record.revision?.trim() ?? '' };
}

/** One text for alike equipment. */
export function equipmentKey({ kind, model, revision }: Equipment): string {
  return JSON.stringify([kind, model, revision]);
}

/** The units of the chains by equipment; units of one equipment but of several types are told apart. */
function alikeUnits(cabinet: Cabinet): ReadonlyMap<string, readonly UnitId[]> {
  const groups = new Map<string, UnitId[]>();
  for (const unit of cabinet.chains.flatMap(({ units }) => units)) {
    const equipment = equipmentOf(cabinet, unit);
    if (equipment === null) continue;
    const key = `${equipmentKey(equipment)} ${cabinet.units.get(unit)?.type ?? ''}`;
    groups.set(key, [...(groups.get(key) ?? []), unit]);
  }
  return groups;
}

/** The cabinet with these units behaving otherwise in one way: they get a type of their own. */
function withBehaviour(content: CabinetContent, units: readonly UnitId[], parameter: BehaviourParameter, value: string): CabinetContent {
  const types = content.types ?? [];
  const old = types.find(({ id }) => id === content.units?.find((unit) => unit.id === units[0])?.type);
  let id = 'otherwise';
  while (types.some((type) => type.id === id)) id += '-';
  return {
    ...content,
    types: [...types, { ...(old ?? { name: id }), id, behaviour: { ...old?.behaviour, [parameter]: value } }],
    units: (content.units ?? []).map((unit) => (units.some((one) => one === unit.id) ? { ...unit, type: id } : unit)),
  };
}
