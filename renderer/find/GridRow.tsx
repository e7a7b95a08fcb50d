import { memo, useEffect, useRef } from 'react';
import type { Agreement } from '../../engine/diagnosis/index.ts';
import { windowTexts, wordProbability } from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { Sign } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { useCandidateWords } from './candidateWords.ts';
import { cellOf, type GridCell } from './cellWords.ts';
import type { Row } from './findModel.ts';
import type { GridColumn } from './gridColumns.ts';

const words = windowTexts.grid;

interface RowProps {
  readonly row: Row;
  readonly chosen: boolean;
  readonly index: number;
  /** Rows that its bracket spans; 0: it stands within that of a row above. */
  readonly run: number;
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

/** Signs of a name that go into one line, at every width of the window. */
const longName = 23;

/** One candidate: its name lays it over the cabinet, its cells say where it agrees with what was seen. */
export function GridRow({ row, chosen, index, run, columns, snapshot, dense }: RowProps) {
  const dispatch = useDispatch();
  const candidateWords = useCandidateWords();
  const { candidate, letter } = row;
  const title = candidateWords.title(candidate);
  const share = wordProbability(candidate.probability);
  const names = useApp((state) => namesOf(state.checked.topology));
  const side = faultSide(row);
  const firstStop = columns.findIndex(({ kind }) => kind === 'unit' || kind === 'report');
  const line = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (chosen && line.current) bringIntoView(line.current);
  }, [chosen]);
  const lay = () =>
    dispatch('choose-candidate', { chosen: { by: 'user', key: candidate.key }, subject: candidateWords.subject(candidate) });
  return (
    <tr ref={line} className={chosen ? 'chosen' : ''} data-candidate={candidate.key}>
      {letter !== null && run > 0 && (
        <td className="bracket" rowSpan={run}>
          <b>{letter}</b>
        </td>
      )}
      {letter === null && <td />}
      <th scope="row">
        <button
          type="button"
          className={title.text.length > longName ? 'row-name long' : 'row-name'}
          aria-pressed={chosen}
          aria-label={words.layOver(title.text, share)}
          title={title.text}
          onClick={lay}
        >
          <b className="designation">
            <Words>{title.strong}</Words>
          </b>{' '}
          <Words>{title.rest}</Words>
        </button>
      </th>
      <td className="row-share">{share}</td>
      {columns.map((column, at) => (
        <Cell
          key={column.key}
          cell={cellOf(names, row, column, snapshot)}
          index={index}
          column={column}
          side={side}
          dense={dense}
          stop={index === 0 && at === firstStop}
        />
      ))}
    </tr>
  );
}

interface CellProps {
  readonly cell: GridCell;
  readonly index: number;
  readonly column: GridColumn;
  readonly side: 'up' | 'down';
  readonly dense: boolean;
  readonly stop: boolean;
}

/** Hundreds of cells stand in a grid: one is drawn again only when it shows something else. */
const Cell = memo(CellView, (a, b) => {
  const keys = ['index', 'column', 'side', 'dense', 'stop'] as const;
  return keys.every((key) => a[key] === b[key]) && JSON.stringify(a.cell) === JSON.stringify(b.cell);
});

function CellView({ cell, index, column, side, dense, stop }: CellProps) {
  if (column.kind === 'space') return <td />;
  if (cell.kind === 'empty') return <td className="cell" />;
  // A cell can be asked why: the explainer of the grid hears pointer, focus and keys.
  const asked = {
    type: 'button',
    className: 'cell-button',
    tabIndex: stop ? 0 : -1,
    'data-row': index,
    'data-column': column.key,
  } as const;
  if (cell.kind === 'fault') {
    return (
      <td className="cell">
        <button {...asked}>
          <FaultHere />
        </button>
      </td>
    );
  }
  const dot = dense && cell.kind === 'display' && cell.meaning === 'quiet' && cell.agreement !== 'against';
  return (
    <td className={`cell ${cell.kind === 'display' ? 'unit-cell ' : ''}${cell.agreement}`}>
      <button {...asked}>
        {cell.faulty && <FaultHere side={cell.kind === 'display' ? side : 'up'} />}
        <span className="reading">
          {cell.kind === 'report' ? (
            <span className="gap-words" aria-hidden="true">
              {dense ? cell.gap.counted : <Gap>{cell.gap.named}</Gap>}
            </span>
          ) : dot ? (
            <i className="dot" />
          ) : (
            <DisplayMark name={cell.meaning} size={dense ? 14 : 16} />
          )}
          {dense && cell.kind === 'display' ? (
            <span className="screen-reader">{cell.said}</span>
          ) : (
            <AgreementSign agreement={cell.agreement} said={cell.said} />
          )}
        </span>
      </button>
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

/** The two of a gap, so that they can stand in two lines: "-TB2 |" over "-TB3". */
export function Gap({ children }: { readonly children: string }) {
  const [before, ...after] = children.split(' | ');
  return after.length === 0 ? (
    children
  ) : (
    <>
      <span className="unbroken">{before} |</span> <span className="unbroken">{after.join(' | ')}</span>
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
