import { isUnread } from '../../engine/diagnosis/index.ts';
import { windowTexts, wordMeanings } from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import { DisplayMark, markOf, toneOf } from '../marks/DisplayMark.tsx';
import { findDisplay, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { seenRow } from './CellExplainer.tsx';
import { Gap } from './GridRow.tsx';
import type { GridColumn } from './gridColumns.ts';

const words = windowTexts.grid;

/** A cell can be asked what was seen; arrows lead here from the rows below. */
const asked = (column: GridColumn) =>
  ({ type: 'button', className: 'cell-button', tabIndex: -1, 'data-row': seenRow, 'data-column': column.key }) as const;

/** The row of facts: dark glass, as on the units. */
export function SeenRow({
  columns,
  snapshot,
  dense,
  isPlain,
}: {
  readonly columns: readonly GridColumn[];
  readonly snapshot: Snapshot;
  readonly dense: boolean;
  readonly isPlain: (column: GridColumn) => boolean;
}) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const units = columns.filter(({ kind }) => kind === 'unit');
  const isRead = (unit: string) => {
    const display = findDisplay(snapshot, unit);
    return display !== undefined && !isUnread(display.meanings);
  };
  const seen = units.filter((column) => column.kind === 'unit' && isRead(column.unit)).length;
  return (
    <tr className="seen-row">
      <th scope="row" colSpan={3}>
        {words.seen} <small>{words.seenCount(seen, units.length, snapshot.reports?.length ?? 0)}</small>
      </th>
      {columns.map((column) => {
        if (column.kind === 'space') return <td key={column.key} />;
        if (column.kind === 'link') {
          const lost = findReport(snapshot, column.chain)?.gaps.includes(column.gap) ?? false;
          return (
            <td key={column.key} className="cell">
              {lost && <i className="gap-mark" />}
            </td>
          );
        }
        if (column.kind === 'report') {
          const gaps = findReport(snapshot, column.chain)?.gaps;
          const lost = gaps !== undefined && !gaps.includes('none');
          return (
            <td key={column.key} className="cell">
              <button {...asked(column)}>
                <span className={`glass tone-${gaps ? (lost ? 'loss' : 'other') : 'none'}`}>
                  {!gaps ? (
                    '–'
                  ) : dense ? (
                    gaps.map((gap) => words.gapByPosition(gap)).join(', ')
                  ) : (
                    <span className="gap-words">
                      <Gap>{gaps.map((gap) => names.gap(column.chain, gap)).join(', ')}</Gap>
                    </span>
                  )}
                </span>
              </button>
            </td>
          );
        }
        const meanings = findDisplay(snapshot, column.unit)?.meanings ?? [];
        const mark = markOf(meanings);
        return (
          <td key={column.key} className="cell">
            <button {...asked(column)}>
              <span className={`glass tone-${toneOf(mark)}`}>
                {isPlain(column) ? <i className="dot" /> : <DisplayMark name={mark} size={16} />}
                <span className="screen-reader">{wordMeanings(meanings)}</span>
              </span>
            </button>
          </td>
        );
      })}
    </tr>
  );
}
