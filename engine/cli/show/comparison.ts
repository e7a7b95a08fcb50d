import type { ChainId, UnitId } from '../../base/index.ts';
import { documentedBehaviour } from '../../cabinet/index.ts';
import type { Diagnosis, HypothesisFault } from '../../diagnosis/index.ts';
import {
  headings,
  meaningWords,
  type Names,
  startSentence,
  statements,
  wordDisplayReason,
  wordGap,
  wordGaps,
  wordHypothesis,
  wordMeanings,
  wordReportReason,
} from '../../messages/index.ts';
import type { Behaviour, Evidence, Fault, Onset, Snapshot } from '../../schema/index.ts';
import { type Simulation, type SimulationInput, simulate } from '../../simulation/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { unitsInOrder } from '../answer/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** What a comparison needs to know. */
interface Compared {
  readonly cabinet: Cabinet;
  readonly names: Names;
  readonly evidence: Evidence;
  readonly diagnosis: Diagnosis;
  readonly columns: number;
}

/** What was seen last, beside what the most probable explanation predicts, with its reasons. Empty when there is no explanation. */
export function formatComparison({ cabinet, names, evidence, diagnosis, columns }: Compared): string {
  const best = diagnosis.hypotheses[0];
  const snapshot = evidence.snapshots[evidence.snapshots.length - 1];
  if (!best || !snapshot) return '';
  const moment = lastMoment(evidence);
  const behaviourOf = likeliestBehaviour(cabinet, diagnosis);
  const patterns = presencePatterns(best.faults, moment.isFirstTrip).map((faults) => {
    const simulation = simulate({ cabinet, faults, behaviourOf, ...moment.input });
    return { faults, simulation, against: countAgainst(snapshot, simulation) };
  });
  const [fitting] = [...patterns].sort((a, b) => a.against - b.against);
  if (!fitting) return '';
  const { simulation, faults } = fitting;
  const isGone = faults.length < best.faults.length || faults.some(({ absentNow }) => absentNow);
  const table = formatTable(
    [
      { head: headings.unit },
      { head: headings.seen, grow: true },
      { head: headings.predicted, grow: true },
      { head: headings.fits },
      { head: headings.why, grow: true },
    ],
    [...displayRows(cabinet, names, snapshot, simulation), ...reportRows(cabinet, names, snapshot, simulation)],
    columns,
  );
  const head =
    statements.seenAgainst(wordHypothesis(names, best.faults)) +
    (isGone ? `. ${statements.takenAsGone}` : '') +
    (diagnosis.behaviours.length > 0 ? `. ${statements.takenAsLikely}` : '');
  return `\n${paragraph(startSentence(head), columns)}${table}`;
}

function displayRows(cabinet: Cabinet, names: Names, snapshot: Snapshot, simulation: Simulation): readonly (readonly string[])[] {
  const seen = new Map((snapshot.displays ?? []).map(({ unit, meanings, code }) => [unit, { meanings, code }]));
  return unitsInOrder(cabinet).flatMap((unit) => {
    const predicted = simulation.displays.get(unit);
    if (!predicted) return [];
    const read = seen.get(unit);
    const what = read === undefined ? statements.notLookedAt : wordMeanings(read.meanings) + (read.code ? ` (${read.code})` : '');
    const fits = wordFit(read?.meanings, predicted.meaning);
    return [[names.unit(unit), what, meaningWords[predicted.meaning].label, fits, wordDisplayReason(names, predicted)]];
  });
}

function reportRows(cabinet: Cabinet, names: Names, snapshot: Snapshot, simulation: Simulation): readonly (readonly string[])[] {
  const seen = new Map((snapshot.reports ?? []).map(({ chain, gaps }) => [chain, gaps]));
  return cabinet.chains.flatMap(({ id }) => {
    const predicted = simulation.reports.get(id);
    if (!predicted?.speaks) return [];
    const gaps = seen.get(id);
    const what = gaps === undefined ? statements.notLookedAt : wordGaps(names, id, gaps);
    return [[names.chain(id), what, wordGap(names, id, predicted.gap), wordFit(gaps, predicted.gap), wordReportReason(names, predicted)]];
  });
}

function wordFit<T>(seen: readonly T[] | undefined, predicted: T): string {
  return seen === undefined ? '' : seen.includes(predicted) ? statements.fits : statements.against;
}

/** How many observations of a snapshot a simulation mispredicts. */
function countAgainst(snapshot: Snapshot, { displays, reports }: Simulation): number {
  // Ids of observations are those of the cabinet; the maps are keyed by the branded ones.
  const meaning = (unit: string) => displays.get(unit as UnitId)?.meaning;
  const gap = (chain: string) => reports.get(chain as ChainId)?.gap;
  const wrongDisplays = (snapshot.displays ?? []).filter(({ unit, meanings }) => !meanings.some((one) => one === meaning(unit)));
  const wrongReports = (snapshot.reports ?? []).filter(({ chain, gaps }) => !gaps.some((one) => one === gap(chain)));
  return wrongDisplays.length + wrongReports.length;
}

/**
 * The ways in which the faults of a hypothesis may be there in the last snapshot. An intermittent one may be gone when the displays
 * are read, and, if this trip is not the first one, may have been gone at the trip as well. Everything present comes first.
 */
function presencePatterns(faults: readonly HypothesisFault[], isFirstTrip: boolean): readonly (readonly Fault[])[] {
  return faults.reduce<readonly (readonly Fault[])[]>(
    (patterns, { fault }) => {
      const ways: readonly (readonly Fault[])[] =
        fault.presence === 'steady' ? [[fault]] : [[fault], [{ ...fault, absentNow: true }], ...(isFirstTrip ? [] : [[]])];
      return ways.flatMap((way) => patterns.map((pattern) => [...pattern, ...way]));
    },
    [[]],
  );
}

/** The documented behaviour of a unit, with the likeliest value of every parameter that is not known. */
function likeliestBehaviour(cabinet: Cabinet, { behaviours }: Diagnosis): (unit: UnitId) => Behaviour {
  return (unit) => {
    const type = cabinet.units.get(unit)?.type;
    const beliefs = behaviours.filter((belief) => belief.type === type);
    const values = beliefs.map(({ parameter, values: [first] }) => [parameter, first?.value] as const);
    // Each value is one of its own parameter: the diagnosis lists them so, likeliest first.
    return { ...documentedBehaviour(cabinet, unit), ...(Object.fromEntries(values) as Partial<Behaviour>) };
  };
}

/**
 * How the last snapshot is simulated: acts up to the last restart were done before its trip, acts since then after it. In a first
 * snapshot without a restart, acts were done since the trip.
 */
function lastMoment(evidence: Evidence): { readonly isFirstTrip: boolean; readonly input: Omit<SimulationInput, 'cabinet' | 'faults'> } {
  const { snapshots } = evidence;
  const at = snapshots.reduce(
    (last, snapshot, index) => (snapshot.restarted === true || wasRunning(snapshots[index - 1]) ? index : last),
    0,
  );
  const first = snapshots[at];
  const own = first?.interventions ?? [];
  const before = snapshots.slice(0, at).flatMap(({ interventions = [] }) => interventions);
  const since = snapshots.slice(at + 1).flatMap(({ interventions = [] }) => interventions);
  const tripAfterActs = at > 0 || first?.restarted === true;
  const usual: Onset = first?.restarted === true ? 'at-power-up' : 'while-running';
  const input = {
    onset: first?.onset === undefined || first.onset === 'unknown' ? usual : first.onset,
    halted: snapshots[snapshots.length - 1]?.halted !== false,
    beforeTrip: tripAfterActs ? [...before, ...own] : before,
    sinceTrip: tripAfterActs ? since : [...own, ...since],
  };
  return { isFirstTrip: at === 0, input };
}

function wasRunning(snapshot: Evidence['snapshots'][number] | undefined): boolean {
  return snapshot?.halted === false;
}
