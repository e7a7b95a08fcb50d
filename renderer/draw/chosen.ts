import type { Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import type { AppState } from '../state/appState.ts';

/** How a choice changes what is chosen. */
export type ChooseHow = 'only' | 'toggle' | 'add';

/** Ids of what is chosen that is still there. */
export function chosenThings({ draw, checked: { topology } }: Pick<AppState, 'draw' | 'checked'>): readonly string[] {
  return draw.chosen.filter((id) => isThing(topology, id));
}

function isThing({ units, links, leads, content, chainById }: Topology, id: string): boolean {
  const maps: readonly ReadonlyMap<string, unknown>[] = [units, links, leads, chainById];
  return content.controller?.id === id || maps.some((map) => map.has(id));
}

export function changeChosen(chosen: readonly string[], ids: readonly string[], how: ChooseHow): readonly string[] {
  if (how === 'only') return ids;
  const others = chosen.filter((id) => !ids.includes(id));
  const allThere = ids.every((id) => chosen.includes(id));
  return how === 'toggle' && allThere ? others : [...others, ...ids];
}

/** Everything that stands on the drawing and can be chosen at once: all units. */
export function everyUnit(topology: Topology): readonly string[] {
  return inReadingOrder(topology);
}

/** The units of the chains on which something chosen lies; `part` takes only what lies on one side of it, with itself. */
export function alongChain(topology: Topology, chosen: readonly string[], part: 'all' | 'upstream' | 'downstream'): readonly string[] {
  const chains: readonly { readonly id: string; readonly units: readonly string[]; readonly links: readonly string[] }[] = topology.chains;
  return chains.flatMap(({ id, units, links }) => {
    const at = chosen.flatMap((one) => {
      const unit = units.indexOf(one);
      if (unit >= 0) return [{ from: unit, to: unit }];
      const link = links.indexOf(one);
      if (link >= 0) return [{ from: link, to: link - 1 }];
      return one === id ? [{ from: 0, to: units.length - 1 }] : [];
    });
    if (at.length === 0) return [];
    if (part === 'all') return units;
    if (part === 'upstream') return units.slice(0, Math.max(...at.map(({ to }) => to)) + 1);
    return units.slice(Math.min(...at.map(({ from }) => from)));
  });
}
