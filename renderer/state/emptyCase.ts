import { windowTexts } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { CaseRecord } from './sitting.ts';

/** A case about a cabinet, with nothing seen yet. `begun` is given for one that begins now. */
export function makeEmptyCase(cabinet: CabinetContent, begun?: Date): CaseRecord {
  const stamp = begun ? `-${begun.toISOString().slice(0, 16).replace(/\D/g, '')}` : '';
  return {
    id: `${cabinet.id.slice(0, 64 - '-case'.length - stamp.length)}-case${stamp}`,
    name: windowTexts.newCaseName,
    ...(begun && { startedAt: begun.toISOString() }),
    evidence: { snapshots: [{}] },
  };
}
