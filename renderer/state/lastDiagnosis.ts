import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { DiagnosisStatus } from './appState.ts';

/** The last answer there was, to be shown while the next is worked out. */
export function lastDiagnosis(status: DiagnosisStatus): Diagnosis | null {
  if (status.state === 'answered') return status.diagnosis;
  return status.state === 'working' || status.state === 'cancelled' ? status.last : null;
}
