import { memo, useDeferredValue, useMemo, useRef, useState } from 'react';
import { windowTexts } from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import { narrowWindow, useMedia } from '../canvas/useMedia.ts';
import { useSize } from '../canvas/useSize.ts';
import { Sign } from '../marks/Sign.tsx';
import { currentSnapshot, findDisplay } from '../state/evidence.ts';
import { namesOf, shortUnitName } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { CellExplainer } from './CellExplainer.tsx';
import { type Row, selectFindModel } from './findModel.ts';
import { GridRow } from './GridRow.tsx';
import { type GridColumn, listColumns } from './gridColumns.ts';
import { type GridOrder, gridOrders, groupRun, orderRows } from './gridOrder.ts';
import { SeenRow } from './SeenRow.tsx';
import './grid.css';

const words = windowTexts.grid;
/** From this many units on a cell that fits and is quiet shrinks to a dot. */
const denseFrom = 20;

/** Pixels: of the columns before the first unit, and the most that a unit's may have. */
const namesWidth = 300;
const widestUnit = 150;

/** As in the style sheet, pixels. */
const denseWidths = { unit: 26, link: 0, space: 7 } as const;
const roomyWidths = { link: 13, space: 12, report: 106 } as const;
/** Columns before the first unit, in a narrow window and in a wide one. */
const namesWidths = { narrow: 224, wide: 256 } as const;
/** What a column may give up where not all fit beside the suspects: one with nothing to see in it first, then a report. */
const plainWidths = [11, 10, 9, 8] as const;
const reportWidths = [58, 54, 50, 46] as const;
/** Less for a unit is too little for a mark and its sign: then reports stand in two short lines. */
const leastUnit = 38;

/** One row for what was seen, one for each candidate: agreement and disagreement at a glance, without colour. */
export function PatternGrid() {
  const { topology, snapshot, ranked, chosen } = useDeferredValue(useShown());
  const [order, setOrder] = useState<GridOrder>('probability');
  const frame = useRef<HTMLDivElement>(null);
  const columns = useMemo(() => listColumns(topology), [topology]);
  const rows = useMemo(() => orderRows(ranked, order, columns), [ranked, order, columns]);
  const plain = useMemo(() => new Set(columns.filter((column) => isPlain(column, rows, snapshot))), [columns, rows, snapshot]);
  const units = columns.filter(({ kind }) => kind === 'unit').length;
  const dense = units >= denseFrom;
  const size = useSize(frame);
  const before = namesWidths[useMedia(narrowWindow) ? 'narrow' : 'wide'];
  const room = (size?.width ?? Number.POSITIVE_INFINITY) - before;
  const tight = !dense && unitWidth(columns, room) < leastUnit;
  return (
    <section id="grid" className={`grid-pane${dense ? ' dense' : ''}${tight ? ' tight' : ''}`} aria-label={words.region} tabIndex={-1}>
      <div className="grid-head">
        <div className="section-head">
          <h2>
            {words.region} <small>{words.question}</small>
          </h2>
        </div>
        <OrderChoice order={order} onOrder={setOrder} />
        <Legend />
      </div>
      <div ref={frame} className="grid-scroll">
        <table className="grid" style={dense ? denseWidth(columns, plain, room) : { maxWidth: roomyWidth(columns) }}>
          <caption className="screen-reader">{words.caption}</caption>
          <colgroup>
            <col className="col-letter" />
            <col className="col-name" />
            <col className="col-share" />
            {columns.map((column) => (
              <col key={column.key} className={`col-${column.kind}${dense && plain.has(column) ? ' plain' : ''}`} />
            ))}
          </colgroup>
          <thead>
            <Heads columns={columns} dense={dense} />
          </thead>
          <tbody>
            <SeenRow columns={columns} snapshot={snapshot} dense={dense} isPlain={(column) => dense && plain.has(column)} />
            {rows.map((row, index) => (
              <GridRow
                key={row.candidate.key}
                row={row}
                chosen={row === chosen}
                index={index}
                run={groupRun(rows, index)}
                columns={columns}
                snapshot={snapshot}
                dense={dense}
              />
            ))}
          </tbody>
        </table>
        {rows.length === 0 && <p className="grid-empty quiet-text">{words.nothing}</p>}
      </div>
      <CellExplainer frame={frame} rows={rows} columns={columns} snapshot={snapshot} />
    </section>
  );
}

/** What the grid shows. It is drawn after the first line, the suspects and the cabinet, which must not wait for hundreds of cells. */
function useShown() {
  const topology = useApp((state) => state.checked.topology);
  const snapshot = useApp((state) => currentSnapshot(selectFindModel(state).record));
  const ranked = useApp((state) => selectFindModel(state).rows);
  const chosen = useApp((state) => selectFindModel(state).chosen);
  return useMemo(() => ({ topology, snapshot, ranked, chosen }), [topology, snapshot, ranked, chosen]);
}

/** Cells of a few units must not grow so wide that the eye loses its row. */
function roomyWidth(columns: readonly GridColumn[]): number {
  return columns.reduce((sum, { kind }) => sum + (kind === 'unit' ? widestUnit : kind === 'report' ? widestUnit / 2 : 15), namesWidth);
}

/** What is left for the column of a unit, where reports bear their designations in one line. */
function unitWidth(columns: readonly GridColumn[], room: number): number {
  const others = columns.reduce((sum, { kind }) => sum + (kind === 'unit' ? 0 : roomyWidths[kind]), 0);
  return (room - others) / columns.filter(({ kind }) => kind === 'unit').length;
}

/** Width of the columns of a dense grid, for the style sheet, which adds that of the names: the widest with which all fit. */
function denseWidth(columns: readonly GridColumn[], plain: ReadonlySet<GridColumn>, room: number): React.CSSProperties {
  const reports = columns.filter(({ kind }) => kind === 'report').length;
  const others = columns.reduce((sum, column) => sum + (plain.has(column) || column.kind === 'report' ? 0 : denseWidths[column.kind]), 0);
  const widthWith = (plainWidth: number, reportWidth: number) => others + plain.size * plainWidth + reports * reportWidth;
  const narrowest = plainWidths[plainWidths.length - 1] ?? 0;
  const plainWidth = plainWidths.find((width) => widthWith(width, reportWidths[0]) <= room) ?? narrowest;
  const reportWidth = reportWidths.find((width) => widthWith(plainWidth, width) <= room) ?? reportWidths[0];
  const width = widthWith(plainWidth, reportWidth);
  // The type of styles knows no custom properties.
  return { '--columns': `${width}px`, '--plain': `${plainWidth}px`, '--report': `${reportWidth}px` } as React.CSSProperties;
}

/** Nobody complains in it, and nobody is predicted to: in a dense grid such a column needs no room. */
function isPlain(column: GridColumn, rows: readonly Row[], snapshot: Snapshot): boolean {
  if (column.kind !== 'unit') return false;
  const seen = findDisplay(snapshot, column.unit)?.meanings ?? [];
  const quiet = seen.length === 0 || (seen.length === 1 && seen[0] === 'quiet');
  return quiet && rows.every(({ prediction }) => (prediction?.simulation.displays.get(column.unit)?.meaning ?? 'quiet') === 'quiet');
}

const Heads = memo(HeadsView);

function HeadsView({ columns, dense }: { readonly columns: readonly GridColumn[]; readonly dense: boolean }) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
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
          <th key={column.key} scope="col" title={name} className={column.position === null || column.position % 5 === 0 ? 'numbered' : ''}>
            {!dense ? (
              <span className="designation">
                <bdi>{shortUnitName(topology, column.unit)}</bdi>
              </span>
            ) : (
              <>
                <span className="screen-reader">{name}</span>
                <span className="number" aria-hidden="true">
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

function OrderChoice({ order, onOrder }: { readonly order: GridOrder; readonly onOrder: (order: GridOrder) => void }) {
  return (
    <label className="grid-order">
      {words.order}
      <select
        value={order}
        onChange={({ target }) => {
          const chosen = gridOrders.find((one) => one === target.value);
          if (chosen) onOrder(chosen);
        }}
      >
        {gridOrders.map((one) => (
          <option key={one} value={one}>
            {words.orders[one]}
          </option>
        ))}
      </select>
    </label>
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
