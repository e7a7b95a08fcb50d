import { describe, expect, it } from 'vitest';
import { expectedInformation, type SearchProblem, type SearchResult } from '../../../engine/search/index.ts';
import { allows, breakable, namesOf, solve } from './problems.ts';

/*
 * Source of the circuit: J. de Kleer and B. C. Williams, "Diagnosing multiple faults", Artificial Intelligence 32 (1987), 97-130.
 *
 *     M1 = A·C = X      A1 = X + Y = F        inputs  A = 3, B = 2, C = 2, D = 3, E = 3
 *     M2 = B·D = Y      A2 = Y + Z = G        seen    F = 10 (should be 12), G = 12
 *     M3 = C·E = Z
 *
 * A broken part may give anything.
 */
const parts = ['A1', 'A2', 'M1', 'M2', 'M3'] as const;
const points = ['X', 'Y', 'Z'] as const;
type Point = (typeof points)[number];
type Assignment = Readonly<Record<Point, number>>;
const seenF = 10;
const seenG = 12;

/** Values of X, Y and Z that go with what was seen when these parts are broken. Free values are tried from −30 to 30. */
function assignments(broken: ReadonlySet<string>): readonly Assignment[] {
  const product = (part: string, value: number) => (broken.has(part) ? Array.from({ length: 61 }, (_, i) => i - 30) : [value]);
  const found: Assignment[] = [];
  for (const X of product('M1', 6)) {
    for (const Y of product('M2', 6)) {
      if (!broken.has('A1') && X + Y !== seenF) continue;
      for (const Z of product('M3', 6)) {
        if (broken.has('A2') || Y + Z === seenG) found.push({ X, Y, Z });
      }
    }
  }
  return found;
}

function polybox(minimalOnly: boolean): SearchProblem<boolean> {
  return {
    elements: parts.map((part) => breakable(part, 0.01)),
    maxFaults: parts.length,
    minimalOnly,
    predict: (faults) => assignments(new Set(faults.map((fault) => parts[fault.element] ?? ''))).length > 0,
    observations: [allows('F = 10 and G = 12', (possible) => possible)],
  };
}

function probabilities(problem: SearchProblem<boolean>, result: SearchResult): ReadonlyMap<string, number> {
  return new Map(
    result.hypotheses.flatMap((hypothesis) => {
      const [name] = namesOf(problem, { ...result, hypotheses: [hypothesis] });
      return name === undefined ? [] : [[name, hypothesis.probability] as const];
    }),
  );
}

describe('search, on the polybox', () => {
  // D10. Status: from memory; the hitting sets of the two conflicts {A1, M1, M2} and {A1, A2, M1, M3} agree.
  it('should find the four minimal diagnoses', () => {
    const problem = polybox(true);
    expect(namesOf(problem, solve(problem))).toEqual(['A1', 'A2+M2', 'M1', 'M2+M3']);
  });

  // D11. Status: calculated, not published.
  it('should find 27 of the 32 sets of parts consistent', () => {
    const problem = polybox(false);
    const result = solve(problem);
    expect(result.visited).toBe(32);
    expect(namesOf(problem, result).length).toBe(27);
  });

  // D12. Status: calculated, not published. Each part is broken with probability 0.01, on its own.
  it('should give the minimal diagnoses 0.495, 0.495, 0.005 and 0.005', () => {
    const problem = polybox(true);
    const shares = probabilities(problem, solve(problem));
    expect(shares.get('A1')).toBeCloseTo(0.495, 9);
    expect(shares.get('M1')).toBeCloseTo(0.495, 9);
    expect(shares.get('A2+M2')).toBeCloseTo(0.005, 9);
    expect(shares.get('M2+M3')).toBeCloseTo(0.005, 9);
  });

  // D13. Status: calculated, not published; to 1e-5.
  it('should give the shares over all 27, and those of the single parts', () => {
    const problem = polybox(false);
    const result = solve(problem);
    const shares = probabilities(problem, result);
    expect(shares.get('A1')).toBeCloseTo(0.478026, 5);
    expect(shares.get('M1')).toBeCloseTo(0.478026, 5);
    expect(shares.get('A2+M2')).toBeCloseTo(0.004829, 5);
    expect(shares.get('M2+M3')).toBeCloseTo(0.004829, 5);
    const [a1, a2, m1, m2, m3] = result.modes.map((modes) => modes[0] ?? 0);
    expect(a1).toBeCloseTo(0.49764, 5);
    expect(m1).toBeCloseTo(0.49764, 5);
    expect(m2).toBeCloseTo(0.01961, 5);
    expect(a2).toBeCloseTo(0.01478, 5);
    expect(m3).toBeCloseTo(0.01478, 5);
    const entropy = expectedInformation([...shares].map(([outcome, probability]) => ({ outcome, probability })));
    expect(entropy).toBeCloseTo(1.35945, 5);
  });

  // D14. Status: the figures are calculated; that X is to be measured first is the published conclusion, from memory.
  it('should find measuring X the most informative, with nearly one bit', () => {
    const problem = polybox(true);
    const shares = probabilities(problem, solve(problem));
    const information = (point: Point) =>
      expectedInformation(
        [...shares].map(([name, probability]) => {
          const values = new Set(assignments(new Set(name.split('+'))).map((assignment) => assignment[point]));
          // Every minimal diagnosis settles all three points.
          expect(values.size).toBe(1);
          return { outcome: [...values].join(), probability };
        }),
      );
    expect(information('X')).toBeCloseTo(0.99993, 4);
    expect(information('Y')).toBeCloseTo(0.08079, 4);
    expect(information('Z')).toBeCloseTo(0.04541, 4);
  });
});
