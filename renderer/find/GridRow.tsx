import { useEffect, useRef } from 'react';
import {
  meaningWords,
  windowTexts,
  wordDisplayReason,
  wordGaps,
  wordMeanings,
  wordProbability,
  wordReportReason,
} from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { Sign } from '../marks/Sign.tsx';
import { findDisplay, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { spotKey } from './candidates.ts';
import { useCandidateWords } from './candidateWords.ts';
import { type Row, selectFindModel } from './findModel.ts';
import type { GridColumn } from './gridColumns.ts';
import { type Agreement, displayAgreement, reportAgreement } from './predict.ts';

const words = windowTexts.grid;

interface RowProps {
  readonly row: Row;
  readonly before: Row | undefined;
  readonly rows: readonly Row[];
  readonly columns: readonly GridColumn[];
  readonly snapshot: Snapshot;
  readonly dense: boolean;
}

/** Height of what stays at the top of the grid: the names and what was seen. */
const stays = 50;

/** Scrolls the grid alone. `scrollIntoView` would also move the place from which Tab goes on. */
function bringIntoView(row: HTMLTableRowElement): void {
  const box = row.closest('.grid-scroll');
  if (!box) return;
  const bottom = row.offsetTop + row.offsetHeight;
  if (row.offsetTop - stays < box.scrollTop) box.scrollTop = row.offsetTop - stays;
  else if (bottom > box.scrollTop + box.clientHeight) box.scrollTop = bottom - box.clientHeight;
}

/** One candidate: its name lays it over the cabinet, its cells say where it agrees with what was seen. */
export function GridRow({ row, before, rows, columns, snapshot, dense }: RowProps) {
  const dispatch = useDispatch();
  const candidateWords = useCandidateWords();
  const chosen = useApp((state) => selectFindModel(state).chosen === row);
  const { candidate, letter } = row;
  const title = candidateWords.title(candidate);
  const share = wordProbability(candidate.probability);
  const startsGroup = letter !== null && before?.candidate.group !== candidate.group;
  const groupSize = rows.filter((other) => other.candidate.group === candidate.group).length;
  const line = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (chosen && line.current) bringIntoView(line.current);
  }, [chosen]);
  const lay = () =>
    dispatch('choose-candidate', { chosen: { by: 'user', key: candidate.key }, subject: candidateWords.subject(candidate) });
  return (
    <tr ref={line} className={chosen ? 'chosen' : ''} data-candidate={candidate.key}>
      {startsGroup && (
        <td className="bracket" rowSpan={groupSize}>
          <b>{letter}</b>
        </td>
      )}
      {letter === null && <td />}
      <th scope="row">
        <button
          type="button"
          className="row-name"
          aria-pressed={chosen}
          aria-label={words.layOver(title.text, share)}
          title={title.text}
          onClick={lay}
        >
          <b className="designation">{title.strong}</b> {title.rest}
        </button>
      </th>
      <td className="row-share">{share}</td>
      {columns.map((column) => (
        <Cell key={column.key} row={row} column={column} snapshot={snapshot} dense={dense} />
      ))}
    </tr>
  );
}

function Cell({
  row,
  column,
  snapshot,
  dense,
}: {
  readonly row: Row;
  readonly column: GridColumn;
  readonly snapshot: Snapshot;
  readonly dense: boolean;
}) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const simulation = row.prediction?.simulation;
  const here = faultHere(row, column);
  if (column.kind === 'space') return <td />;
  if (column.kind === 'link') return <td className="cell">{here && <FaultHere />}</td>;
  if (column.kind === 'report') {
    const report = simulation?.reports.get(column.chain);
    if (!report?.speaks) return <td className="cell" />;
    const seen = findReport(snapshot, column.chain)?.gaps;
    const agreement = reportAgreement(seen, report.gap);
    const predicted = wordGaps(names, column.chain, [report.gap]);
    const said = seen ? words.cell(predicted, wordGaps(names, column.chain, seen), words.agreement[agreement]) : words.cellOpen(predicted);
    return (
      <td className={`cell ${agreement}`} title={`${said}. ${wordReportReason(names, report)}`}>
        {here && <FaultHere />}
        <span className="reading">
          <span aria-hidden="true">{words.gap(report.gap)}</span>
          <AgreementSign agreement={agreement} said={said} />
        </span>
      </td>
    );
  }
  const predicted = simulation?.displays.get(column.unit);
  if (!predicted) return <td className="cell" />;
  const seen = findDisplay(snapshot, column.unit)?.meanings ?? [];
  const agreement = displayAgreement(seen, predicted.meaning);
  const label = meaningWords[predicted.meaning].label;
  const said = agreement === 'open' ? words.cellOpen(label) : words.cell(label, wordMeanings(seen), words.agreement[agreement]);
  const dot = dense && predicted.meaning === 'quiet' && agreement !== 'against';
  return (
    <td className={`cell unit-cell ${agreement}`} title={`${names.unit(column.unit)}: ${said}. ${wordDisplayReason(names, predicted)}`}>
      {here && <FaultHere side={faultSide(row)} />}
      <span className="reading">
        {dot ? <i className="dot" /> : <DisplayMark name={predicted.meaning} size={dense ? 14 : 16} />}
        {dense ? <span className="screen-reader">{said}</span> : <AgreementSign agreement={agreement} said={said} />}
      </span>
    </td>
  );
}

function AgreementSign({ agreement, said }: { readonly agreement: Agreement; readonly said: string }) {
  return (
    <>
      <Sign name={agreement} size={11} />
      <span className="screen-reader">{said}</span>
    </>
  );
}

/** Whether all of a candidate points to the down port of its unit. */
function faultSide({ candidate }: Row): 'up' | 'down' {
  return candidate.parts.every(({ fault }) => fault.mode.startsWith('down-')) ? 'down' : 'up';
}

function FaultHere({ side = 'up' }: { readonly side?: 'up' | 'down' }) {
  return (
    <span className={`pin ${side}`}>
      <i className="fault-here" />
      <span className="screen-reader">{words.faultHere}</span>
    </span>
  );
}

function faultHere({ candidate }: Row, column: GridColumn): boolean {
  if (column.kind === 'space') return false;
  return candidate.spots.some((spot) => {
    const key = spotKey(spot);
    if (column.kind === 'link') return key === `link/${column.link}`;
    if (column.kind === 'unit') return key === `unit/${column.unit}` || key === `supply/${column.unit}`;
    return key === `chain-port/${column.chain}` || key === 'controller';
  });
}
