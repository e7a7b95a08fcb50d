import { repairTableWords as words } from '../../engine/messages/index.ts';
import type { Figure, TableEdit } from '../../engine/repair/index.ts';
import { TypedFigure } from '../shell/TypedFigure.tsx';
import { useDispatch } from '../state/useWorkbench.ts';

export const wordOrigin = ({ origin }: Figure) =>
  origin === 'assumed' || origin === 'cabinet' || origin === 'sums' ? words[origin] : origin;

/** What a file takes at most, of figures that are minutes. */
const most = 1_000_000;

/** A figure of the repair table to type over, with its origin. Emptied, it is the usual one again. */
export function FigureInput({
  figure,
  name,
  edit,
  scale = 1,
}: {
  readonly figure: Figure;
  readonly name: string;
  readonly edit: (value: number | null) => TableEdit;
  readonly scale?: number;
}) {
  const dispatch = useDispatch();
  return (
    <TypedFigure
      value={figure.value}
      name={name}
      says={wordOrigin(figure)}
      scale={scale}
      most={scale === 1 ? most : 1}
      bad={words.badFigure(scale === 1 ? null : 100)}
      onChange={(value) => dispatch('edit-repair-table', { edit: edit(value), what: name })}
    />
  );
}
