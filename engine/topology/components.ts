/**
 * Strongly connected components of a directed graph (Tarjan 1972, SIAM J. Comput. 1(2), "Depth-first search and linear graph
 * algorithms"), without recursion, since a file may hold a path of thousands of units. Components come out with those that
 * others lead to first; inside a component nodes are in the order in which they were met.
 */
function stronglyConnected<N>(nodes: readonly N[], next: (node: N) => readonly N[]): readonly (readonly N[])[] {
  const index = new Map<N, number>();
  const low = new Map<N, number>();
  const open: N[] = [];
  const isOpen = new Set<N>();
  const components: N[][] = [];

  for (const root of nodes) {
    if (index.has(root)) continue;
    const path = [enter(root)];
    for (let frame = path.at(-1); frame !== undefined; frame = path.at(-1)) {
      const { node, targets } = frame;
      const target = targets[frame.at++];
      if (target === undefined) {
        path.pop();
        leave(node, path.at(-1)?.node);
      } else if (!index.has(target)) {
        path.push(enter(target));
      } else if (isOpen.has(target)) {
        lower(node, index.get(target) ?? 0);
      }
    }
  }
  return components;

  function enter(node: N) {
    index.set(node, index.size);
    low.set(node, index.size - 1);
    open.push(node);
    isOpen.add(node);
    return { node, targets: next(node), at: 0 };
  }

  function leave(node: N, parent: N | undefined) {
    const reach = low.get(node) ?? 0;
    if (parent !== undefined) lower(parent, reach);
    if (reach !== index.get(node)) return;
    const members = open.splice(open.lastIndexOf(node));
    for (const member of members) isOpen.delete(member);
    components.push(members);
  }

  function lower(node: N, to: number) {
    low.set(node, Math.min(low.get(node) ?? to, to));
  }
}

/** The components that are loops: more than one node, or one that leads to itself. */
export function cycles<N>(nodes: readonly N[], next: (node: N) => readonly N[]): readonly (readonly N[])[] {
  return stronglyConnected(nodes, next).filter((members) => members.length > 1 || members.some((node) => next(node).includes(node)));
}

/** Nodes that can be reached from `roots`, the roots included. */
export function reachable<N>(roots: readonly N[], next: (node: N) => readonly N[]): ReadonlySet<N> {
  const seen = new Set(roots);
  const waiting = [...roots];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const target of next(node)) {
      if (!seen.has(target)) {
        seen.add(target);
        waiting.push(target);
      }
    }
  }
  return seen;
}
