import { describe, expect, it } from 'vitest';
import type { FaultChoice, SearchProblem } from '../../../engine/search/index.ts';
import { allows, breakable, namesOf, solve } from './problems.ts';

type Bit = 0 | 1;
const bits: readonly Bit[] = [0, 1];
const xor = (a: Bit, b: Bit): Bit => (a === b ? 0 : 1);
const and = (a: Bit, b: Bit): Bit => (a === 1 && b === 1 ? 1 : 0);
const or = (a: Bit, b: Bit): Bit => (a === 1 || b === 1 ? 1 : 0);

/** The gates in order of evaluation: two half adders and an or. */
const gates = ['X1', 'A1', 'X2', 'A2', 'O1'] as const;
type Gate = (typeof gates)[number];

/** Sum and carry of the full adder when these gates give what `forced` says instead of what they should. */
function adder([a, b, c]: readonly [Bit, Bit, Bit], forced: Partial<Record<Gate, Bit>>): string {
  const x1 = forced.X1 ?? xor(a, b);
  const a1 = forced.A1 ?? and(a, b);
  const x2 = forced.X2 ?? xor(x1, c);
  const a2 = forced.A2 ?? and(x1, c);
  return `sum ${x2}, carry ${forced.O1 ?? or(a1, a2)}`;
}

const gateOf = (fault: FaultChoice): Gate => gates[fault.element] ?? 'X1';

describe('search, on a full adder', () => {
  // D2. Source: R. Reiter, "A theory of diagnosis from first principles", Artificial Intelligence 32 (1987), 57-95. A broken gate may
  // give anything (weak fault model). Status: from memory; brute force agrees.
  it('should find the three minimal diagnoses of inputs 1, 0, 1 with sum 1 and carry 0', () => {
    const problem: SearchProblem<ReadonlySet<string>> = {
      elements: gates.map((gate) => breakable(gate, 0.01)),
      maxFaults: gates.length,
      minimalOnly: true,
      // All outputs that are possible when the broken gates give any bit.
      predict: (faults) => {
        let ways: readonly Partial<Record<Gate, Bit>>[] = [{}];
        for (const fault of faults) ways = ways.flatMap((way) => bits.map((bit) => ({ ...way, [gateOf(fault)]: bit })));
        return new Set(ways.map((way) => adder([1, 0, 1], way)));
      },
      observations: [allows('outputs', (possible) => possible.has('sum 1, carry 0'))],
    };
    expect(namesOf(problem, solve(problem))).toEqual(['A2+X2', 'O1+X2', 'X1']);
  });

  // D4. Source: CSPLib problem 042 (diagnosis), specification and input data: inputs 0, 0, 0, outputs S = 1, C = 0, stuck-at faults.
  // Status: read. Its gate 1 is X1 here, its gate 3 is X2.
  it('should find exactly two single stuck-at faults for inputs 0, 0, 0 with sum 1 and carry 0', () => {
    const problem: SearchProblem<string> = {
      elements: gates.map((id) => ({ id, modes: bits.map((bit) => ({ id: String(bit), odds: 0.01 })) })),
      maxFaults: 1,
      predict: (faults) => adder([0, 0, 0], Object.fromEntries(faults.map((fault) => [gateOf(fault), bits[fault.mode] ?? 0]))),
      observations: [allows('outputs', (outputs) => outputs === 'sum 1, carry 0')],
    };
    const result = solve(problem);
    expect(namesOf(problem, result, true)).toEqual(['X1/1', 'X2/1']);
    expect(result.visited).toBe(11);
  });
});
