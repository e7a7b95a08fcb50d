import { useId, useState } from 'react';

/** A number to type; decimal commas are read too. What is no number, or lies outside the bounds, is marked and not taken. */
export function NumberField({
  label,
  shown,
  value,
  placeholder,
  least = 0,
  most = 1_000_000,
  whole = false,
  disabled = false,
  onChange,
}: {
  readonly label: string;
  /** Where the label stands; left out: only a screen reader hears it. */
  readonly shown?: 'before' | 'after';
  readonly value: number | null;
  /** Shown while there is none; with it the field may be empty. */
  readonly placeholder?: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  readonly disabled?: boolean;
  readonly onChange: (value: number | null) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? (value === null ? '' : String(value));
  const read = text.trim() === '' ? null : Number(text.trim().replace(',', '.'));
  const isBad = read === null ? placeholder === undefined : !(read >= least && read <= most && (!whole || Number.isInteger(read)));
  const field = (
    <input
      id={id}
      className="number-field"
      aria-label={shown === undefined ? label : undefined}
      aria-invalid={isBad}
      inputMode={whole ? 'numeric' : 'decimal'}
      value={text}
      placeholder={placeholder}
      disabled={disabled}
      onChange={({ target }) => {
        setTyped(target.value);
        const next = target.value.trim() === '' ? null : Number(target.value.trim().replace(',', '.'));
        const isGood = next === null ? placeholder !== undefined : next >= least && next <= most && (!whole || Number.isInteger(next));
        if (isGood && next !== value) onChange(next);
      }}
      onBlur={() => setTyped(null)}
    />
  );
  return shown === undefined ? (
    field
  ) : (
    <span className="labelled">
      {shown === 'after' && field}
      <label htmlFor={id}>{label}</label>
      {shown === 'before' && field}
    </span>
  );
}
