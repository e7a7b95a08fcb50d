import { describe, expect, it } from 'vitest';
import type { SearchProblem } from '../../../engine/search/index.ts';
import { allows, breakable, namesOf, solve } from './problems.ts';

/** Elements named in the conflicts; a set of faults explains a conflict when it hits it. */
function hitting(conflicts: readonly string[]): SearchProblem<ReadonlySet<string>> {
  const names = [...new Set(conflicts.join(''))].sort();
  return {
    elements: names.map((name) => breakable(name, 0.01)),
    maxFaults: names.length,
    minimalOnly: true,
    predict: (faults) => new Set(faults.map((fault) => names[fault.element] ?? '')),
    observations: conflicts.map((conflict) => allows(conflict, (broken) => [...conflict].some((name) => broken.has(name)))),
  };
}

describe('search, on hitting sets', () => {
  // D1. Source: R. Reiter, "A theory of diagnosis from first principles", Artificial Intelligence 32 (1987), 57-95, the example of the
  // hitting-set tree. Status: from memory, the paper's body was not read; brute force over all 63 subsets agrees.
  it('should find the six minimal hitting sets of the textbook example', () => {
    const problem = hitting(['245', '123', '135', '246', '24', '235', '16']);
    expect(namesOf(problem, solve(problem))).toEqual(['1+2', '1+3+4', '1+4+5', '2+3+6', '2+5+6', '3+4+6']);
  });

  // The check of the row above that needs no memory: all 63 non-empty subsets, tried one by one.
  it('should find the same as trying every subset', () => {
    const conflicts = ['245', '123', '135', '246', '24', '235', '16'];
    const subsets = Array.from({ length: 63 }, (_, bits) => [...'123456'].filter((_name, i) => ((bits + 1) >> i) & 1));
    const hits = subsets.filter((set) => conflicts.every((conflict) => set.some((name) => conflict.includes(name))));
    const minimal = hits.filter((set) => !hits.some((other) => other !== set && other.every((name) => set.includes(name))));
    const problem = hitting(conflicts);
    expect(namesOf(problem, solve(problem))).toEqual(minimal.map((set) => set.join('+')).sort());
  });

  // D5. Source: a public worksheet on diagnosis. Status: read.
  it('should find {B} and {A, C} for the conflicts {A, B} and {B, C}', () => {
    const problem = hitting(['AB', 'BC']);
    expect(namesOf(problem, solve(problem))).toEqual(['A+C', 'B']);
  });
});
