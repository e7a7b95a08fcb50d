import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { type Plan, type PlanProgress, planning } from '../../engine/plan/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './protocol.ts';

/** Progress is told so often, milliseconds: each telling redraws, and a short search needs none. */
const tellEvery = 100;
/** For so long is planned without looking whether a newer question has come, milliseconds. */
const slice = 8;

export interface AnswererMeans {
  /** Milliseconds. */
  readonly clock: () => number;
  /** Runs a task after whatever has come in meanwhile. */
  readonly later: (task: () => void) => void;
  /** Work that makes later answers quick, done in pieces while nothing is asked: once, after the first answer and its plan. */
  readonly rehearsal?: Iterator<void>;
}

/**
 * Answers questions one after another; keeps the cabinet of the last one. Runs in the worker, or in the page where there is none. Plans
 * of what to do next follow the answer, better each time, worked out in slices: a newer question ends them. A rehearsal goes on where it
 * stood when the next plan is settled.
 */
export function makeAnswerer({
  clock,
  later,
  rehearsal,
}: AnswererMeans): (question: DiagnosisQuestion, reply: (reply: DiagnosisReply) => void) => void {
  let cabinet: Cabinet | null = null;
  let newest = 0;

  const planInSlices = (
    work: Generator<PlanProgress, Plan, void>,
    revision: number,
    asked: number,
    reply: (reply: DiagnosisReply) => void,
  ) => {
    if (asked !== newest) return;
    const end = clock() + slice;
    try {
      for (let next = work.next(); ; next = work.next()) {
        if (next.done === true) {
          reply({ kind: 'plan', revision, plan: next.value, share: 1 });
          return later(() => rehearseInSlices(asked));
        }
        if (next.value.plan) reply({ kind: 'plan', revision, plan: next.value.plan, share: next.value.share });
        if (clock() >= end) return later(() => planInSlices(work, revision, asked, reply));
      }
    } catch (error) {
      reply({ kind: 'failed', revision, detail: detailOf(error) });
    }
  };

  const rehearseInSlices = (asked: number) => {
    const end = clock() + slice;
    while (rehearsal && asked === newest && rehearsal.next().done !== true) {
      if (clock() >= end) return later(() => rehearseInSlices(asked));
    }
  };

  return ({ revision, content, evidence }, reply) => {
    const begun = clock();
    newest += 1;
    const asked = newest;
    try {
      if (content) cabinet = checkCabinet(content).cabinet;
      let told = begun;
      const onProgress = (share: number) => {
        const now = clock();
        if (now - told >= tellEvery) {
          told = now;
          reply({ kind: 'progress', revision, share });
        }
        return true;
      };
      // An unsound cabinet cannot be simulated, so there is nothing to say of it.
      const diagnosis = cabinet && diagnose(cabinet, evidence, { onProgress });
      reply({ kind: 'answer', revision, diagnosis, milliseconds: clock() - begun });
      if (!cabinet || !diagnosis) return;
      const work = planning(cabinet, evidence, diagnosis);
      later(() => planInSlices(work, revision, asked, reply));
    } catch (error) {
      reply({ kind: 'failed', revision, detail: detailOf(error) });
    }
  };
}

function detailOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
