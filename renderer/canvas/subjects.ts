import type { LinkId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { Box, Placement } from './placement.ts';

/** Where a unit, link, chain, lead or feedback cable is drawn, by its id. */
export function findSubject(subject: string, topology: Topology, placement: Placement): Box | null {
  const unitBox = (unit: string | undefined) => [...placement.units].find(([id]) => id === unit)?.[1] ?? null;
  const own = unitBox(subject);
  if (own) return own;
  for (const chain of topology.chains) {
    // A text that is no link's id is simply not found.
    const index = chain.links.indexOf(subject as LinkId);
    if (index >= 0) return joined(unitBox(chain.units[index - 1]) ?? placement.controller, unitBox(chain.units[index]));
    if (chain.id === subject) return placement.controller;
  }
  const feed = topology.feeds.find(({ lead }) => lead === subject);
  if (feed) return unitBox(feed.to);
  const feedback = [...topology.feedbacks.values()].find(({ id }) => id === subject);
  return feedback ? unitBox(feedback.unit) : null;
}

function joined(a: Box | null, b: Box | null): Box | null {
  if (!a || !b) return a ?? b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return { x, y, width: Math.max(a.x + a.width, b.x + b.width) - x, height: Math.max(a.y + a.height, b.y + b.height) - y };
}
