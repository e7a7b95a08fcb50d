import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Answer, AppState, DiagnosisStatus } from './appState.ts';

/** The last answer there was, to be shown while the next is worked out. */
export function lastAnswer(status: DiagnosisStatus): Answer | null {
  if (status.state === 'answered') return status.answer;
  return status.state === 'working' || status.state === 'cancelled' ? status.last : null;
}

/** What the last answer said. */
export function lastDiagnosis(status: DiagnosisStatus): Diagnosis | null {
  return lastAnswer(status)?.diagnosis ?? null;
}

/** Whether the answer to the present state of the document is still to come. */
export function isUnanswered({ diagnosis }: Pick<AppState, 'diagnosis'>): boolean {
  return diagnosis.state !== 'answered';
}
