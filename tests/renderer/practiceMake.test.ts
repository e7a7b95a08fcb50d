import { describe, expect, it } from 'vitest';
import { checkCabinet, parseExerciseFile, serializeExercise } from '../../engine/cabinet/index.ts';
import { checkAnswer, type MadeExercise, openExercise, usualTimes } from '../../engine/exercise/index.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { openSeal } from '../../engine/sealing/index.ts';
import {
  allowedOf,
  decideSteps,
  draftOf,
  kindFor,
  knownOf,
  type MakeDraft,
  missingOf,
  newDraft,
  shownAtStart,
  wishOf,
  withKind,
  withSparesOf,
} from '../../renderer/practice/makeDraft.ts';
import { type MakerWorker, makeMakerClient } from '../../renderer/practice/makerClient.ts';
import type { MakerQuestion, MakerReply } from '../../renderer/practice/makerProtocol.ts';
import { answerMaker } from '../../renderer/worker/answerMaker.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';

const { cabinet, topology } = checkCabinet(schoolCabinet);
if (cabinet === null) throw new Error('the school cabinet is not sound');
const cut: Fault = { item: 'cable', link: 'WH3', mode: 'cut' };
const draftWith = (change: Partial<MakeDraft>): MakeDraft => ({
  ...newDraft(new Date('2026-11-26T10:00:00Z'), { faults: [cut] }),
  ...change,
});

async function make(draft: MakeDraft): Promise<readonly MakerReply[]> {
  const shown = shownAtStart(cabinet as NonNullable<typeof cabinet>, draft);
  if (shown === null || cabinet === null) throw new Error('nothing is wrong');
  const replies: MakerReply[] = [];
  const wish = wishOf(draft, schoolCabinet, shown, usualTimes(cabinet));
  await answerMaker({ kind: 'make', wish, decisions: draft.steps, spares: draft.spares }, (reply) => replies.push(reply));
  return replies;
}

async function made(draft: MakeDraft): Promise<MadeExercise> {
  const last = (await make(draft)).at(-1);
  if (last?.kind !== 'made') throw new Error(JSON.stringify(last));
  return last.made;
}

describe('a draft of an exercise', () => {
  it('should say what is missing, all at once', () => {
    const wiring: Fault = { item: 'wiring', unit: 'TB2', mode: 'crossed' };
    expect(missingOf(draftWith({ faults: [], name: ' ' }), cabinet)).toEqual(['no-fault', 'no-title']);
    expect(missingOf(draftWith({ faults: [cut, wiring, { ...cut, link: 'WH5' }] }), null)).toEqual([
      'cabinet-unsound',
      'too-many-faults',
      'mistake-while-running',
    ]);
    const hints = [{ id: 1, text: ' ', minutes: 1 }];
    expect(missingOf(draftWith({ hints, spares: [{ id: 'p1', name: '', count: 1 }] }), cabinet)).toEqual(['spare-unnamed', 'hint-empty']);
    expect(missingOf(draftWith({}), cabinet)).toEqual([]);
  });

  it('should give what complains, everything, nothing, or what was chosen', () => {
    const shown = shownAtStart(cabinet, draftWith({}));
    if (shown === null) throw new Error('nothing shown');
    const known = (displays: MakeDraft['displays'], reports: MakeDraft['reports']) => knownOf(draftWith({ displays, reports }), shown);
    expect(known('complaining', 'complaining')).toMatchObject({ displays: ['TB2', 'BG1'], reports: ['chain1'] });
    expect(known('none', 'none')).toMatchObject({ displays: [], reports: [] });
    expect(known('all', 'all').displays).toHaveLength(cabinet.units.size);
    expect(known(['TB1'], ['chain2'])).toMatchObject({ displays: ['TB1'], reports: ['chain2'] });
  });

  it('should take its words from the kind, until somebody writes his own', () => {
    const power = withKind(draftWith({ task: 'My own task.' }), 'power');
    expect(power).toMatchObject({ name: exerciseKindTexts.power.name, task: 'My own task.', lesson: exerciseKindTexts.power.lesson });
  });

  it.each<[string, Fault[]]>([
    ['neighbours', [cut]],
    ['first-hop', [{ ...cut, link: 'WH1' }]],
    ['one-fibre', [{ item: 'cable', link: 'WH3', mode: 'return-cut' }]],
    ['two-faults', [cut, { ...cut, link: 'WH5' }]],
    ['intermittent', [{ item: 'plug', link: 'WH3', end: 'upper', mode: 'loose', presence: 'intermittent' }]],
    ['power', [{ item: 'fuse', unit: 'TB2', mode: 'open' }]],
    ['place', [{ item: 'route', link: 'WH3', mode: 'kinked' }]],
    ['quiet-unit', [{ item: 'board', unit: 'TB2', mode: 'dead-lit' }]],
  ])('should know what its faults teach: %s', (kind, faults) => {
    expect(kindFor(topology, faults)).toBe(kind);
  });

  it('should take over the spares of the cabinet, each once, and none that is used up', () => {
    const spares = [
      { id: 'a', kind: 'cable' as const, partNumber: 'QE-7704', count: 2 },
      { id: 'b', kind: 'board' as const, designation: '-TB2', count: 0 },
    ];
    const own = [{ id: 'p1', name: 'Fuse', count: 1 }];
    const taken = withSparesOf(own, { ...schoolCabinet, spares });
    expect(taken).toEqual([...own, { id: 'p2', name: 'Cable QE-7704', partNumber: 'QE-7704', count: 2 }]);
    expect(withSparesOf(taken, { ...schoolCabinet, spares })).toEqual(taken);
  });

  it('should forget that an injected fault is gone now: that is drawn from the seed', () => {
    const gone: Fault = { ...cut, presence: 'intermittent', absentNow: true };
    expect(newDraft(new Date(0), { faults: [gone] }).faults).toEqual([{ ...cut, presence: 'intermittent' }]);
  });
});

describe('making from a draft', () => {
  it('should propose steps, then make an exercise that holds, with everything that was decided in it', async () => {
    const proposed = (await make(draftWith({})))[0];
    if (proposed?.kind !== 'proposed') throw new Error('nothing proposed');
    const steps = proposed.proposal.steps;
    const act = steps.find(({ step }) => step.do === 'act' && step.acts.length > 0);
    const idle = steps.find(({ allowed, key }) => !allowed && key !== act?.key);
    if (idle === undefined || act === undefined) throw new Error('no such steps');
    const draft = draftWith({
      steps: { [idle.key]: { allowed: true, minutes: 7.5 }, [act.key]: { allowed: true, most: 2, spare: 'p1' } },
      spares: [{ id: 'p1', name: ' Cable ', count: 3 }],
      hints: [{ id: 1, text: 'Look twice.', minutes: 3 }],
      limits: { minutes: 90, steps: null },
      times: { openMinutes: 4, isolateMinutes: null, bootMinutes: null },
      circumstances: ['heat'],
      story: 'It was pinched.',
    });
    const { exercise, answer } = await made(draft);
    expect(exercise).toMatchObject({
      name: draft.name,
      limits: { minutes: 90 },
      hints: [{ text: 'Look twice.', minutes: 3 }],
      spares: [{ id: 'p1', name: 'Cable', count: 3 }],
      given: { circumstances: [{ kind: 'heat' }] },
      times: { ...usualTimes(cabinet), openMinutes: 4 },
    });
    const stepOf = (key: string) => exercise.steps.find(({ step }) => JSON.stringify(step) === key);
    expect(stepOf(idle.key)).toMatchObject({ minutes: 7.5 });
    expect(stepOf(act.key)).toMatchObject({ most: 2, spare: 'p1' });
    expect(answer).toMatchObject({ faults: [cut], story: 'It was pinched.' });
    // It opens again as a file.
    expect(parseExerciseFile(serializeExercise(exercise)).ok).toBe(true);
    // A spare that was taken out again is no longer asked for.
    expect(allowedOf(decideSteps(steps, draft.steps), []).every((step) => !('spare' in step))).toBe(true);
  });

  it('should refuse, after proposing, what no allowed step can decide', async () => {
    const [proposed] = await make(draftWith({}));
    if (proposed?.kind !== 'proposed') throw new Error('nothing proposed');
    const none = Object.fromEntries(proposed.proposal.steps.slice(1).map(({ key }) => [key, { allowed: false }]));
    const replies = await make(draftWith({ steps: none }));
    expect(replies.map(({ kind }) => kind)).toEqual(['proposed', 'refused']);
    expect(replies.at(-1)).toMatchObject({ problems: [{ code: 'exercise-undecided' }] });
  });

  it('should seal the answer so that its passphrase opens it, and nothing of it stands outside', async () => {
    const { exercise, answer } = await made(draftWith({ story: 'A tool box was set down on it.' }));
    const replies: MakerReply[] = [];
    await answerMaker({ kind: 'seal', exercise, answer, passphrase: 'a b' }, (reply) => replies.push(reply));
    const [sealed] = replies;
    if (sealed?.kind !== 'sealed') throw new Error('not sealed');
    const text = serializeExercise(sealed.exercise);
    expect(text).not.toContain('tool box');
    const opened = await openSeal(sealed.exercise.sealed, 'a b');
    const { game } = openExercise(sealed.exercise);
    expect(opened.ok && game !== null && checkAnswer(game, opened.value)).toEqual([]);
  }, 60_000);

  it('should go on from a generated exercise', async () => {
    const replies: MakerReply[] = [];
    const wish = { cabinet: schoolCabinet, seed: 1, texts: exerciseKindTexts };
    await answerMaker({ kind: 'generate', wish, count: 3 }, (reply) => replies.push(reply));
    expect(replies.at(-1)).toEqual({ kind: 'generated' });
    const sets = replies.flatMap((reply) => (reply.kind === 'tried' && reply.made !== null ? [reply.made] : []));
    expect(new Set(sets.map(({ exercise }) => exercise.kind)).size).toBe(3);
    for (const one of sets) {
      const again = await made(newDraft(new Date(0), draftOf(one)));
      expect(again.exercise.figures).toEqual(one.exercise.figures);
      // In the order of the form, which is another.
      const stepsOf = ({ exercise }: MadeExercise) => exercise.steps.map(({ step, minutes }) => JSON.stringify([step, minutes])).sort();
      expect(stepsOf(again)).toEqual(stepsOf(one));
      expect(again.answer.faults).toEqual(one.answer.faults);
    }
  });
});

describe('the client of the maker', () => {
  function workers() {
    const started: { questions: MakerQuestion[]; ended: boolean; tell: (reply: MakerReply) => void }[] = [];
    const start = (): MakerWorker => {
      const record = { questions: [] as MakerQuestion[], ended: false, tell: (_reply: MakerReply) => undefined as undefined };
      const worker: MakerWorker = {
        postMessage: (question) => void record.questions.push(question),
        terminate: () => {
          record.ended = true;
        },
        onmessage: null,
      };
      record.tell = (data) => {
        worker.onmessage?.({ data } as MessageEvent<MakerReply>);
      };
      started.push(record);
      return worker;
    };
    return { started, start };
  }
  const question: MakerQuestion = { kind: 'generate', count: 1, wish: { cabinet: schoolCabinet, seed: 1, texts: exerciseKindTexts } };

  it('should end a worker that is still busy with what nobody wants any more, and use an idle one again', () => {
    const { started, start } = workers();
    const client = makeMakerClient(start);
    const heard: string[] = [];
    const hear = (name: string) => (reply: MakerReply) => heard.push(`${name} ${reply.kind}`);
    client.ask(question, hear('first'));
    client.ask(question, hear('second'));
    expect(started.map(({ ended }) => ended)).toEqual([true, false]);
    started[1]?.tell({ kind: 'progress', share: 0.5 });
    started[1]?.tell({ kind: 'generated' });
    client.ask(question, hear('third'));
    expect(started).toHaveLength(2);
    client.stop();
    expect(started[1]?.ended).toBe(true);
    expect(heard).toEqual(['second progress', 'second generated']);
  });
});
