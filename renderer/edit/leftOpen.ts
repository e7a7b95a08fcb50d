import { editWords, termBasisWords, wordNumber } from '../../engine/messages/index.ts';
import { repairTable } from '../../engine/repair/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { countedWhenOpen } from '../../engine/sums/index.ts';

const times = {
  'times.openMinutes': 'open',
  'times.dischargeMinutes': 'discharge',
  'times.bootMinutes': 'boot',
  'times.referencingMinutes': 'referencing',
} as const;

/** What counts where a number is left open, as it stands in the empty field, and where that comes from; null where nothing does. */
export function leftOpen(content: CabinetContent, path: string): { readonly value: string; readonly why: string } | null {
  const { leftOpen: words } = editWords.inspector;
  if (path in times) {
    const { value, origin } = repairTable(content).changes[times[path as keyof typeof times]]; // one of these, as was just asked
    return { value: wordNumber(value), why: words(origin === 'sums' ? editWords.inspector.bySums : editWords.inspector.assumed) };
  }
  const counted = countedWhenOpen(content, path);
  return counted && { value: wordNumber(counted.value), why: words(termBasisWords[counted.basis]) };
}
