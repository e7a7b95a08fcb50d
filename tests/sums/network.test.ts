import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Network, solveNetwork } from '../../engine/sums/solveNetwork.ts';

/** The plain way: all of Kirchhoff's current laws as one matrix, by Gaussian elimination with pivots. Slow, and easy to check by eye. */
function solvePlainly({ nodes, sources, resistors, draws }: Network): readonly number[] {
  const matrix = Array.from({ length: nodes }, () => new Array<number>(nodes + 1).fill(0));
  const add = (row: number, column: number, value: number) => {
    const line = matrix[row];
    if (line !== undefined && !sources.has(row)) line[column] = (line[column] ?? 0) + value;
  };
  for (const { a, b, ohms } of resistors) {
    const g = 1 / ohms;
    add(a, a, g);
    add(a, b, -g);
    add(b, b, g);
    add(b, a, -g);
  }
  for (let node = 0; node < nodes; node += 1) {
    const held = sources.get(node);
    const line = matrix[node] ?? [];
    if (held === undefined) line[nodes] = -(draws[node] ?? 0);
    else [line[node], line[nodes]] = [1, held];
  }
  for (let column = 0; column < nodes; column += 1) {
    let best = column;
    for (let row = column; row < nodes; row += 1) {
      if (Math.abs(matrix[row]?.[column] ?? 0) > Math.abs(matrix[best]?.[column] ?? 0)) best = row;
    }
    [matrix[column], matrix[best]] = [matrix[best] ?? [], matrix[column] ?? []];
    const pivot = matrix[column] ?? [];
    for (let row = 0; row < nodes; row += 1) {
      const line = matrix[row] ?? [];
      const factor = row === column ? 0 : (line[column] ?? 0) / (pivot[column] ?? 1);
      for (let k = column; k <= nodes && factor !== 0; k += 1) line[k] = (line[k] ?? 0) - factor * (pivot[k] ?? 0);
    }
  }
  return matrix.map((line, row) => (line[nodes] ?? 0) / (line[row] ?? 1));
}

/** Wirings in which every unit is reached: each has a lead from an earlier one, and there are some more. Node 0 is a source. */
const network: fc.Arbitrary<Network> = fc
  .record({
    first: fc.array(fc.tuple(fc.nat(), fc.double({ min: 0.001, max: 5, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })), {
      minLength: 1,
      maxLength: 14,
    }),
    more: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.double({ min: 0.001, max: 5, noNaN: true })), { maxLength: 10 }),
    second: fc.option(fc.double({ min: 20, max: 28, noNaN: true }), { nil: undefined }),
  })
  .map(({ first, more, second }) => {
    const nodes = first.length + 1;
    const resistors = first.map(([from, ohms], index) => ({ a: from % (index + 1), b: index + 1, ohms }));
    for (const [a, b, ohms] of more) if (a % nodes !== b % nodes) resistors.push({ a: a % nodes, b: b % nodes, ohms });
    const sources = new Map([[0, 24]]);
    if (second !== undefined) sources.set(nodes - 1, second);
    return { nodes, sources, resistors, draws: [0, ...first.map(([, , amperes]) => amperes)] };
  });

describe('solveNetwork', () => {
  it('should answer what the plain elimination of the nodal equations answers', () => {
    fc.assert(
      fc.property(network, (one) => {
        const plain = solvePlainly(one);
        const found = solveNetwork(one) ?? [];
        expect(found).toHaveLength(one.nodes);
        found.forEach((voltage, node) => {
          expect(Math.abs(voltage - (plain[node] ?? Number.NaN))).toBeLessThan(1e-6 * Math.max(1, Math.abs(voltage)));
        });
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it('should keep the sum of all currents at every unit', () => {
    fc.assert(
      fc.property(network, ({ nodes, sources, resistors, draws }) => {
        const found = solveNetwork({ nodes, sources, resistors, draws }) ?? [];
        const sum = draws.map((draw) => -draw);
        for (const { a, b, ohms } of resistors) {
          const current = ((found[a] ?? 0) - (found[b] ?? 0)) / ohms;
          sum[b] = (sum[b] ?? 0) + current;
          sum[a] = (sum[a] ?? 0) - current;
        }
        sum.forEach((rest, node) => {
          if (!sources.has(node)) expect(Math.abs(rest)).toBeLessThan(1e-6);
        });
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('should never raise a voltage by more load, in any wiring', () => {
    fc.assert(
      fc.property(network, fc.nat(), fc.double({ min: 0, max: 5, noNaN: true }), (one, which, more) => {
        const at = 1 + (which % (one.nodes - 1));
        const before = solveNetwork(one) ?? [];
        const after = solveNetwork({ ...one, draws: one.draws.map((draw, node) => (node === at ? draw + more : draw)) }) ?? [];
        after.forEach((voltage, node) => {
          expect(voltage).toBeLessThanOrEqual((before[node] ?? 0) + 1e-9);
        });
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('should never waste more in the leads with a thicker one, where all supplies give the same', () => {
    fc.assert(
      fc.property(network, fc.nat(), (given, which) => {
        const one: Network = { ...given, sources: new Map([...given.sources.keys()].map((node) => [node, 24])) };
        const at = which % one.resistors.length;
        const thicker = { ...one, resistors: one.resistors.map((r, index) => (index === at ? { ...r, ohms: r.ohms / 2 } : r)) };
        const lost = (net: Network) => {
          const found = solveNetwork(net) ?? [];
          return net.draws.reduce((sum, draw, node) => sum + (net.sources.has(node) ? 0 : draw * (24 - (found[node] ?? 0))), 0);
        };
        expect(lost(thicker)).toBeLessThanOrEqual(lost(one) + 1e-6);
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it('should know that in a mesh a thicker lead may lower the voltage of a unit that it passes', () => {
    // Source 0, unit 1 without load between it and unit 2, which draws 1 A and has a second feed of 1 Ω.
    const mesh = (ohms: number): Network => ({
      nodes: 3,
      sources: new Map([[0, 24]]),
      resistors: [
        { a: 0, b: 1, ohms: 1 },
        { a: 1, b: 2, ohms },
        { a: 0, b: 2, ohms: 1 },
      ],
      draws: [0, 0, 1],
    });
    const thin = solveNetwork(mesh(2)) ?? [];
    const thick = solveNetwork(mesh(1)) ?? [];
    expect(thin[1]).toBeCloseTo(24 - 0.25, 12);
    expect(thick[1]).toBeCloseTo(24 - 1 / 3, 12);
    expect(thick[2] ?? 0).toBeGreaterThan(thin[2] ?? 0);
  });

  it('should leave out what no source reaches, and take leads of no length', () => {
    const found = solveNetwork({
      nodes: 4,
      sources: new Map([[0, 24]]),
      resistors: [
        { a: 0, b: 1, ohms: 0 },
        { a: 2, b: 3, ohms: 1 },
      ],
      draws: [0, 2, 1, 1],
    });
    expect(found?.[1]).toBeCloseTo(24, 6);
    expect(found?.slice(2)).toEqual([Number.NaN, Number.NaN]);
  });

  it('should take thousands of units in a row in a moment, and say when it would not', () => {
    const nodes = 5_000;
    const resistors = Array.from({ length: nodes - 1 }, (_, index) => ({ a: index, b: index + 1, ohms: 1e-6 }));
    const started = performance.now();
    const found = solveNetwork({ nodes, sources: new Map([[0, 24]]), resistors, draws: new Array<number>(nodes).fill(0.001) });
    // Closed form of a daisy chain: r·I·n(n+1)/2.
    expect(found?.[nodes - 1]).toBeCloseTo(24 - (1e-6 * 0.001 * 4999 * 5000) / 2, 9);
    const all = Array.from({ length: 120 }, (_, a) => Array.from({ length: a }, (__, b) => ({ a, b, ohms: 1 }))).flat();
    expect(solveNetwork({ nodes: 120, sources: new Map([[0, 24]]), resistors: all, draws: [] })).toBeNull();
    expect(performance.now() - started).toBeLessThan(5_000);
  });
});
