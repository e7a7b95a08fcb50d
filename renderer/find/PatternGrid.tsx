import { useMemo } from 'react';
import { windowTexts } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { currentSnapshot } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { selectFindModel } from './findModel.ts';
import { GridRow } from './GridRow.tsx';
import { type GridColumn, listColumns } from './gridColumns.ts';
import { SeenRow } from './SeenRow.tsx';
import './grid.css';

const words = windowTexts.grid;
/** From this many units on a cell that fits and is quiet shrinks to a dot. */
const denseFrom = 20;

/** One row for what was seen, one for each candidate: agreement and disagreement at a glance, without colour. */
export function PatternGrid() {
  const topology = useApp((state) => state.checked.topology);
  const snapshot = useApp((state) => currentSnapshot(state.caseRecord));
  const rows = useApp((state) => selectFindModel(state).rows);
  const columns = useMemo(() => listColumns(topology), [topology]);
  const units = columns.filter(({ kind }) => kind === 'unit').length;
  const dense = units >= denseFrom;
  return (
    <section id="grid" className={`grid-pane${dense ? ' dense' : ''}`} aria-label={words.region} tabIndex={-1}>
      <div className="grid-head">
        <div className="section-head">
          <h2>
            {words.region} <small>{words.question}</small>
          </h2>
        </div>
        <Legend />
      </div>
      <div className="grid-scroll">
        <table className="grid">
          <caption className="screen-reader">{words.caption}</caption>
          <colgroup>
            <col className="col-letter" />
            <col className="col-name" />
            <col className="col-share" />
            {columns.map((column) => (
              <col key={column.key} className={`col-${column.kind}`} />
            ))}
          </colgroup>
          <thead>
            <Heads columns={columns} dense={dense} />
          </thead>
          <tbody>
            <SeenRow columns={columns} snapshot={snapshot} />
            {rows.map((row, index) => (
              <GridRow
                key={row.candidate.key}
                row={row}
                before={rows[index - 1]}
                rows={rows}
                columns={columns}
                snapshot={snapshot}
                dense={dense}
              />
            ))}
          </tbody>
        </table>
        {rows.length === 0 && <p className="grid-empty quiet-text">{words.nothing}</p>}
      </div>
    </section>
  );
}

function Heads({ columns, dense }: { readonly columns: readonly GridColumn[]; readonly dense: boolean }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const chains = columns.filter(({ kind }) => kind === 'report').length;
  return (
    <tr>
      <td />
      <th scope="col">
        <span className="screen-reader">{words.suspect}</span>
      </th>
      <th scope="col">
        <span className="screen-reader">{words.share}</span>
      </th>
      {columns.map((column) => {
        if (column.kind === 'link' || column.kind === 'space') return <td key={column.key} />;
        if (column.kind === 'report') {
          return (
            <th key={column.key} scope="col">
              {chains > 1 ? words.reportOf(String(column.chainNumber)) : words.report}
            </th>
          );
        }
        const name = names.unit(column.unit);
        // Forty designations have no room: every fifth position is numbered, the designation is in the cell's name.
        return (
          <th key={column.key} scope="col" title={name}>
            {!dense ? (
              <span className="designation">{name}</span>
            ) : (
              <>
                <span className="screen-reader">{name}</span>
                <span aria-hidden="true">
                  {column.position !== null && (column.position === 1 || column.position % 5 === 0) ? column.position : ''}
                </span>
              </>
            )}
          </th>
        );
      })}
    </tr>
  );
}

function Legend() {
  return (
    <ul className="grid-legend">
      {(['fits', 'against', 'open'] as const).map((agreement) => (
        <li key={agreement}>
          <Sign name={agreement} size={12} /> {words.agreement[agreement]}
        </li>
      ))}
      <li>
        <i className="fault-here" /> {words.faultHere}
      </li>
    </ul>
  );
}
