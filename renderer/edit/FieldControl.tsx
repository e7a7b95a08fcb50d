import { useEffect, useState } from 'react';
import type { FieldForm, FieldValue } from '../../engine/edit/index.ts';
import { editWords } from '../../engine/messages/index.ts';
import type { Option } from './options.ts';
import { isNumberForm, readValue, typedText } from './readValue.ts';

interface Props {
  readonly id: string;
  readonly form: FieldForm;
  readonly value: unknown;
  /** Several things are edited, and they differ in this field. */
  readonly mixed?: boolean;
  readonly options: readonly Option[] | null;
  /** What counts while the field is empty. */
  readonly counted?: string;
  /** Name for a screen reader, where no label stands beside it. */
  readonly label?: string;
  readonly describedBy?: string;
  /** Sets the value; answers what is wrong with it, in words, or null. */
  readonly onSet: (value: FieldValue | null) => string | null;
  readonly onTrouble: (trouble: string | null) => void;
  readonly invalid?: boolean;
}

/** What one types or chooses in. It is taken when one leaves it or presses Enter; Escape puts back what stood there. */
export function FieldControl(props: Props) {
  return props.options === null ? <TypedField {...props} /> : <ChosenField {...props} options={props.options} />;
}

const aria = ({ label, describedBy, invalid }: Props) => ({
  ...(label === undefined ? {} : { 'aria-label': label }),
  ...(describedBy === undefined ? {} : { 'aria-describedby': describedBy }),
  'aria-invalid': invalid ?? false,
});

function TypedField(props: Props) {
  const { id, form, value, mixed = false, counted = '', onSet, onTrouble } = props;
  const before = mixed ? '' : typedText(value);
  const [typed, setTyped] = useState(before);
  useEffect(() => setTyped(before), [before]);
  const take = () => {
    if (typed === before) {
      onTrouble(null);
      return;
    }
    const read = readValue(form, typed);
    const trouble = read.ok ? onSet(read.value) : read.trouble;
    onTrouble(trouble);
    // What says the same in other signs ("0,50") is shown as it is kept.
    if (trouble === null) setTyped(read.ok && read.value !== null ? typedText(read.value) : '');
  };
  const common = {
    id,
    value: typed,
    placeholder: mixed ? editWords.inspector.mixed : counted,
    autoComplete: 'off',
    spellCheck: form === 'notes',
    onBlur: take,
    ...aria(props),
  };
  const putBack = (event: React.KeyboardEvent) => {
    if (event.key !== 'Escape' || typed === before) return;
    event.stopPropagation();
    event.preventDefault();
    setTyped(before);
    onTrouble(null);
  };
  if (form === 'notes') {
    return <textarea {...common} rows={3} onChange={(event) => setTyped(event.target.value)} onKeyDown={putBack} />;
  }
  return (
    <input
      {...common}
      type="text"
      inputMode={isNumberForm(form) ? 'decimal' : 'text'}
      onChange={(event) => setTyped(event.target.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take();
        putBack(event);
      }}
    />
  );
}

function ChosenField(props: Props & { readonly options: readonly Option[] }) {
  const { id, form, value, mixed = false, options, onSet, onTrouble } = props;
  const shown = mixed ? mixedValue : typedText(value);
  const unknown = shown !== '' && shown !== mixedValue && !options.some((option) => option.value === shown);
  return (
    <select
      id={id}
      value={shown}
      {...aria(props)}
      onChange={(event) => {
        const read = readValue(form, event.target.value);
        if (read.ok) onTrouble(onSet(read.value));
      }}
    >
      {mixed && (
        <option value={mixedValue} disabled>
          {editWords.inspector.mixed}
        </option>
      )}
      <option value="">{editWords.inspector.open}</option>
      {unknown && <option value={shown}>{editWords.inspector.unknownOption(shown)}</option>}
      {options.map((option) => (
        <option key={option.value} value={option.value}>
          {option.label}
        </option>
      ))}
    </select>
  );
}

/** No value of a field has a blank at its beginning. */
const mixedValue = ' mixed';
