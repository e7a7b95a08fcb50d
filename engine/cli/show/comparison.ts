import type { Diagnosis } from '../../diagnosis/index.ts';
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
import type { Evidence } from '../../schema/index.ts';
import { type SimulationInput, simulate } from '../../simulation/index.ts';
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
  const simulation = simulate({ cabinet, faults: best.faults.map(({ fault }) => fault), ...lastMoment(evidence) });
  const seen = new Map((snapshot.displays ?? []).map(({ unit, meanings, code }) => [unit, { meanings, code }]));
  const displays = unitsInOrder(cabinet).flatMap((unit) => {
    const predicted = simulation.displays.get(unit);
    if (!predicted) return [];
    const read = seen.get(unit);
    const fits = read === undefined ? '' : read.meanings.includes(predicted.meaning) ? statements.fits : statements.against;
    const what = read === undefined ? statements.notLookedAt : wordMeanings(read.meanings) + (read.code ? ` (${read.code})` : '');
    return [[names.unit(unit), what, meaningWords[predicted.meaning].label, fits, wordDisplayReason(names, predicted)]];
  });
  const readReports = new Map((snapshot.reports ?? []).map(({ chain, gaps }) => [chain, gaps]));
  const reports = cabinet.chains.flatMap(({ id }) => {
    const predicted = simulation.reports.get(id);
    if (!predicted?.speaks) return [];
    const gaps = readReports.get(id);
    const fits = gaps === undefined ? '' : gaps.includes(predicted.gap) ? statements.fits : statements.against;
    const what = gaps === undefined ? statements.notLookedAt : wordGaps(names, id, gaps);
    return [[names.chain(id), what, wordGap(names, id, predicted.gap), fits, wordReportReason(names, predicted)]];
  });
  const table = formatTable(
    [
      { head: headings.unit },
      { head: headings.seen, grow: true },
      { head: headings.predicted, grow: true },
      { head: headings.fits },
      { head: headings.why, grow: true },
    ],
    [...displays, ...reports],
    columns,
  );
  return `\n${paragraph(startSentence(statements.seenAgainst(wordHypothesis(names, best.faults))), columns)}${table}`;
}

/**
 * How the last snapshot is simulated: acts up to the last restart were done before its trip, acts since then after it. In a first
 * snapshot without a restart, acts were done since the trip.
 */
function lastMoment(evidence: Evidence): Omit<SimulationInput, 'cabinet' | 'faults'> {
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
  const usual = first?.restarted === true ? 'at-power-up' : 'while-running';
  return {
    onset: first?.onset === undefined || first.onset === 'unknown' ? usual : first.onset,
    halted: snapshots[snapshots.length - 1]?.halted !== false,
    beforeTrip: tripAfterActs ? [...before, ...own] : before,
    sinceTrip: tripAfterActs ? since : [...own, ...since],
  };
}

function wasRunning(snapshot: Evidence['snapshots'][number] | undefined): boolean {
  return snapshot?.halted === false;
}
