import type { Contradiction, Diagnosis, HypothesisFault, ObservationRef } from '../../diagnosis/index.ts';
import {
  type Names,
  wordBehaviourBelief,
  wordContradiction,
  wordFault,
  wordHypothesis,
  wordItem,
  wordMode,
  wordNote,
  wordObservation,
  wordUnvisitedShare,
} from '../../messages/index.ts';
import type { Evidence, Fault, ItemKind } from '../../schema/index.ts';

/** A fault of a hypothesis: the key of its item, the fault, and its words. */
export interface JsonFault {
  readonly item: string;
  readonly fault: Fault;
  readonly label: string;
}

/** A suspect item with all modes, most probable first. */
export interface JsonSuspect {
  readonly item: string;
  readonly kind: ItemKind;
  readonly reference: Readonly<Record<string, string>>;
  readonly label: string;
  readonly probability: number;
  readonly modes: readonly { readonly mode: string; readonly label: string; readonly probability: number; readonly intermittent: number }[];
  readonly groups: readonly number[];
}

/** The answer of a diagnosis, as the JSON interface gives it. */
export interface JsonDiagnosis {
  readonly suspects: readonly JsonSuspect[];
  readonly hypotheses: readonly {
    readonly faults: readonly JsonFault[];
    readonly label: string;
    readonly probability: number;
    readonly priorOdds: number;
    readonly likelihood: number;
    readonly group: number;
  }[];
  readonly groups: readonly {
    readonly id: number;
    readonly probability: number;
    readonly hypotheses: number;
    readonly items: readonly { readonly item: string; readonly label: string; readonly probability: number }[];
  }[];
  readonly nothingBroken: number;
  readonly unvisitedShare: number;
  readonly unvisitedStatement: string | null;
  readonly hypothesesVisited: number;
  readonly impossible: boolean;
  readonly contradiction: JsonContradiction | null;
  readonly behaviours: readonly (Diagnosis['behaviours'][number] & { readonly text: string })[];
  readonly notes: readonly (Diagnosis['notes'][number] & { readonly text: string })[];
}

interface JsonContradiction {
  readonly mispredicted: readonly JsonObservation[];
  readonly withoutWhich: readonly { readonly observation: JsonObservation; readonly instead: readonly JsonFault[] }[];
  readonly text: readonly string[];
}
type JsonObservation = ObservationRef & { readonly label: string };

/** A diagnosis with its words. `most` cuts the lists of suspects, hypotheses and groups. */
export function jsonDiagnosis(names: Names, evidence: Evidence, diagnosis: Diagnosis, most = Number.POSITIVE_INFINITY): JsonDiagnosis {
  const labels = new Map(diagnosis.items.map(({ item }) => [item.key, wordItem(names, item.fault)]));
  return {
    suspects: diagnosis.items.slice(0, most).map(({ item, probability, modes }) => ({
      item: item.key,
      kind: item.kind,
      reference: referenceOf(item.fault),
      label: wordItem(names, item.fault),
      probability,
      modes: modes.map((mode) => ({ ...mode, label: wordMode(item.kind, mode.mode) })),
      groups: diagnosis.groups.filter(({ items }) => items.some((one) => one.item === item.key)).map(({ id }) => id),
    })),
    hypotheses: diagnosis.hypotheses.slice(0, most).map(({ faults, probability, priorOdds, likelihood, group }) => ({
      faults: jsonFaults(names, faults),
      label: wordHypothesis(names, faults),
      probability,
      priorOdds,
      likelihood,
      group,
    })),
    groups: diagnosis.groups.slice(0, most).map(({ id, probability, hypotheses, items }) => ({
      id,
      probability,
      hypotheses,
      items: items.map((one) => ({ ...one, label: labels.get(one.item) ?? one.item })),
    })),
    nothingBroken: diagnosis.nothingBroken,
    unvisitedShare: diagnosis.unvisitedShare,
    unvisitedStatement: wordUnvisitedShare(diagnosis.unvisitedShare),
    hypothesesVisited: diagnosis.hypothesesVisited,
    impossible: diagnosis.impossible,
    contradiction: diagnosis.contradiction && jsonContradiction(names, evidence, diagnosis.contradiction),
    behaviours: diagnosis.behaviours.map((belief) => ({ ...belief, text: wordBehaviourBelief(names, belief) })),
    notes: diagnosis.notes.map((note) => ({ ...note, text: wordNote(names, note) })),
  };
}

function jsonContradiction(names: Names, evidence: Evidence, contradiction: Contradiction): JsonContradiction {
  const observation = (ref: ObservationRef): JsonObservation => ({ ...ref, label: wordObservation(names, evidence, ref) });
  return {
    mispredicted: contradiction.mispredicted.map(observation),
    withoutWhich: contradiction.withoutWhich.map((one) => ({
      observation: observation(one.observation),
      instead: jsonFaults(names, one.instead),
    })),
    text: wordContradiction(names, evidence, contradiction),
  };
}

function jsonFaults(names: Names, faults: readonly HypothesisFault[]): readonly JsonFault[] {
  return faults.map(({ item, fault }) => ({ item, fault, label: wordFault(names, fault) }));
}

/** The fields of a fault that say where it is, without mode and presence. */
function referenceOf(fault: Fault): Readonly<Record<string, string>> {
  const fields = ['link', 'end', 'unit', 'chain', 'lead', 'feedback'];
  return Object.fromEntries(Object.entries(fault).filter((entry): entry is [string, string] => fields.includes(entry[0])));
}
