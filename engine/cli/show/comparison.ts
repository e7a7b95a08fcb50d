import { type Agreement, type Diagnosis, displayAgreement, fittingPrediction, reportAgreement } from '../../diagnosis/index.ts';
import {
  headings,
  meaningWords,
  type Names,
  onsetWords,
  startSentence,
  statements,
  wordDisplayReason,
  wordGap,
  wordGaps,
  wordHypothesis,
  wordMeanings,
  wordReportReason,
} from '../../messages/index.ts';
import type { Evidence, Snapshot } from '../../schema/index.ts';
import type { Simulation } from '../../simulation/index.ts';
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
  const prediction = best && fittingPrediction(cabinet, evidence, diagnosis, best.faults);
  if (!best || !snapshot || !prediction) return '';
  const { simulation, faults, assumedOnset } = prediction;
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
    (assumedOnset ? `. ${statements.takenOnset(onsetWords[assumedOnset].label)}` : '') +
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
    const fits = agreementSigns[displayAgreement(read?.meanings ?? [], predicted.meaning)];
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
    return [
      [
        names.chain(id),
        what,
        wordGap(names, id, predicted.gap),
        agreementSigns[reportAgreement(gaps, predicted.gap)],
        wordReportReason(names, predicted),
      ],
    ];
  });
}

const agreementSigns: { readonly [A in Agreement]: string } = { fits: statements.fits, against: statements.against, open: '' };
