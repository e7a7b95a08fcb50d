import type { LinkId, UnitId } from '../base/index.ts';
import { type Arrangement, arrangedChains, type Effect, type Look } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** Whether any of these effects can change the outcome of a look. May say yes where it does not matter, never no where it does. */
export function isLookConcerned(look: Look, effects: readonly Effect[], cabinet: Cabinet, arrangement: Arrangement): boolean {
  if (look.look === 'voltage') {
    return effects.some((effect) => effect.at === 'lead' || effect.at === 'supply');
  }
  if (look.look === 'compare-plugs') {
    return effects.some((effect) => effect.at === 'wiring' && effect.unit === look.unit);
  }
  const isOnLink = (effect: Effect) => 'link' in effect && effect.link === look.link;
  if (look.look === 'compare-fibres' || look.look === 'lamp') {
    return effects.some(isOnLink);
  }
  const ends = endsOf(look.link as LinkId, cabinet, arrangement);
  return effects.some((effect) => {
    switch (effect.at) {
      case 'unit':
      case 'wiring':
      case 'port':
        return ends.units.includes(effect.unit);
      case 'chain-port':
        return ends.chain === effect.chain;
      case 'lead':
      case 'supply':
        return true;
      default:
        return isOnLink(effect);
    }
  });
}

function endsOf(
  link: LinkId,
  cabinet: Cabinet,
  arrangement: Arrangement,
): { readonly units: readonly UnitId[]; readonly chain: string | null } {
  for (const chain of arrangedChains(cabinet, arrangement)) {
    const slot = chain.links.indexOf(link);
    if (slot >= 0) {
      return { units: chain.units.slice(Math.max(0, slot - 1), slot + 1), chain: slot === 0 ? chain.id : null };
    }
  }
  return { units: [], chain: null };
}
