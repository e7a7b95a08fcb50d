import { useMemo } from 'react';
import { askSharedFeed } from '../../engine/quick/index.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { useApp } from '../state/useWorkbench.ts';

/** Units that are dark together and may hang on one feed that the drawing does not know; empty where that is no question. */
export function useSharedFeed(): readonly string[] {
  const cabinet = useApp((state) => state.cabinet);
  const snapshot = useApp((state) => currentSnapshot(state.caseRecord));
  return useMemo(() => askSharedFeed(cabinet, snapshot), [cabinet, snapshot]);
}
