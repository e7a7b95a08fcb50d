import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { itemsOf } from './oracle.ts';
import { readTaskCases } from './taskCases.ts';

const tasks = readTaskCases();
const looks = tasks.flatMap((task) => task.looks.map((_look, index) => ({ task, name: task.name, count: index + 1 })));

describe('every look of every sample case', () => {
  it('should be all of them', () => {
    expect(tasks.length).toBeGreaterThanOrEqual(17);
    expect(looks.length).toBeGreaterThanOrEqual(19);
  });

  it.each(looks)(
    'should have the true item in the first group, and nothing that can be told from it: $name, look $count',
    ({ task, count }) => {
      const evidence = { snapshots: task.looks.slice(0, count), circumstances: [...task.circumstances] };
      const { groups, hypotheses } = diagnose(task.cabinet, evidence);
      const first = hypotheses.filter(({ group }) => group === groups[0]?.id).map(({ faults }) => faults.map(({ fault }) => fault));
      const [truth = ''] = itemsOf([task.truth]);
      const alike = itemsOf(task.alikeAfter(count));
      expect(itemsOf(first)).toContain(truth);
      expect(alike).toContain(truth);
      // Pairs that one fault of them explains alone say nothing new.
      const ofTheirSize = first.filter(({ length }) => length === task.truth.length);
      expect(itemsOf(ofTheirSize).filter((items) => !alike.includes(items))).toEqual([]);
    },
  );
});
