import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import type { Snapshot } from '../../engine/schema/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { reasonOfCell, reasonOfSeen } from './cellWords.ts';
import type { Row } from './findModel.ts';
import type { GridColumn } from './gridColumns.ts';

/** The row of facts, in `data-row`; the others bear their index. */
export const seenRow = 'seen';

const steps: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
};

/**
 * Says of the cell under the pointer or the focus what it shows and why; a click or Enter keeps it open. One for the whole grid, so
 * that going over cells does not draw the grid again. Cells are one stop of Tab; arrows go from cell to cell.
 */
export function CellExplainer({
  frame,
  rows,
  columns,
  snapshot,
}: {
  readonly frame: React.RefObject<HTMLElement | null>;
  readonly rows: readonly Row[];
  readonly columns: readonly GridColumn[];
  readonly snapshot: Snapshot;
}) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const [cell, setCell] = useState<HTMLElement | null>(null);
  const id = useId();
  useListening(frame, setCell);
  useEffect(() => {
    cell?.setAttribute('aria-describedby', id);
    return () => cell?.removeAttribute('aria-describedby');
  }, [cell, id]);
  const column = columns.find(({ key }) => key === cell?.dataset['column']);
  const row = rows[Number(cell?.dataset['row'])];
  const isSeen = cell?.dataset['row'] === seenRow;
  const reason = column && (isSeen ? reasonOfSeen(names, column, snapshot) : row ? reasonOfCell(names, row, column, snapshot) : null);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (box.current && cell) putBeside(box.current, cell);
  });
  if (!cell?.isConnected || !reason) return null;
  return (
    <div ref={box} id={id} role="tooltip" className="cell-reason">
      <b>{reason.head}</b>
      <p>{reason.said}</p>
      {reason.why !== '' && (
        <p>
          <Words>{reason.why}</Words>
        </p>
      )}
    </div>
  );
}

function useListening(frame: React.RefObject<HTMLElement | null>, setCell: (cell: HTMLElement | null) => void): void {
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    let kept: HTMLElement | null = null;
    const show = (cell: HTMLElement | null) => setCell(cell ?? kept);
    const onOver = (event: PointerEvent) => event.pointerType === 'mouse' && show(cellAt(event.target));
    const onLeave = () => show(null);
    const onFocus = (event: FocusEvent) => {
      const cell = cellAt(event.target);
      kept = null;
      if (cell) makeStop(element, cell);
      setCell(cell?.matches(':focus-visible') ? cell : null);
    };
    const onBlur = () => {
      kept = null;
      setCell(null);
    };
    const onClick = (event: MouseEvent) => {
      kept = cellAt(event.target);
      setCell(kept);
    };
    const onKey = (event: KeyboardEvent) => {
      const cell = cellAt(event.target);
      if (!cell) return;
      if (event.key === 'Escape') {
        onBlur();
        return;
      }
      const step = steps[event.key];
      const next = step && neighbour(element, cell, step);
      if (!next) return;
      event.preventDefault();
      event.stopPropagation();
      next.focus();
    };
    element.addEventListener('pointerover', onOver);
    element.addEventListener('pointerleave', onLeave);
    element.addEventListener('focusin', onFocus);
    element.addEventListener('focusout', onBlur);
    element.addEventListener('click', onClick);
    element.addEventListener('keydown', onKey);
    element.addEventListener('scroll', onBlur);
    return () => {
      element.removeEventListener('pointerover', onOver);
      element.removeEventListener('pointerleave', onLeave);
      element.removeEventListener('focusin', onFocus);
      element.removeEventListener('focusout', onBlur);
      element.removeEventListener('click', onClick);
      element.removeEventListener('keydown', onKey);
      element.removeEventListener('scroll', onBlur);
    };
  }, [frame, setCell]);
}

function cellAt(target: EventTarget | null): HTMLElement | null {
  return target instanceof Element ? target.closest<HTMLElement>('[data-column]') : null;
}

/** Tab comes back to the cell where one has been. */
function makeStop(frame: HTMLElement, cell: HTMLElement): void {
  for (const other of frame.querySelectorAll<HTMLElement>('[data-column][tabindex="0"]')) other.tabIndex = -1;
  cell.tabIndex = 0;
}

/** The next cell in a direction: in the same row, or in the nearest row that has one in this column. */
function neighbour(frame: HTMLElement, cell: HTMLElement, [down, right]: readonly [number, number]): HTMLElement | undefined {
  const all = [...frame.querySelectorAll<HTMLElement>('[data-column]')];
  const line = all.filter((other) =>
    right !== 0 ? other.dataset['row'] === cell.dataset['row'] : other.dataset['column'] === cell.dataset['column'],
  );
  return line[line.indexOf(cell) + down + right];
}

const gap = 6;

/** Below the cell where there is room, else above; never past the window's edges. */
function putBeside(box: HTMLElement, cell: HTMLElement): void {
  const at = cell.getBoundingClientRect();
  const { width, height } = box.getBoundingClientRect();
  const left = Math.max(gap, Math.min(at.left + at.width / 2 - width / 2, window.innerWidth - width - gap));
  const below = at.bottom + gap;
  const top = below + height > window.innerHeight - gap ? at.top - height - gap : below;
  box.style.transform = `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
}
