import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import { fittingPrediction, type Prediction } from '../../engine/diagnosis/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { Answer, AppState, CaseRecord, ChosenCandidate } from '../state/appState.ts';
import { hasObservations, runsSinceHandled } from '../state/evidence.ts';
import { lastAnswer } from '../state/lastDiagnosis.ts';
import { type Candidate, findCandidate, listCandidates, shareBySpot } from './candidates.ts';

/** One row of the grid, one entry of the list of suspects. */
export interface Row {
  readonly candidate: Candidate;
  /** Null where the cabinet cannot be simulated. */
  readonly prediction: Prediction | null;
  /** Letter of its ambiguity group, where that has more than one member in the list. */
  readonly letter: string | null;
}

/** Everything Find shows of the answer. Derived; worked out once for each change. */
export interface FindModel {
  readonly diagnosis: Diagnosis | null;
  /** What the answer is held against: the case as it was answered, or the present one when that answer is no longer recent. */
  readonly record: CaseRecord;
  /** The answer belongs to an older state of the document, and the next takes its time. */
  readonly stale: boolean;
  /** Most probable first, groups together; empty while nothing was seen. */
  readonly rows: readonly Row[];
  /** How many candidates there are besides. */
  readonly more: number;
  /** The one laid over the cabinet. */
  readonly chosen: Row | null;
  readonly shares: ReadonlyMap<string, number>;
}

/** Rows listed at first, and when all are asked for; a grid of more could not be read. */
export const rowLimits = { few: 6, all: 40 } as const;

const nothing: Omit<FindModel, 'record'> = { diagnosis: null, stale: false, rows: [], more: 0, chosen: null, shares: new Map() };

interface Inputs {
  readonly cabinet: Cabinet | null;
  readonly record: CaseRecord;
  readonly diagnosis: Diagnosis | null;
  readonly stale: boolean;
  readonly chosen: ChosenCandidate;
  readonly all: boolean;
  /** The machine runs after something was done to it. */
  readonly mended: boolean;
}

function computeFindModel({ cabinet, record, diagnosis, stale, chosen, all, mended }: Inputs): FindModel {
  if (!cabinet || !diagnosis || !hasObservations(record)) return { ...nothing, record, diagnosis };
  const candidates = listCandidates(diagnosis);
  const wanted = chosen.by === 'user' ? findCandidate(candidates, chosen.key) : undefined;
  const limit = all ? rowLimits.all : rowLimits.few;
  // A chosen candidate is always listed, wherever it ranks.
  const listed = candidates.filter((candidate, index) => index < limit || candidate === wanted);
  const letters = letterGroups(listed);
  const rows = listed.map((candidate) => ({
    candidate,
    prediction: fittingPrediction(cabinet, record.evidence, diagnosis, candidate.best.faults),
    letter: letters.get(candidate.group) ?? null,
  }));
  // A machine that was mended must show what a whole one shows.
  const first = mended ? wholeMachine(cabinet, record, diagnosis) : rows[0];
  const laid = chosen.by === 'nobody' ? null : (rows.find((row) => row.candidate === wanted) ?? first ?? null);
  return {
    diagnosis,
    record,
    stale,
    rows,
    more: candidates.length - rows.length,
    chosen: laid,
    shares: shareBySpot(diagnosis),
  };
}

function wholeMachine(cabinet: Cabinet, record: CaseRecord, diagnosis: Diagnosis): Row {
  const best = { faults: [], probability: 1, priorOdds: 1, likelihood: 1, group: -1 };
  return {
    candidate: { key: '', spots: [], group: -1, probability: 1, best, parts: [] },
    prediction: fittingPrediction(cabinet, record.evidence, diagnosis, []),
    letter: null,
  };
}

function letterGroups(candidates: readonly Candidate[]): ReadonlyMap<number, string> {
  const sizes = new Map<number, number>();
  for (const { group } of candidates) sizes.set(group, (sizes.get(group) ?? 0) + 1);
  const shared = [...sizes].filter(([, size]) => size > 1).map(([group]) => group);
  return new Map(shared.map((group, index) => [group, String.fromCharCode(65 + (index % 26))]));
}

let last: { readonly inputs: Inputs; readonly model: FindModel } | null = null;

/** Holds now, or held a moment ago and is about to be replaced; then all that is drawn of it stays as it is until the next is there. */
function isRecent({ diagnosis, cabinet }: AppState, answer: Answer | null): boolean {
  if (diagnosis.state === 'answered') return true;
  return diagnosis.state === 'working' && !diagnosis.late && answer?.cabinet === cabinet && hasObservations(answer.caseRecord);
}

/** The model of a state; the same object as long as nothing it depends on has changed. */
export function selectFindModel(state: AppState): FindModel {
  const answer = lastAnswer(state.diagnosis);
  const recent = isRecent(state, answer);
  const record = answer && recent ? answer.caseRecord : state.caseRecord;
  const inputs: Inputs = {
    cabinet: state.checked.cabinet,
    record,
    diagnosis: answer?.diagnosis ?? null,
    stale: !recent,
    chosen: state.chosen,
    all: state.allCandidates,
    mended: runsSinceHandled(record),
  };
  const keys = Object.keys(inputs) as (keyof Inputs)[]; // Object.keys is typed as string[]; these are the keys of the literal above
  if (last && keys.every((key) => last?.inputs[key] === inputs[key])) return last.model;
  last = { inputs, model: computeFindModel(inputs) };
  return last.model;
}
