import { practiceWords } from '../../engine/messages/index.ts';
import { NumberField } from './NumberField.tsx';

/** The number from which chance is drawn: the same number gives the same again. */
export function SeedField({ seed, onChange }: { readonly seed: number; readonly onChange: (seed: number) => void }) {
  return (
    <NumberField shown="before" label={practiceWords.seed} value={seed} whole most={2 ** 31} onChange={(next) => onChange(next ?? seed)} />
  );
}
