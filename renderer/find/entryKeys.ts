import type { EntryChoice } from './entryChoices.ts';

/** What a key does while a display is entered. */
export type EntryAct =
  | { readonly kind: 'choice'; readonly choice: EntryChoice }
  | { readonly kind: 'back' | 'report' | 'order' | 'take-back' }
  /** `letter`: the key is the first sign of the code. */
  | { readonly kind: 'code'; readonly from: 'letter' | 'nothing' };

type Key = Pick<React.KeyboardEvent, 'key' | 'code' | 'target' | 'ctrlKey' | 'metaKey' | 'altKey'>;

/**
 * The key as it is meant while something is entered: on the number pad always its figure. With NumLock off, as many keyboards start,
 * it sends arrows and Home, and whoever walks along a cabinet with it would enter nothing.
 */
export function meantKey({ key, code }: Pick<React.KeyboardEvent, 'key' | 'code'>): string {
  if (code === 'NumpadDecimal') return '.';
  return /^Numpad(\d)$/.exec(code)?.[1] ?? key;
}

/**
 * Reads a key. Everything that a walk needs lies on the number pad: digits answer, Backspace goes back, + goes to the report, / changes
 * the order, the decimal point begins a code. A letter begins a code too.
 */
export function actOfKey(event: Key, choices: readonly EntryChoice[], walking: boolean): EntryAct | null {
  const key = meantKey(event);
  if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return null;
  const choice = choices.find((one) => one.key === key);
  if (choice) return { kind: 'choice', choice };
  if (walking && key === 'Backspace') return { kind: 'back' };
  if (walking && key === '+') return { kind: 'report' };
  if (walking && key === '/') return { kind: 'order' };
  if (key === 'Delete') return { kind: 'take-back' };
  if (key === '.' || key === ',') return { kind: 'code', from: 'nothing' };
  return /^\p{L}$/u.test(key) ? { kind: 'code', from: 'letter' } : null;
}
