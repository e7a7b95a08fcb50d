import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { selectFindModel } from '../../renderer/find/findModel.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { makeAnswerer } from '../../renderer/worker/answerQuestion.ts';
import { followDiagnosis } from '../../renderer/worker/followDiagnosis.ts';
import type { DiagnosisQuestion, DiagnosisReply } from '../../renderer/worker/protocol.ts';
import { soundSamples } from '../samples/index.ts';

const cabinet = soundSamples.find(({ name }) => name === 'three-units')?.content ?? { id: 'none', name: 'none' };
const [first, second] = (cabinet.units ?? []).filter(({ kind }) => kind !== 'supply').map(({ id }) => id);

/** A worker that answers when the test lets it. */
class HeldWorker {
  static questions: DiagnosisQuestion[] = [];
  static made: HeldWorker | null = null;
  onmessage: ((event: { readonly data: DiagnosisReply }) => void) | null = null;
  onerror: unknown = null;
  readonly answer = makeAnswerer({ clock: () => 0, later: () => undefined });

  constructor() {
    HeldWorker.made = this;
    HeldWorker.questions = [];
    queueMicrotask(() => this.onmessage?.({ data: { kind: 'ready' } }));
  }

  postMessage(question: DiagnosisQuestion) {
    HeldWorker.questions.push(question);
  }

  terminate() {
    HeldWorker.made = null;
  }

  static answerNext() {
    const question = HeldWorker.questions.shift();
    if (!question || !HeldWorker.made) throw new Error('nothing was asked');
    HeldWorker.made.answer(question, (data) => HeldWorker.made?.onmessage?.({ data }));
  }
}

const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects; // nothing below has an effect

function makeBench() {
  const caseRecord = { id: 'case', name: 'case', evidence: { snapshots: [{}] } };
  return makeWorkbench(
    { document: { cabinet, caseRecord }, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences },
    noEffects,
  );
}

describe('an answer that is about to be replaced', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal('Worker', HeldWorker);
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  async function answerOnce() {
    const bench = makeBench();
    const follow = followDiagnosis(bench.store);
    await vi.advanceTimersByTimeAsync(0);
    HeldWorker.answerNext();
    const model = () => selectFindModel(bench.store.getState());
    const enter = (unit: string | undefined) => bench.dispatch('enter-display', { unit: unit ?? '', meanings: ['upstream-loss'], at: '' });
    return { bench, follow, model, enter };
  }

  it('should stay as it was drawn, with the case it was an answer to, until the next is there', async () => {
    const { bench, follow, model, enter } = await answerOnce();
    enter(first);
    HeldWorker.answerNext();
    const before = model();
    expect(before.rows.length).toBeGreaterThan(0);
    enter(second);
    expect(bench.store.getState().diagnosis.state).toBe('working');
    expect(model()).toBe(before);
    HeldWorker.answerNext();
    expect(model()).not.toBe(before);
    expect(model().record).toBe(bench.store.getState().caseRecord);
    expect(model().stale).toBe(false);
    follow.close();
  });

  it('should be held against what is entered, and marked as old, when the next takes its time', async () => {
    const { bench, follow, model, enter } = await answerOnce();
    enter(first);
    HeldWorker.answerNext();
    enter(second);
    await vi.advanceTimersByTimeAsync(110);
    expect(model().stale).toBe(false);
    await vi.advanceTimersByTimeAsync(20);
    expect(model().stale).toBe(true);
    expect(model().record).toBe(bench.store.getState().caseRecord);
    follow.close();
  });

  it('should never stand for a case in which nothing had been seen', async () => {
    const { bench, follow, model, enter } = await answerOnce();
    enter(first);
    expect(model().stale).toBe(true);
    expect(model().record).toBe(bench.store.getState().caseRecord);
    follow.close();
  });
});
