import { describe, expect, it } from 'vitest';
import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { Plan } from '../../engine/plan/index.ts';
import { makeDiagnosisClient, type WorkerLike } from '../../renderer/worker/diagnosisClient.ts';
import type { DiagnosisQuestion, DiagnosisReply } from '../../renderer/worker/protocol.ts';

const cabinet = { id: 'c', name: 'c' };
const evidence = { snapshots: [] };
const diagnosis: Diagnosis = {
  items: [],
  hypotheses: [],
  groups: [],
  nothingBroken: 1,
  unvisitedShare: 0,
  contradiction: null,
  impossible: false,
  behaviours: [],
  notes: [],
  hypothesesVisited: 1,
};

const plan: Plan = {
  steps: [],
  expectedCost: 0,
  method: { kind: 'exact' },
  exhausted: false,
  stopping: 'get-help',
  state: 'closed',
  covered: 1,
  displaced: [],
  handlings: [],
  mishap: 0,
  end: { end: 'open', because: [], lastActs: [], touched: [], displaced: [], expected: { displays: [], reports: [] }, mayComeBack: 0 },
};

/** A client with workers that answer when they are told to, and a clock that stands still until it is moved. */
function makeBench(options: { readonly startable?: boolean } = {}) {
  const workers: (WorkerLike & { readonly asked: DiagnosisQuestion[]; ended: boolean; say: (reply: DiagnosisReply) => void })[] = [];
  const tasks: { readonly task: () => void; readonly due: number }[] = [];
  const answers: number[] = [];
  const shares: number[] = [];
  const failures: string[] = [];
  const planned: (readonly [revision: number, share: number])[] = [];
  const askedHere: DiagnosisQuestion[] = [];
  let now = 0;
  const client = makeDiagnosisClient(
    {
      startWorker: () => {
        if (options.startable === false) throw new Error('no workers here');
        const worker: (typeof workers)[number] = {
          asked: [],
          ended: false,
          onmessage: null,
          onerror: null,
          postMessage: (question) => void worker.asked.push(question),
          terminate: () => {
            worker.ended = true;
          },
          // The client reads nothing but the data of a message.
          say: (reply) => worker.onmessage?.({ data: reply } as MessageEvent<DiagnosisReply>),
        };
        workers.push(worker);
        return worker;
      },
      answerHere: (question, reply) => {
        askedHere.push(question);
        reply({ kind: 'answer', revision: question.revision, diagnosis, milliseconds: 1 });
      },
      schedule: (task, milliseconds) => void tasks.push({ task, due: now + milliseconds }),
    },
    {
      onAnswer: (revision) => void answers.push(revision),
      onPlan: (revision, _plan, share) => void planned.push([revision, share]),
      onProgress: (_revision, share) => void shares.push(share),
      onFailure: (_revision, detail) => void failures.push(detail),
    },
  );
  const wait = (milliseconds: number) => {
    now += milliseconds;
    for (const one of tasks.splice(0).sort((a, b) => a.due - b.due)) {
      if (one.due <= now) one.task();
      else tasks.push(one);
    }
  };
  const answer = (worker: (typeof workers)[number] | undefined, revision: number) =>
    worker?.say({ kind: 'answer', revision, diagnosis, milliseconds: 1 });
  const tell = (worker: (typeof workers)[number] | undefined, revision: number, share: number) =>
    worker?.say({ kind: 'plan', revision, plan, share });
  return { client, workers, answers, shares, failures, planned, askedHere, wait, answer, tell };
}

describe('makeDiagnosisClient', () => {
  it('should ask the worker once it is ready, and send the cabinet only when it is another one', () => {
    const { client, workers, answers, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    expect(worker?.asked).toEqual([]);
    worker?.say({ kind: 'ready' });
    answer(worker, 1);
    client.ask(2, cabinet, evidence);
    answer(worker, 2);
    client.ask(3, { ...cabinet }, evidence);
    expect(worker?.asked.map(({ content }) => content !== null)).toEqual([true, false, true]);
    expect(answers).toEqual([1, 2]);
  });

  it('should drop a late answer and put the newest question only', () => {
    const { client, workers, answers, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    client.ask(2, cabinet, evidence);
    client.ask(3, cabinet, evidence);
    answer(worker, 1);
    expect(answers).toEqual([]);
    expect(worker?.asked.map(({ revision }) => revision)).toEqual([1, 3]);
    answer(worker, 3);
    expect(answers).toEqual([3]);
  });

  it('should end a search that stands in the way of a newer question', () => {
    const { client, workers, answers, wait, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    workers[0]?.say({ kind: 'ready' });
    client.ask(2, cabinet, evidence);
    wait(1_000);
    expect(workers[0]?.ended).toBe(true);
    workers[1]?.say({ kind: 'ready' });
    // The new worker knows no cabinet yet.
    expect(workers[1]?.asked).toEqual([{ revision: 2, content: cabinet, evidence }]);
    answer(workers[0], 1);
    answer(workers[1], 2);
    expect(answers).toEqual([2]);
  });

  it('should give a question up when it is cancelled, and answer the next one', () => {
    const { client, workers, answers, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    workers[0]?.say({ kind: 'ready' });
    client.cancel();
    expect(workers[0]?.ended).toBe(true);
    answer(workers[0], 1);
    client.ask(2, cabinet, evidence);
    workers[1]?.say({ kind: 'ready' });
    answer(workers[1], 2);
    expect(answers).toEqual([2]);
  });

  it.each([
    ['cannot be started', { startable: false }, () => undefined],
    ['fails while starting', {}, ({ workers }: ReturnType<typeof makeBench>) => workers[0]?.onerror?.({} as ErrorEvent)],
    ['never says that it is ready', {}, ({ wait }: ReturnType<typeof makeBench>) => wait(10_000)],
  ] as const)('should answer in the page itself when the worker %s', (_what, options, happen) => {
    const bench = makeBench(options);
    bench.client.ask(1, cabinet, evidence);
    happen(bench);
    bench.wait(1);
    expect(bench.askedHere.map(({ revision }) => revision)).toEqual([1]);
    bench.client.ask(2, cabinet, evidence);
    bench.wait(1);
    expect(bench.answers).toEqual([1, 2]);
  });

  it('should pass progress and failures of the present question on, and of no other', () => {
    const { client, workers, shares, failures } = makeBench();
    client.ask(4, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    worker?.say({ kind: 'progress', revision: 3, share: 0.9 });
    worker?.say({ kind: 'progress', revision: 4, share: 0.25 });
    worker?.say({ kind: 'failed', revision: 3, detail: 'old' });
    worker?.say({ kind: 'failed', revision: 4, detail: 'why' });
    expect(shares).toEqual([0.25]);
    expect(failures).toEqual(['why']);
  });

  it('should pass plans on after their answer, each better one, and drop them once something newer was asked or the question given up', () => {
    const { client, workers, answers, planned, answer, tell } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    tell(worker, 1, 0.5);
    expect(planned, 'before its answer').toEqual([]);
    answer(worker, 1);
    tell(worker, 1, 0.5);
    tell(worker, 1, 1);
    tell(worker, 1, 1);
    const settled = [
      [1, 0.5],
      [1, 1],
    ];
    expect(planned, 'the better one too, and none after the last').toEqual(settled);
    client.ask(2, cabinet, evidence);
    answer(worker, 2);
    client.ask(3, cabinet, evidence);
    tell(worker, 2, 1);
    expect(planned, 'late').toEqual(settled);
    // Planning does not stand in the way: the newer question was put at once.
    expect(worker?.asked.map(({ revision }) => revision)).toEqual([1, 2, 3]);
    answer(worker, 3);
    client.cancel();
    tell(worker, 3, 1);
    expect(planned, 'given up').toEqual(settled);
    expect(worker?.ended).toBe(true);
    expect(answers).toEqual([1, 2, 3]);
  });

  it('should put the question again, in the page, that a worker took with it when it crashed', () => {
    const { client, workers, askedHere, answers, wait, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    expect(worker?.asked).toHaveLength(1);
    worker?.onerror?.({} as ErrorEvent);
    wait(1);
    expect(askedHere).toEqual([{ revision: 1, content: cabinet, evidence }]);
    answer(worker, 1);
    expect(answers).toEqual([1]);
  });

  it('should say nothing any more once it is closed', () => {
    const { client, workers, answers, failures, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    const heard = worker?.onmessage;
    worker?.say({ kind: 'ready' });
    client.close();
    // On its way already when the client was closed.
    heard?.({ data: { kind: 'answer', revision: 1, diagnosis, milliseconds: 1 } } as MessageEvent<DiagnosisReply>);
    answer(worker, 1);
    client.ask(2, cabinet, evidence);
    expect([answers, failures]).toEqual([[], []]);
    expect(worker?.ended).toBe(true);
  });

  it('should not tell how far an old question has come while a newer one waits', () => {
    const { client, workers, shares } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    client.ask(2, cabinet, evidence);
    worker?.say({ kind: 'progress', revision: 1, share: 0.5 });
    expect(shares).toEqual([]);
  });

  it('should wait for no plan where there was no diagnosis to plan by', () => {
    const { client, workers, planned, tell } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    worker?.say({ kind: 'answer', revision: 1, diagnosis: null, milliseconds: 1 });
    tell(worker, 1, 1);
    expect(planned).toEqual([]);
    client.cancel();
    expect(worker?.ended, 'nothing was running that must be ended').toBe(false);
  });

  it('should not work out in the page what was given up before it began', () => {
    const { client, askedHere, wait } = makeBench({ startable: false });
    client.ask(1, cabinet, evidence);
    client.cancel();
    wait(1);
    expect(askedHere).toEqual([]);
  });

  it('should leave alone a worker that is on the newest question by the time its patience with an older one ends', () => {
    const { client, workers, wait, answer } = makeBench();
    client.ask(1, cabinet, evidence);
    const [worker] = workers;
    worker?.say({ kind: 'ready' });
    client.ask(2, cabinet, evidence);
    wait(200);
    answer(worker, 1);
    client.ask(3, cabinet, evidence);
    // The patience with the first question ends, that with the second does not yet.
    wait(100);
    expect(worker?.ended).toBe(false);
    expect(worker?.asked.map(({ revision }) => revision)).toEqual([1, 2]);
    wait(200);
    expect(worker?.ended).toBe(true);
  });
});
