import { cautionsDefer, type Term } from '../messages/index.ts';
import type { Block } from '../paper/index.ts';

/** Cautions as a list, and behind them always that the manual, local codes and licensed persons come first. */
export function cautionBlocks(cautions: readonly Term[]): readonly Block[] {
  const items = cautions.map(({ label, meaning }) => [{ text: `${label}. `, face: 'bold' as const }, { text: meaning }]);
  return [...(items.length === 0 ? [] : [{ kind: 'list', items } as const]), { kind: 'paragraph', text: cautionsDefer }];
}
