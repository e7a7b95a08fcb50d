import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { itemsOf } from './oracle.ts';
import { readTaskCases } from './taskCases.ts';

const tasks = readTaskCases();

describe('the first look of every sample case', () => {
  it('should be all of them', () => expect(tasks.length).toBeGreaterThanOrEqual(17));

  it.each(tasks)('should have the true item in the first group, and nothing that can be told from it: $name', (task) => {
    const { groups, hypotheses } = diagnose(task.cabinet, { snapshots: [task.seen], circumstances: [...task.circumstances] });
    const first = hypotheses.filter(({ group }) => group === groups[0]?.id).map(({ faults }) => faults.map(({ fault }) => fault));
    const [truth = ''] = itemsOf([task.truth]);
    const alike = itemsOf(task.alike);
    expect(itemsOf(first)).toContain(truth);
    expect(alike).toContain(truth);
    // Pairs that one fault of them explains alone say nothing new.
    const ofTheirSize = first.filter(({ length }) => length === task.truth.length);
    expect(itemsOf(ofTheirSize).filter((items) => !alike.includes(items))).toEqual([]);
  });
});
