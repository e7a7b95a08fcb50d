import type { LinkId, UnitId } from '../base/index.ts';
import { type Arrangement, arrangedChains, type Effect, type Look } from '../simulation/index.ts';
import { hasMinimumVoltage } from '../sums/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { fedThrough } from './compiled.ts';

/** Whether any of these effects can change the outcome of a look. May say yes where it does not matter, never no where it does. */
export function isLookConcerned(look: Look, effects: readonly Effect[], cabinet: Cabinet, arrangement: Arrangement): boolean {
  if (look.look === 'voltage') {
    return effects.some((effect) => mayFeed(effect, [look.unit as UnitId], cabinet));
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
        return mayFeed(effect, ends.units, cabinet);
      default:
        return isOnLink(effect);
    }
  });
}

/** Whether 24 V may come to one of these units by a lead or from a supply, however the leads are. */
function mayFeed(effect: Effect, units: readonly UnitId[], cabinet: Cabinet): boolean {
  if (effect.at !== 'lead' && effect.at !== 'supply') {
    return false;
  }
  // Where voltages decide, a lead or supply that goes out of use relieves others.
  const fed = hasMinimumVoltage(cabinet) ? null : fedThrough(effect, cabinet);
  return fed === null || units.some((unit) => fed.has(unit));
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
