import { useId, useState } from 'react';

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
  const [typed, setTyped] = useState<string | null>(null);
  const shown = String(Number((before * scale).toFixed(4)));
  const text = typed ?? shown;
  const value = text.trim() === '' ? null : Number(text.trim().replace(',', '.')) / scale;
  const isBad = value !== null && !(Number.isFinite(value) && value >= 0 && value <= most);
  const leave = () => {
    if (isBad) return;
    setTyped(null);
    if (text !== shown) onChange(value);
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
        {isBad ? bad : says}
      </small>
    </>
  );
}
