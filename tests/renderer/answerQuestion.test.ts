import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseCaseFile } from '../../engine/cabinet/index.ts';
import { makeAnswerer } from '../../renderer/worker/answerQuestion.ts';
import type { DiagnosisReply } from '../../renderer/worker/protocol.ts';
import { rehearsing } from '../../renderer/worker/rehearse.ts';

const opened = parseCaseFile(readFileSync(new URL('../../sample-cabinets/three-units.1.case.json', import.meta.url)));
if (!opened.ok) throw new Error('the sample does not open');
const { cabinet: content, evidence } = opened.value;

/** An answerer whose clock moves on by itself, so that every slice is short, and whose later tasks run when told to. */
function makeBench(rehearsal?: Iterator<void>) {
  const replies: DiagnosisReply[] = [];
  const tasks: (() => void)[] = [];
  let now = 0;
  const answer = makeAnswerer({
    clock: () => {
      now += 9;
      return now;
    },
    later: (task) => void tasks.push(task),
    ...(rehearsal ? { rehearsal } : {}),
  });
  const runAll = () => {
    let slices = 0;
    for (let task = tasks.shift(); task; task = tasks.shift()) {
      task();
      slices += 1;
    }
    return slices;
  };
  const ask = (revision: number) =>
    answer({ revision, content: revision === 1 ? content : null, evidence }, (reply) => void replies.push(reply));
  const kinds = () =>
    replies.filter(({ kind }) => kind !== 'progress').map((reply) => `${reply.kind} ${'revision' in reply ? reply.revision : ''}`);
  return { ask, runAll, tasks, kinds, replies };
}

describe('makeAnswerer', () => {
  it('should answer at once, then say what to do next, and say it better until it is settled', () => {
    const { ask, runAll, kinds, replies } = makeBench();
    ask(1);
    expect(kinds()).toEqual(['answer 1']);
    expect(runAll()).toBeGreaterThan(3);
    const plans = replies.flatMap((reply) => (reply.kind === 'plan' ? [reply] : []));
    expect(kinds()).toEqual(['answer 1', ...plans.map(() => 'plan 1')]);
    expect(plans.length).toBeGreaterThan(1);
    const shares = plans.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.filter((share) => share === 1)).toEqual([1]);
    expect(shares[shares.length - 1]).toBe(1);
    expect(plans[0]?.plan.steps.length).toBeGreaterThan(2);
  });

  it('should rehearse once, in pieces, when the first plan is settled, and say nothing of it', () => {
    let pieces = 0;
    function* work() {
      for (let piece = 0; piece < 5; piece += 1) {
        yield;
        pieces += 1;
      }
    }
    const { ask, runAll, tasks, kinds } = makeBench(work());
    ask(1);
    ask(2);
    expect(pieces).toBe(0);
    while (pieces < 2) tasks.shift()?.();
    // A question puts it off, and it goes on where it stood.
    ask(3);
    const before = kinds().length;
    tasks.shift()?.();
    tasks.shift()?.();
    expect(pieces).toBe(2);
    runAll();
    expect(pieces).toBe(5);
    expect(
      kinds()
        .slice(before - 1)
        .every((kind) => kind === 'answer 3' || kind === 'plan 3'),
    ).toBe(true);
    expect(tasks).toHaveLength(0);
  });

  it('should rehearse whole diagnoses and plans of a sound cabinet', () => {
    let pieces = 0;
    for (const _ of rehearsing()) pieces += 1;
    expect(pieces).toBeGreaterThan(20);
  });

  it('should tell progress ten times a second at most, since each telling redraws the page', () => {
    const { ask, replies } = makeBench();
    ask(1);
    const answer = replies.find((reply) => reply.kind === 'answer');
    const told = replies.filter(({ kind }) => kind === 'progress').length;
    expect(told).toBeGreaterThan(0);
    expect(told).toBeLessThanOrEqual((answer?.milliseconds ?? 0) / 100);
  });

  it('should leave off planning as soon as something newer is asked', () => {
    const { ask, runAll, tasks, kinds } = makeBench();
    ask(1);
    tasks.shift()?.();
    ask(2);
    runAll();
    const after = kinds().slice(kinds().indexOf('answer 2') + 1);
    expect(new Set(after)).toEqual(new Set(['plan 2']));
  });
});
