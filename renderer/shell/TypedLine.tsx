import { useTyped } from './useTyped.ts';

interface Props extends Pick<React.ComponentProps<'input'>, 'id' | 'className' | 'title' | 'placeholder' | 'maxLength'> {
  /** The line as it stands. */
  readonly value: string;
  /** What it is, for those who do not see where it stands. */
  readonly name: string;
  /** Called when another line was typed; null: it was emptied. */
  readonly onSet: (value: string | null) => void;
}

/** A line of text to type over; taken when one leaves it. */
export function TypedLine({ value, name, onSet, ...rest }: Props) {
  const { typed, input } = useTyped((text) => {
    const line = text?.trim();
    if (line !== undefined && line !== value) onSet(line || null);
    return true;
  });
  return <input aria-label={name} {...rest} value={typed ?? value} {...input} />;
}
