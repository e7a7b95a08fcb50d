import { type Agreement, displayAgreement, reportAgreement } from '../../engine/diagnosis/index.ts';
import {
  meaningWords,
  type Names,
  startSentence,
  windowTexts,
  wordDisplayReason,
  wordFaultClause,
  wordGaps,
  wordMeanings,
  wordReportReason,
} from '../../engine/messages/index.ts';
import type { DisplayMeaning, Fault, Snapshot } from '../../engine/schema/index.ts';
import { findDisplay, findReport } from '../state/evidence.ts';
import { spotKey, spotOf } from './candidates.ts';
import type { Row } from './findModel.ts';
import type { GridColumn } from './gridColumns.ts';

const words = windowTexts.grid;

/** What a cell of the grid holds, and what it says of itself. */
export type GridCell =
  | { readonly kind: 'empty' }
  /** Only the place of the fault: a cable. */
  | { readonly kind: 'fault'; readonly said: string }
  | {
      readonly kind: 'display';
      readonly meaning: DisplayMeaning;
      readonly agreement: Agreement;
      readonly said: string;
      readonly faulty: boolean;
    }
  | {
      readonly kind: 'report';
      /** By designations, and by positions. */
      readonly gap: { readonly named: string; readonly counted: string };
      readonly agreement: Agreement;
      readonly said: string;
      readonly faulty: boolean;
    };

const empty: GridCell = { kind: 'empty' };

/** The cell of a candidate in a column. */
export function cellOf(names: Names, row: Row, column: GridColumn, snapshot: Snapshot): GridCell {
  if (column.kind === 'space') return empty;
  const faulty = faultsHere(row, column).length > 0;
  if (column.kind === 'link') return faulty ? { kind: 'fault', said: words.faultHere } : empty;
  if (column.kind === 'report') {
    const report = row.prediction?.simulation.reports.get(column.chain);
    if (!report?.speaks) return empty;
    const seen = findReport(snapshot, column.chain)?.gaps;
    const agreement = reportAgreement(seen, report.gap);
    const predicted = wordGaps(names, column.chain, [report.gap]);
    const said = seen ? words.cell(predicted, wordGaps(names, column.chain, seen), words.agreement[agreement]) : words.cellOpen(predicted);
    return {
      kind: 'report',
      gap: { named: names.gap(column.chain, report.gap), counted: words.gapByPosition(report.gap) },
      agreement,
      said,
      faulty,
    };
  }
  const predicted = row.prediction?.simulation.displays.get(column.unit);
  if (!predicted) return empty;
  const seen = findDisplay(snapshot, column.unit)?.meanings ?? [];
  const agreement = displayAgreement(seen, predicted.meaning);
  const label = meaningWords[predicted.meaning].label;
  const said = agreement === 'open' ? words.cellOpen(label) : words.cell(label, wordMeanings(seen), words.agreement[agreement]);
  return { kind: 'display', meaning: predicted.meaning, agreement, said, faulty };
}

/** A cell at length: of what it speaks, what is predicted and seen, and why. */
export interface CellReason {
  readonly head: string;
  readonly said: string;
  readonly why: string;
}

/** The same with its reason, for whoever asks; null where there is nothing to say. */
export function reasonOfCell(names: Names, row: Row, column: GridColumn, snapshot: Snapshot): CellReason | null {
  const cell = cellOf(names, row, column, snapshot);
  if (column.kind === 'space' || cell.kind === 'empty') return null;
  const faults = faultsHere(row, column).map((fault) => `${startSentence(wordFaultClause(names, fault))}.`);
  if (column.kind === 'link') return { head: names.link(column.link), said: words.faultHere, why: faults.join(' ') };
  const { simulation } = row.prediction ?? {};
  if (column.kind === 'report') {
    const report = simulation?.reports.get(column.chain);
    return { head: words.reportOf(names.chain(column.chain)), said: cell.said, why: report ? wordReportReason(names, report) : '' };
  }
  const predicted = simulation?.displays.get(column.unit);
  return {
    head: names.unit(column.unit),
    said: cell.said,
    why: [predicted ? wordDisplayReason(names, predicted) : '', ...faults].join(' ').trim(),
  };
}

/** What was seen there, at length. */
export function reasonOfSeen(names: Names, column: GridColumn, snapshot: Snapshot): CellReason | null {
  if (column.kind === 'unit') {
    const display = findDisplay(snapshot, column.unit);
    return {
      head: names.unit(column.unit),
      said: `${words.seen}: ${wordMeanings(display?.meanings ?? [])}`,
      why: display?.code === undefined ? '' : windowTexts.cabinet.code(display.code),
    };
  }
  if (column.kind !== 'report') return null;
  const gaps = findReport(snapshot, column.chain)?.gaps;
  return {
    head: words.reportOf(names.chain(column.chain)),
    said: `${words.seen}: ${gaps ? wordGaps(names, column.chain, gaps) : words.noReport}`,
    why: '',
  };
}

/** The faults of a candidate that lie in a column. */
export function faultsHere({ candidate }: Row, column: GridColumn): readonly Fault[] {
  return candidate.best.faults
    .map(({ fault }) => fault)
    .filter((fault) => {
      const key = spotKey(spotOf(fault));
      if (column.kind === 'link') return key === `link/${column.link}`;
      if (column.kind === 'unit') return key === `unit/${column.unit}` || key === `supply/${column.unit}`;
      return column.kind === 'report' && (key === `chain-port/${column.chain}` || key === 'controller');
    });
}
