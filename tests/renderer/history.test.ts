import { describe, expect, it } from 'vitest';
import { emptyHistory, popFuture, popPast, pushStep, type UndoStep } from '../../renderer/state/history.ts';

const step = (name: string, mergeKey: string | null = null): UndoStep => ({
  name,
  mergeKey,
  subject: null,
  patches: [{ op: 'replace', path: ['x'], value: name }],
  inverse: [{ op: 'replace', path: ['x'], value: `before ${name}` }],
});

describe('the history', () => {
  it('should join what is typed in one field to one step, taken back last first', () => {
    const history = pushStep(pushStep(pushStep(emptyHistory, step('a', 'field')), step('b', 'field')), step('c', 'other'));
    expect(history.past.map(({ name }) => name)).toEqual(['b', 'c']);
    expect(history.past[0]?.patches.map((patch) => patch.value)).toEqual(['a', 'b']);
    expect(history.past[0]?.inverse.map((patch) => patch.value)).toEqual(['before b', 'before a']);
  });

  it('should not join to a step that was redone', () => {
    const undone = popPast(pushStep(emptyHistory, step('a', 'field')));
    const redone = undone && popFuture(undone.history);
    expect(pushStep(redone?.history ?? emptyHistory, step('b', 'field')).past.map(({ name }) => name)).toEqual(['a', 'b']);
  });

  it('should forget what could be redone when something new is done, and nothing else', () => {
    const two = pushStep(pushStep(emptyHistory, step('a')), step('b'));
    const back = popPast(two);
    expect(back?.history.future.map(({ name }) => name)).toEqual(['b']);
    expect(pushStep(back?.history ?? emptyHistory, step('c'))).toMatchObject({ past: [{ name: 'a' }, { name: 'c' }], future: [] });
    expect(popPast(emptyHistory)).toBeNull();
    expect(popFuture(emptyHistory)).toBeNull();
  });
});
