import { useEffect, useId, useState } from 'react';

/**
 * A text that is taken when one leaves the field or presses Enter, and only if `check` finds nothing wrong with it. What is wrong
 * stands at the field.
 */
export function CheckedField({
  label,
  value,
  check,
  onTake,
  maxLength,
  hiddenLabel = false,
  className = '',
}: {
  readonly label: string;
  readonly value: string;
  /** What is wrong with a text, in words; null when nothing is. */
  readonly check: (text: string) => string | null;
  readonly onTake: (text: string) => void;
  readonly maxLength: number;
  readonly hiddenLabel?: boolean;
  readonly className?: string;
}) {
  const [typed, setTyped] = useState(value);
  const id = useId();
  useEffect(() => setTyped(value), [value]);
  const trouble = typed === value ? null : check(typed);
  const take = () => {
    if (typed !== value && trouble === null) onTake(typed.trim());
  };
  return (
    <span className={`checked-field ${className}`}>
      <label className={hiddenLabel ? 'screen-reader' : ''} htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        value={typed}
        maxLength={maxLength}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : `${id}-trouble`}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape' && typed !== value) {
            event.stopPropagation();
            setTyped(value);
          }
        }}
      />
      {trouble !== null && (
        <span className="field-trouble" id={`${id}-trouble`} role="alert">
          {trouble}
        </span>
      )}
    </span>
  );
}
