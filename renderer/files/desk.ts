import type { Problem } from '../../engine/base/index.ts';
import type { Workbench } from '../state/dispatcher.ts';
import type { Answer, CaseRecord, LeavingFor, Question } from '../state/sitting.ts';
import type { FileAccess } from './access.ts';
import type { RecoveryKeeper } from './recoveryKeeper.ts';
import { documentName, isUnsaved } from './unsaved.ts';

/** What the works with files share. */
export interface Desk {
  readonly bench: Workbench;
  readonly access: FileAccess;
  readonly keeper: RecoveryKeeper;
  readonly now: () => Date;
  /** A time as the user's system writes it. */
  readonly wordTime: (iso: string) => string;
  /** Puts a question, and comes back with the user's answer. */
  readonly ask: (question: Question) => Promise<Answer>;
  /** A case that begins now, on the rates on which new cases stand. */
  readonly beginOn: (caseRecord: CaseRecord) => CaseRecord;
  /** Saves whatever is unsaved. */
  readonly save: () => Promise<'saved' | 'cancelled' | 'failed'>;
}

/** Makes sure that nothing is lost when the document leaves the window: asks once. False: it stays. */
export async function mayLeave(desk: Desk, leavingFor: LeavingFor): Promise<boolean> {
  const { store } = desk.bench;
  if (!isUnsaved(store.getState())) return true;
  const answer = await desk.ask({ kind: 'unsaved', leavingFor, name: documentName(store.getState()) });
  if (answer === 'discard') return true;
  // A save that failed or was cancelled keeps the document here.
  return answer === 'save' && (await desk.save()) === 'saved' && !isUnsaved(store.getState());
}

/** Tells why something was not opened. */
export function refuseOpening(bench: Workbench, name: string | undefined, problems: readonly Problem[]): void {
  bench.refuse({ deed: 'open', ...(name !== undefined && { name }), problems });
}
