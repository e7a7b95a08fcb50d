import { DirectedGraph } from 'graphology';
import { stronglyConnectedComponents } from 'graphology-components';
import { bfsFromNode } from 'graphology-traversal';
import type { CabinetContent, Fault } from '../../../engine/schema/index.ts';

/**
 * A cabinet as two plain graphs of its smallest parts, for a general graph library. A fault takes nodes out; what is left of the
 * ways of power and light is then a question about graphs only.
 */

/** The nodes that a fault takes out of the graphs. */
function nodesOf(content: CabinetContent, fault: Fault): readonly string[] {
  const fibres = (link: string, ...parts: readonly string[]) =>
    parts.flatMap((part) => [`${link} ${part} outbound`, `${link} ${part} return`]);
  switch (fault.item) {
    case 'cable': {
      const fibre = /^(outbound|return)-/.exec(fault.mode)?.[1];
      return fibre === undefined ? fibres(fault.link, 'fibre') : [`${fault.link} fibre ${fibre}`];
    }
    case 'plug':
      return fibres(fault.link, fault.end);
    case 'route':
      return fibres(fault.link, 'route');
    case 'board':
      if (fault.mode === 'dead-dark' || fault.mode === 'dead-lit') return [fault.unit];
      if (fault.mode === 'up-port') return [`${fault.unit} up-rx`, `${fault.unit} up-tx`];
      if (fault.mode === 'down-port') return [`${fault.unit} down-rx`, `${fault.unit} down-tx`];
      return [`${fault.unit} ${fault.mode}`];
    case 'fuse':
    case 'place':
      return [fault.unit];
    case 'wiring':
      return ['up-rx', 'up-tx', 'down-rx', 'down-tx'].map((part) => `${fault.unit} ${part}`);
    case 'controller-port':
      return [`port ${fault.chain}`];
    case 'controller':
      return (content.chains ?? []).map((chain) => `port ${chain.id}`);
    case 'lead':
      return [`lead ${fault.lead}`];
    case 'supply':
      return [fault.unit];
    case 'feedback': {
      const cable = content.feedbacks?.find((feedback) => feedback.id === fault.feedback);
      const unit = content.units?.find((u) => u.id === cable?.unit);
      const effect = content.types?.find((type) => type.id === unit?.type)?.behaviour?.shortEffect;
      return unit === undefined || cable?.plugged === false || effect === 'code-linked' ? [] : [unit.id];
    }
  }
}

/** Units that get 24 V: found by walking the leads from the supplies that work. A unit passes power on whatever ails it; where no lead is documented, all have it. */
export function poweredUnits(content: CabinetContent, faults: readonly Fault[]): ReadonlySet<string> {
  const graph = new DirectedGraph();
  const units = content.units ?? [];
  for (const { id } of units) graph.addNode(id);
  for (const { id, from, to } of content.leads ?? []) {
    if (from === undefined || to === undefined) continue;
    graph.addNode(`lead ${id}`);
    graph.addEdge(from.unit, `lead ${id}`);
    graph.addEdge(`lead ${id}`, to.unit);
  }
  for (const fault of faults) {
    if (fault.item !== 'lead' && fault.item !== 'supply') continue;
    for (const node of nodesOf(content, fault)) if (graph.hasNode(node)) graph.dropNode(node);
  }
  const powered = new Set<string>();
  const isDocumented = (content.leads ?? []).some(({ from, to }) => from !== undefined && to !== undefined);
  for (const { id, kind } of units) {
    if (!isDocumented) powered.add(id);
    else if (kind === 'supply' && graph.hasNode(id)) bfsFromNode(graph, id, (node) => void powered.add(node));
  }
  return new Set(units.filter((unit) => unit.kind !== 'supply' && powered.has(unit.id)).map((unit) => unit.id));
}

/**
 * Units that the controller reaches there and back: those in one strongly connected component with its port. Muting plays no part,
 * for it only silences links of which a fibre is out already.
 */
export function reachedUnits(content: CabinetContent, chain: string, faults: readonly Fault[]): ReadonlySet<string> {
  const graph = new DirectedGraph();
  const node = (name: string) => graph.mergeNode(name)[0];
  const way = (...names: readonly string[]) => {
    names.forEach((name, i) => {
      node(name);
      const before = names[i - 1];
      if (before !== undefined) graph.mergeEdge(before, name);
    });
  };
  for (const port of content.chains ?? []) node(`port ${port.id}`);
  for (const { id: link, upper, lower } of content.links ?? []) {
    if (upper === undefined || lower === undefined) continue;
    const isPort = 'chain' in upper;
    const above = isPort ? `port ${upper.chain}` : upper.unit;
    const out = isPort ? [above] : [above, `${above} down-tx`];
    const back = isPort ? [above] : [`${above} down-rx`, above];
    const part = (direction: string) => ['upper', 'fibre', 'route', 'lower'].map((name) => `${link} ${name} ${direction}`);
    way(...out, ...part('outbound'), `${lower.unit} up-rx`, lower.unit);
    way(lower.unit, `${lower.unit} up-tx`, ...part('return').reverse(), ...back);
  }
  const powered = poweredUnits(content, faults);
  const unpowered = (content.units ?? []).filter((unit) => unit.kind !== 'supply' && !powered.has(unit.id)).map((unit) => unit.id);
  for (const gone of [...unpowered, ...faults.flatMap((fault) => nodesOf(content, fault))]) if (graph.hasNode(gone)) graph.dropNode(gone);
  const port = `port ${chain}`;
  const component = stronglyConnectedComponents(graph).find((nodes) => nodes.includes(port)) ?? [];
  const isUnit = new Set((content.units ?? []).map((unit) => unit.id));
  return new Set(component.filter((name) => isUnit.has(name)));
}
