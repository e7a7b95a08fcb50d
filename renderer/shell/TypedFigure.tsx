import { useId } from 'react';
import { useTyped } from './useTyped.ts';

interface Props {
  /** The figure as it stands. */
  readonly value: number;
  /** What it is, for those who do not see where it stands. */
  readonly name: string;
  /** What is said below it, such as where it comes from. */
  readonly says: string;
  /** By how much it is greater on the screen than in the document. */
  readonly scale?: number;
  /** The greatest that is taken, as it stands in the document. */
  readonly most: number;
  /** Said when what was typed is no such figure. */
  readonly bad: string;
  /** Called when another figure was typed; null: it was emptied. */
  readonly onChange: (value: number | null) => void;
}

/**
 * A figure to type over. What is no figure stays to be seen, with what is wrong, until it is put right or Escape puts the old one back.
 * A decimal comma is taken like a point.
 */
export function TypedFigure({ value: before, name, says, scale = 1, most, bad, onChange }: Props) {
  const id = useId();
  const shown = String(Number((before * scale).toFixed(4)));
  const read = (text: string) => (text.trim() === '' ? null : Number(text.trim().replace(',', '.')) / scale);
  const isWrong = (value: number | null) => value !== null && !(Number.isFinite(value) && value >= 0 && value <= most);
  const { typed, input } = useTyped((text) => {
    const value = read(text ?? shown);
    if (isWrong(value)) return false;
    if (text !== null && text !== shown) onChange(value);
    return true;
  });
  const text = typed ?? shown;
  const isBad = isWrong(read(text));
  return (
    <>
      <input aria-label={name} aria-invalid={isBad} aria-describedby={`${id}-said`} inputMode="decimal" value={text} {...input} />
      <small id={`${id}-said`} className={isBad ? 'field-trouble' : ''} role={isBad ? 'alert' : undefined}>
        {isBad ? bad : says}
      </small>
    </>
  );
}
