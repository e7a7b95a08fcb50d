import { type ChangeEvent, type KeyboardEvent, useState } from 'react';

/**
 * What is being typed over something that stands, until it is left: by Enter or with the focus. Escape puts back what stood. `leave`
 * takes what was typed, null where nothing was; answering false keeps it to be seen. Gives it, and what an input needs for it.
 */
export function useTyped(leave: (typed: string | null) => boolean) {
  const [typed, setTyped] = useState<string | null>(null);
  const end = () => {
    if (leave(typed)) setTyped(null);
  };
  const input = {
    onChange: ({ target }: ChangeEvent<HTMLInputElement>) => setTyped(target.value),
    onBlur: end,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter') end();
      if (event.key === 'Escape' && typed !== null) {
        event.stopPropagation();
        setTyped(null);
      }
    },
  };
  return { typed, input };
}
