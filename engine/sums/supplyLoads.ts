import type { UnitId } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { type FeedValue, nominalVolts, type SolvedFeed, usualVolts } from './feedNetwork.ts';
import { isBelow } from './lowVoltage.ts';
import { assumed, computed, documented, type MissingFigure, type SumTerm, unknown } from './terms.ts';
import type { Loading, SupplyLoad } from './types.ts';
import { type Amperes, amperes, given, loadAmperes, type Volts } from './units.ts';

/** What every supply gives, steadily and at switching on, against its ratings; `solved` and `atSwitchOn` are the wiring at both. */
export function sumSupplies(
  topology: Topology,
  solved: SolvedFeed,
  atSwitchOn: SolvedFeed,
): { readonly supplies: readonly SupplyLoad[]; readonly missing: readonly MissingFigure[] } {
  const missing: MissingFigure[] = [];
  const supplies = topology.supplies.flatMap((supply): readonly SupplyLoad[] => {
    // A supply module from which no 24 V lead comes is there for the DC link only.
    if (!topology.feeds.some(({ from }) => from === supply)) return [];
    const ratings = topology.units.get(supply)?.supply?.control24;
    const rated = documented('rated-current', given(loadAmperes, ratings?.ratedA), supply, ratings?.source);
    const ratedInrush = documented('rated-inrush', given(loadAmperes, ratings?.inrushA), supply, ratings?.source);
    if (nominalVolts(topology, supply) === null) missing.push({ figure: 'supply-voltage', of: supply });
    if (rated.value === null) missing.push({ figure: 'rated-current', of: supply });
    if (ratedInrush.value === null) missing.push({ figure: 'rated-inrush', of: supply });
    return [
      {
        supply,
        voltage: supplyVoltage(topology, supply),
        steady: weigh(currentTerm('load', supply, solved.supplyCurrents.get(supply)), rated),
        inrush: weigh(currentTerm('inrush', supply, atSwitchOn.supplyCurrents.get(supply)), ratedInrush),
        outputs: sumOutputs(topology, supply, solved),
        backFed: solved.backFed.has(supply),
      },
    ];
  });
  return { supplies, missing };
}

/** What a supply gives: its nominal voltage; 24 V, assumed, where that is not given. */
export function supplyVoltage(topology: Topology, supply: UnitId): SumTerm<Volts> {
  const nominal = nominalVolts(topology, supply);
  return nominal === null
    ? assumed('supply-voltage', usualVolts, 'usual-24-volts', { of: supply })
    : documented('supply-voltage', nominal, supply, topology.units.get(supply)?.supply?.control24?.source);
}

function currentTerm(code: 'load' | 'inrush', of: UnitId, found: FeedValue | null | undefined): SumTerm<Amperes> {
  if (!found) return unknown(code, of);
  const basis = code === 'load' ? 'sum-of-loads' : 'load-for-inrush';
  return computed(code, amperes(found.value), basis, [], { of, bound: found.isBound ? 'at-least' : null });
}

/** A load that is only known to be at least so much may prove that a rating is exceeded, never that it is kept. */
function weigh(load: SumTerm<Amperes>, rated: SumTerm<Amperes>): Loading {
  const both = load.value !== null && rated.value !== null;
  return {
    load,
    rated,
    share: both && rated.value !== 0 ? (load.value ?? 0) / (rated.value ?? 1) : null,
    over: both && isBelow(rated.value ?? 0, load.value ?? 0),
  };
}

function sumOutputs(topology: Topology, supply: UnitId, solved: SolvedFeed): SupplyLoad['outputs'] {
  return (topology.units.get(supply)?.supply?.outputs ?? []).map(({ id, name, ratedA }) => {
    const leads = topology.feeds.filter(({ lead, from }) => from === supply && topology.leads.get(lead)?.from?.output === id);
    const currents = leads.map(({ lead }) => solved.currents.get(lead));
    const isKnown = currents.every((current) => current !== undefined);
    const sum = currents.reduce((total, current) => total + (current?.value ?? 0), 0);
    const found = isKnown ? { value: sum, isBound: currents.some((current) => current?.isBound === true) } : null;
    return {
      output: id,
      name,
      ...weigh(currentTerm('load', supply, found), documented('rated-current', given(loadAmperes, ratedA), supply)),
    };
  });
}
