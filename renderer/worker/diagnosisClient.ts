import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Plan } from '../../engine/plan/index.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './protocol.ts';

/** The part of a worker that is used here; a test can stand in for it. */
export interface WorkerLike {
  postMessage(question: DiagnosisQuestion): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<DiagnosisReply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface ClientListener {
  readonly onAnswer: (revision: number, diagnosis: Diagnosis | null, milliseconds: number) => void;
  /** What to do next; follows its answer, better each time until `share` is 1, unless something newer was asked meanwhile. */
  readonly onPlan: (revision: number, plan: Plan, share: number) => void;
  readonly onProgress: (revision: number, share: number) => void;
  readonly onFailure: (revision: number, detail: string) => void;
}

export interface DiagnosisClient {
  /** Asks about the present document; every older question is void. */
  readonly ask: (revision: number, content: CabinetContent, evidence: Evidence) => void;
  /** Gives the question up; nothing will be said of it. */
  readonly cancel: () => void;
  readonly close: () => void;
}

interface Means {
  /** Throws, or answers null, where there are no workers. */
  readonly startWorker: () => WorkerLike | null;
  /** Answers in the page itself, where there is no worker. */
  readonly answerHere: (question: DiagnosisQuestion, reply: (reply: DiagnosisReply) => void) => void;
  readonly schedule: (task: () => void, milliseconds: number) => void;
}

/** A worker that has said nothing by then will not start, milliseconds. */
const startLimit = 5_000;
/** A search on an old question that has not ended by then is stopped rather than waited for, milliseconds. */
const patience = 250;

interface Pending {
  readonly revision: number;
  readonly content: CabinetContent;
  readonly evidence: Evidence;
}

/**
 * Puts questions to the diagnosis, at most one at a time, the newest first. An answer for an older revision is dropped. A search that
 * stands in the way of a newer question is stopped by ending its worker; planning gives way by itself. Without a worker the page answers by itself.
 */
export function makeDiagnosisClient(means: Means, listener: ClientListener): DiagnosisClient {
  let worker: WorkerLike | null = null;
  let mode: 'not-started' | 'starting' | 'worker' | 'page' = 'not-started';
  let sentContent: CabinetContent | null = null;
  let asked: Pending | null = null;
  let waiting: Pending | null = null;
  /** Answered, and what to do next is still being planned. */
  let planned: number | null = null;
  let closed = false;

  const receive = (reply: DiagnosisReply) => {
    if (closed) return;
    if (reply.kind === 'ready') {
      if (mode === 'starting') mode = 'worker';
      return sendNext();
    }
    if (reply.revision === planned && (reply.kind === 'plan' || reply.kind === 'failed')) {
      if (reply.kind === 'failed' || reply.share >= 1) planned = null;
      return reply.kind === 'plan'
        ? listener.onPlan(reply.revision, reply.plan, reply.share)
        : listener.onFailure(reply.revision, reply.detail);
    }
    if (reply.revision !== asked?.revision || reply.kind === 'plan') return;
    if (reply.kind === 'progress') return waiting ? undefined : listener.onProgress(reply.revision, reply.share);
    asked = null;
    // A newer question waits: this answer is already old.
    if (waiting) return sendNext();
    if (reply.kind === 'answer') {
      planned = reply.diagnosis ? reply.revision : null;
      listener.onAnswer(reply.revision, reply.diagnosis, reply.milliseconds);
    } else listener.onFailure(reply.revision, reply.detail);
  };

  const fallBack = () => {
    stopWorker();
    mode = 'page';
    sendNext();
  };

  const stopWorker = () => {
    if (worker) {
      worker.onmessage = null;
      worker.onerror = null;
      worker.terminate();
    }
    worker = null;
    planned = null;
    sentContent = null;
    waiting = waiting ?? asked;
    asked = null;
  };

  const startWorker = () => {
    mode = 'starting';
    try {
      worker = means.startWorker();
    } catch {
      worker = null;
    }
    if (!worker) return fallBack();
    const started = worker;
    started.onmessage = ({ data }) => receive(data);
    started.onerror = () => {
      if (worker === started) fallBack();
    };
    means.schedule(() => {
      if (!closed && worker === started && mode === 'starting') fallBack();
    }, startLimit);
  };

  const sendNext = () => {
    if (!waiting || asked || closed) return;
    if (mode === 'not-started') return startWorker();
    if (mode === 'starting') return;
    asked = waiting;
    waiting = null;
    const { revision, content, evidence } = asked;
    const question = { revision, content: content === sentContent ? null : content, evidence };
    sentContent = content;
    if (worker) return worker.postMessage(question);
    // Lets the page paint what was typed before it thinks.
    means.schedule(() => {
      if (asked?.revision === revision) means.answerHere(question, receive);
    }, 0);
  };

  return {
    ask(revision, content, evidence) {
      waiting = { revision, content, evidence };
      planned = null;
      const old = asked;
      if (old) {
        means.schedule(() => {
          if (closed || asked !== old || !worker || !waiting) return;
          asked = null;
          stopWorker();
          startWorker();
        }, patience);
      }
      sendNext();
    },
    cancel() {
      waiting = null;
      if (!asked && planned === null) return;
      asked = null;
      planned = null;
      if (!worker) return;
      stopWorker();
      mode = 'not-started';
    },
    close() {
      closed = true;
      waiting = null;
      asked = null;
      stopWorker();
    },
  };
}
