import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './protocol.ts';

/** Answers questions one after another; keeps the cabinet of the last one. Runs in the worker, or in the page where there is none. */
export function makeAnswerer(clock: () => number): (question: DiagnosisQuestion, reply: (reply: DiagnosisReply) => void) => void {
  let cabinet: Cabinet | null = null;
  return ({ revision, content, evidence }, reply) => {
    const begun = clock();
    try {
      if (content) cabinet = checkCabinet(content).cabinet;
      const onProgress = (share: number) => {
        reply({ kind: 'progress', revision, share });
        return true;
      };
      // An unsound cabinet cannot be simulated, so there is nothing to say of it.
      const diagnosis = cabinet && diagnose(cabinet, evidence, { onProgress });
      reply({ kind: 'answer', revision, diagnosis, milliseconds: clock() - begun });
    } catch (error) {
      reply({ kind: 'failed', revision, detail: error instanceof Error ? error.message : String(error) });
    }
  };
}
