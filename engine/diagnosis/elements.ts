import { Recent, type UnitId } from '../base/index.ts';
import { type Circumstance, type Fault, faultModes, type Presence, presences, type SharpenedRates } from '../schema/index.ts';
import type { SearchElement } from '../search/index.ts';
import { itemKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { priorOdds } from './rates.ts';

/** A fault with its presence settled: what a mode of the search stands for. */
export type SettledFault = Fault & { readonly presence: Presence };

/** The things in a cabinet that can be at fault, ready for the search: `faults[e][m]` is what mode m of element e stands for. */
export interface FaultSpace {
  readonly elements: readonly SearchElement[];
  readonly faults: readonly (readonly SettledFault[])[];
  readonly excludes: readonly (readonly [number, number])[];
  /** Key of the item or place that each element belongs to, and the elements of each item. */
  readonly itemOf: readonly string[];
  readonly items: ReadonlyMap<string, readonly number[]>;
  /** Equal for equal spaces of one cabinet. */
  readonly key: string;
}

export interface FaultSpaceOptions {
  readonly circumstances: readonly Circumstance[];
  readonly daysSinceWhole: number;
  /** Wiring mistakes only show at power-up; once the machine ran there are none. */
  readonly withWiringMistakes: boolean;
  /** What confirmed cases made of the assumed rates; left out: nothing. */
  readonly rates?: SharpenedRates | undefined;
}

/**
 * Everything that can be at fault in a cabinet, with prior odds (domain sections 4 and 6). A cable is three elements, since each
 * of its fibres may have a mode of its own: `cable/x` as a whole, `cable/x/outbound`, `cable/x/return`; the whole excludes the two.
 */
export function listFaultSpace(cabinet: Cabinet, options: FaultSpaceOptions): FaultSpace {
  const { circumstances, daysSinceWhole, withWiringMistakes, rates } = options;
  const key = JSON.stringify([circumstances, daysSinceWhole, withWiringMistakes, rates]);
  return recentSpaces.get(cabinet, key, () => ({ ...workOutFaultSpace(cabinet, options), key }));
}

/** From one thing that is seen to the next the fault space is the same. */
const recentSpaces = new Recent<Cabinet, FaultSpace>(4);

function workOutFaultSpace(cabinet: Cabinet, options: FaultSpaceOptions): Omit<FaultSpace, 'key'> {
  const elements: SearchElement[] = [];
  const faults: SettledFault[][] = [];
  const excludes: [number, number][] = [];
  const itemOf: string[] = [];
  const items = new Map<string, number[]>();
  const add = (id: string, modes: readonly [Fault, ...Fault[]]): number => {
    const settled: SettledFault[] = [];
    const searchModes: { id: string; odds: number }[] = [];
    for (const fault of modes) {
      const odds = priorOdds(fault, cabinet.content, options.circumstances, options.daysSinceWhole, options.rates);
      for (const presence of presences) {
        if (odds[presence] > 0) {
          settled.push({ ...fault, presence });
          searchModes.push({ id: `${fault.mode}/${presence}`, odds: odds[presence] });
        }
      }
    }
    const item = itemKey(modes[0]);
    itemOf.push(item);
    items.set(item, [...(items.get(item) ?? []), elements.length]);
    elements.push({ id, modes: searchModes });
    faults.push(settled);
    return elements.length - 1;
  };
  const addItem = ([first, ...others]: readonly Fault[]) => {
    if (first !== undefined) {
      add(itemKey(first), [first, ...others]);
    }
  };

  for (const chain of cabinet.chains) {
    if (chain.units.length > 0) {
      addItem([{ item: 'controller-port', chain: chain.id, mode: 'dead' }]);
    }
    chain.links.forEach((link, index) => {
      const whole = add(`cable/${link}`, [{ item: 'cable', link, mode: 'cut' }]);
      const out = add(`cable/${link}/outbound`, [
        { item: 'cable', link, mode: 'outbound-cut' },
        { item: 'cable', link, mode: 'outbound-dim' },
      ]);
      const back = add(`cable/${link}/return`, [
        { item: 'cable', link, mode: 'return-cut' },
        { item: 'cable', link, mode: 'return-dim' },
      ]);
      excludes.push([whole, out], [whole, back]);
      for (const end of ['upper', 'lower'] as const) {
        addItem(faultModes.plug.map((mode) => ({ item: 'plug', link, end, mode })));
      }
      addItem([{ item: 'route', link, mode: 'kinked' }]);
      const unit = chain.units[index];
      if (unit !== undefined) {
        const isLast = index === chain.units.length - 1;
        addItem(faultModes.board.filter((mode) => !(isLast && mode.startsWith('down-'))).map((mode) => ({ item: 'board', unit, mode })));
      }
    });
  }
  if (cabinet.content.controller !== undefined) {
    addItem([{ item: 'controller', mode: 'all-ports-dead' }]);
  }
  for (const [unit, record] of cabinet.units) {
    if (record.kind === 'supply') {
      addItem(faultModes.supply.map((mode) => ({ item: 'supply', unit, mode })));
    } else {
      addItem([{ item: 'place', unit, mode: 'contact-bad' }]);
      addItem([{ item: 'fuse', unit, mode: 'open' }]);
    }
  }
  for (const { lead } of cabinet.feeds) {
    addItem([{ item: 'lead', lead, mode: 'open' }]);
  }
  for (const [feedback, record] of cabinet.feedbacks) {
    if (record.plugged !== false && cabinet.units.has(record.unit as UnitId)) {
      addItem([{ item: 'feedback', feedback, mode: 'short' }]);
    }
  }
  if (options.withWiringMistakes) {
    addWiringMistakes();
  }
  return { elements, faults, excludes, itemOf, items };

  /** Last, since they have no intermittent twin: so all others stand in pairs, which the search likes. */
  function addWiringMistakes(): void {
    for (const chain of cabinet.chains) {
      for (const link of chain.links) {
        const crossed = add(`cable/${link}/crossed`, [{ item: 'cable', link, mode: 'fibres-crossed' }]);
        elements.forEach(({ id }, index) => {
          if (id === `cable/${link}` || id === `cable/${link}/outbound` || id === `cable/${link}/return`) {
            excludes.push([index, crossed]);
          }
        });
      }
      for (const unit of chain.units) {
        addItem([{ item: 'wiring', unit, mode: 'crossed' }]);
      }
    }
  }
}
