import type { Plan } from './plan.ts';

/** What the later readings of a repeat add: each prediction that no earlier one was equal to counts once. */
export function laterLog(plan: Plan, indices: readonly number[], predict: (observation: number) => number): number {
  const known = new Set<number>();
  let log = 0;
  indices.forEach((index, at) => {
    const prediction = predict(index);
    log += at === 0 || known.has(prediction) ? 0 : (plan.observations[index]?.logFactors[prediction] ?? 0);
    known.add(prediction);
  });
  return log;
}
