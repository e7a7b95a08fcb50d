import { useId, useState } from 'react';
import { repairTableWords as words } from '../../engine/messages/index.ts';
import type { Figure, TableEdit } from '../../engine/repair/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';

export const wordOrigin = ({ origin }: Figure) =>
  origin === 'assumed' || origin === 'cabinet' || origin === 'sums' ? words[origin] : origin;

/** What a file takes at most, of figures that are minutes. */
const most = 1_000_000;

/**
 * A figure to type over, with its origin. Emptied, it is the usual one again; what is no figure stays to be seen, with what is wrong,
 * until it is put right or Escape puts the old one back.
 */
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
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const shown = String(Number((figure.value * scale).toFixed(4)));
  const text = typed ?? shown;
  const value = text.trim() === '' ? null : Number(text.trim().replace(',', '.')) / scale;
  const isBad = value !== null && !(Number.isFinite(value) && value >= 0 && value <= (scale === 1 ? most : 1));
  const leave = () => {
    if (isBad) return;
    setTyped(null);
    if (text !== shown) dispatch('edit-repair-table', { edit: edit(value), what: name });
  };
  return (
    <>
      <input
        aria-label={name}
        aria-invalid={isBad}
        aria-describedby={`${id}-said`}
        inputMode="decimal"
        value={text}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave();
          if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation();
            setTyped(null);
          }
        }}
      />
      <small id={`${id}-said`} className={isBad ? 'field-trouble' : ''} role={isBad ? 'alert' : undefined}>
        {isBad ? words.badFigure(scale === 1 ? null : 100) : wordOrigin(figure)}
      </small>
    </>
  );
}
