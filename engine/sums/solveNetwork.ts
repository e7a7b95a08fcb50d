/** A conductor between two nodes, by their numbers. */
export interface Resistor {
  readonly a: number;
  readonly b: number;
  /** Zero or more. */
  readonly ohms: number;
}

/** A direct-current network: nodes are numbered from 0, `sources` hold some of them at a voltage, `draws` are currents taken out. */
export interface Network {
  readonly nodes: number;
  readonly sources: ReadonlyMap<number, number>;
  readonly resistors: readonly Resistor[];
  readonly draws: readonly number[];
}

/** A joint of no length still has some contact resistance; with none at all two sources in parallel would have no answer. */
const leastOhms = 1e-9;
/** A node with more neighbours than this is no longer a cabinet's wiring; working on would take minutes. */
const mostNeighbours = 60;

/**
 * Voltage of every node; NaN for one that no source reaches. Null when the network is too meshed to be solved in a moment.
 *
 * Kirchhoff's current law at every node, solved by star-mesh transformation (Rosen 1924): a node that is no source is taken out, its
 * neighbours i and k being joined by g_i·g_k/Σg, and its draw is shared among them as g_i/Σg; its own voltage follows from theirs
 * afterwards. All sums are of terms of one sign, so nothing cancels. Nodes with few neighbours first: a tree takes one pass.
 */
export function solveNetwork({ nodes, sources, resistors, draws }: Network): readonly number[] | null {
  const conductances = Array.from({ length: nodes }, () => new Map<number, number>());
  const join = (a: number, b: number, g: number) => {
    conductances[a]?.set(b, (conductances[a]?.get(b) ?? 0) + g);
    conductances[b]?.set(a, (conductances[b]?.get(a) ?? 0) + g);
  };
  for (const { a, b, ohms } of resistors) if (a !== b) join(a, b, 1 / Math.max(ohms, leastOhms));

  const draw = Array.from({ length: nodes }, (_, node) => draws[node] ?? 0);
  const left = new Set(Array.from({ length: nodes }, (_, node) => node).filter((node) => !sources.has(node)));
  const removed: { readonly node: number; readonly around: ReadonlyMap<number, number>; readonly sum: number }[] = [];
  for (const queue = makeQueue(conductances, left); ; ) {
    const node = queue.next();
    if (node === null) break;
    const around = conductances[node] ?? new Map<number, number>();
    if (around.size > mostNeighbours) return null;
    left.delete(node);
    let sum = 0;
    for (const g of around.values()) sum += g;
    removed.push({ node, around, sum });
    const neighbours = [...around];
    neighbours.forEach(([i, g], at) => {
      conductances[i]?.delete(node);
      draw[i] = (draw[i] ?? 0) + ((draw[node] ?? 0) * g) / sum;
      for (const [k, h] of neighbours.slice(at + 1)) join(i, k, (g * h) / sum);
    });
    for (const [i] of neighbours) queue.touch(i);
  }

  const voltages = Array.from({ length: nodes }, (_, node) => sources.get(node) ?? Number.NaN);
  for (const { node, around, sum } of removed.reverse()) {
    let inflow = 0;
    for (const [i, g] of around) inflow += (voltages[i] ?? Number.NaN) * g;
    voltages[node] = around.size === 0 ? Number.NaN : (inflow - (draw[node] ?? 0)) / sum;
  }
  return voltages;
}

/** Nodes by their number of neighbours, fewest first, as it stands when they are asked for. */
function makeQueue(conductances: readonly ReadonlyMap<number, number>[], left: ReadonlySet<number>) {
  const bySize: number[][] = [];
  const add = (node: number) => {
    const size = conductances[node]?.size ?? 0;
    const list = bySize[size] ?? [];
    bySize[size] = list;
    list.push(node);
  };
  for (const node of left) add(node);
  return {
    touch: (node: number) => {
      if (left.has(node)) add(node);
    },
    next: (): number | null => {
      for (let size = 0; size < bySize.length; size += 1) {
        const list = bySize[size];
        for (let node = list?.pop(); node !== undefined; node = list?.pop()) {
          // A node stands in the list of every size that it has had; only the present one counts.
          if (left.has(node) && conductances[node]?.size === size) return node;
        }
      }
      return null;
    },
  };
}
