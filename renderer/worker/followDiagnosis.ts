import type { StoreApi } from 'zustand/vanilla';
import type { AppState, DiagnosisStatus } from '../state/appState.ts';
import { lastAnswer } from '../state/lastDiagnosis.ts';
import { makeAnswerer } from './answerQuestion.ts';
import { type DiagnosisClient, makeDiagnosisClient, type WorkerLike } from './diagnosisClient.ts';

/**
 * An answer within this time, milliseconds, replaces the one before it without a sign of work between: nobody sees so short a sign, and
 * drawing everything twice would make the answer itself late.
 */
const lateAfter = 120;

const startWorker = (): WorkerLike => new Worker(new URL('./diagnosis.worker.ts', import.meta.url), { type: 'module', name: 'diagnosis' });

/** Keeps the diagnosis abreast of the document: asks at every change of it, and puts the answer into the store. */
export function followDiagnosis(store: StoreApi<AppState>): Pick<DiagnosisClient, 'cancel' | 'close'> & { readonly restart: () => void } {
  const client = makeDiagnosisClient(
    {
      startWorker,
      answerHere: makeAnswerer({ clock: () => performance.now(), later: (task) => setTimeout(task) }),
      schedule: (task, milliseconds) => {
        setTimeout(task, milliseconds);
      },
    },
    {
      onAnswer: (revision, diagnosis, milliseconds) =>
        settle(revision, ({ cabinet, caseRecord }) =>
          diagnosis ? { state: 'answered', revision, answer: { diagnosis, cabinet, caseRecord }, milliseconds } : { state: 'idle' },
        ),
      onPlan: (revision, plan, share) => {
        if (store.getState().revision !== revision) return;
        store.setState({ planned: { revision, plan, share, state: share < 1 ? 'working' : 'settled' } });
      },
      onProgress: (revision, share) => {
        const { diagnosis } = store.getState();
        if (diagnosis.state === 'working' && diagnosis.revision === revision) store.setState({ diagnosis: { ...diagnosis, share } });
      },
      onFailure: (revision, detail) => settle(revision, () => ({ state: 'failed', revision, detail })),
    },
  );
  const settle = (revision: number, statusOf: (state: AppState) => DiagnosisStatus) => {
    // The client drops late answers; this guards against one that was on its way when the document changed.
    const state = store.getState();
    if (state.revision === revision) store.setState({ diagnosis: statusOf(state) });
  };
  const markLate = (revision: number) => {
    const { diagnosis } = store.getState();
    if (diagnosis.state === 'working' && diagnosis.revision === revision) store.setState({ diagnosis: { ...diagnosis, late: true } });
  };

  const ask = ({ revision, cabinet, caseRecord, checked, diagnosis }: AppState) => {
    if (!checked.cabinet) return store.setState({ diagnosis: { state: 'idle' }, planned: null });
    store.setState({ diagnosis: { state: 'working', revision, last: lastAnswer(diagnosis), share: 0, late: false } });
    client.ask(revision, cabinet, caseRecord.evidence);
    setTimeout(() => markLate(revision), lateAfter);
  };
  const stop = store.subscribe((state, before) => {
    if (state.revision !== before.revision) ask(state);
  });
  ask(store.getState());

  return {
    cancel() {
      client.cancel();
      const { diagnosis, planned, revision } = store.getState();
      // The best plan so far stays; it only gets no better.
      if (planned?.state === 'working') store.setState({ planned: { ...planned, state: 'stopped' } });
      if (diagnosis.state === 'working') store.setState({ diagnosis: { state: 'cancelled', revision, last: diagnosis.last } });
    },
    restart: () => ask(store.getState()),
    close() {
      stop();
      client.close();
    },
  };
}
