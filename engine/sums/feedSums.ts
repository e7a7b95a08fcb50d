import type { LeadId, UnitId } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { type FeedValue, loadOf, reachFromSupplies, resistancesOf, type SolvedFeed, solveFeed } from './feedNetwork.ts';
import { voltageDrop } from './formulas.ts';
import { isBelow } from './lowVoltage.ts';
import { sumSupplies, supplyVoltage } from './supplyLoads.ts';
import { computed, documented, type MissingFigure, type SumTerm, unknown } from './terms.ts';
import type { FeedSums, LeadLoad, UnitVoltage } from './types.ts';
import { type Amperes, amperes, given, loadAmperes, ratedVolts, type Volts, volts } from './units.ts';

/** The 24 V of a whole cabinet with every lead closed and every supply giving its nominal voltage. */
export function computeFeed(topology: Topology): FeedSums {
  const state = { reached: reachFromSupplies(topology), conducts: () => true };
  const solved = solveFeed(topology, state);
  const atSwitchOn = solveFeed(topology, state, { draw: inrushOf });
  const leads = topology.feeds.map((feed) => leadLoad(topology, feed, solved));
  const feeding = byUnit(leads);
  const units = consumersInOrder(topology).map((unit) => unitVoltage(topology, unit, state.reached, solved, feeding.get(unit) ?? []));
  const { supplies, missing: ofSupplies } = sumSupplies(topology, solved, atSwitchOn);
  return {
    units,
    leads,
    supplies,
    firstToFail: findFirstToFail(units),
    tooMeshed: solved.tooMeshed,
    missing: [...missingOfUnits(topology, units), ...missingOfLeads(topology), ...ofSupplies],
  };
}

/** Everything but the supplies: chain by chain from the controller outwards, then what is on no chain. */
function consumersInOrder({ units, chains, offChain, orphans }: Topology): readonly UnitId[] {
  const inOrder = new Set([...chains.flatMap((chain) => chain.units), ...offChain, ...orphans, ...units.keys()]);
  return [...inOrder].filter((unit) => units.get(unit)?.kind !== 'supply');
}

function byUnit(leads: readonly LeadLoad[]): ReadonlyMap<UnitId, readonly LeadLoad[]> {
  const found = new Map<UnitId, LeadLoad[]>();
  for (const load of leads) {
    const list = found.get(load.to) ?? [];
    found.set(load.to, list);
    list.push(load);
  }
  return found;
}

/** What a unit draws when it is switched on: its inrush, and never less than its load; without an inrush, at least its load. */
function inrushOf(topology: Topology, unit: UnitId): FeedValue {
  const inrush = given(loadAmperes, topology.units.get(unit)?.control24?.inrushA);
  return { value: Math.max(inrush ?? 0, loadOf(topology, unit).value), isBound: inrush === null };
}

function leadLoad(topology: Topology, { lead, from, to }: { lead: LeadId; from: UnitId; to: UnitId }, solved: SolvedFeed): LeadLoad {
  const resistance = resistancesOf(topology).get(lead)?.term ?? unknown('lead-resistance', lead);
  const found = solved.currents.get(lead);
  const current: SumTerm<Amperes> =
    found === undefined
      ? unknown('lead-current', lead)
      : computed('lead-current', amperes(found.value), 'network', [], { of: lead, bound: boundOf(found, 'at-least') });
  const drop: SumTerm<Volts> =
    current.value === null || resistance.value === null
      ? unknown('lead-drop', lead, [current, resistance])
      : computed('lead-drop', voltageDrop(current.value, resistance.value), 'current-times-resistance', [current, resistance], {
          of: lead,
          bound: current.bound,
        });
  return { lead, from, to, resistance, current, drop };
}

function boundOf({ isBound }: FeedValue, bound: 'at-least' | 'at-most') {
  return isBound ? bound : null;
}

function unitVoltage(
  topology: Topology,
  unit: UnitId,
  reached: ReadonlySet<UnitId>,
  solved: SolvedFeed,
  feeding: readonly LeadLoad[],
): UnitVoltage {
  const need = topology.units.get(unit)?.control24;
  const minimum = documented('minimum-voltage', given(ratedVolts, need?.minimumV), unit, need?.source);
  const maximum = documented('maximum-voltage', given(ratedVolts, need?.maximumV), unit, need?.source);
  const voltage = voltageTerm(topology, unit, solved, feeding);
  const headroom: SumTerm<Volts> =
    voltage.value === null || minimum.value === null
      ? unknown('headroom', unit, [voltage, minimum])
      : computed('headroom', volts(voltage.value - minimum.value), 'voltage-less-minimum', [voltage, minimum], {
          of: unit,
          bound: voltage.bound,
        });
  return {
    unit,
    voltage,
    load: documented('load', given(loadAmperes, need?.loadA), unit, need?.source),
    inrush: documented('inrush', given(loadAmperes, need?.inrushA), unit, need?.source),
    minimum,
    maximum,
    headroom,
    verdict: reached.has(unit) ? judge(voltage, minimum.value, maximum.value) : 'not-fed',
  };
}

function judge(voltage: SumTerm<Volts>, minimum: Volts | null, maximum: Volts | null): UnitVoltage['verdict'] {
  if (voltage.value === null) return 'not-known';
  if (minimum !== null && isBelow(voltage.value, minimum)) return 'too-low';
  // A voltage that is only an upper bound proves nothing of what it is below or above.
  if (voltage.bound !== null) return 'not-known';
  if (maximum !== null && isBelow(maximum, voltage.value)) return 'too-high';
  return minimum === null ? 'not-known' : 'within';
}

/** The voltage of a unit, explained by one lead that feeds it: voltage where that begins, less the drop in it. */
function voltageTerm(topology: Topology, unit: UnitId, solved: SolvedFeed, feeding: readonly LeadLoad[]): SumTerm<Volts> {
  const found = solved.voltages.get(unit);
  if (found === undefined) {
    return unknown(
      'voltage',
      unit,
      feeding.map(({ drop }) => drop),
    );
  }
  const explaining = feeding.find(({ drop, from }) => drop.value !== null && startVoltage(topology, from, solved) !== null) ?? feeding[0];
  const start = explaining === undefined ? null : startVoltage(topology, explaining.from, solved);
  const from = explaining === undefined ? [] : [...(start === null ? [] : [start]), explaining.drop];
  return computed('voltage', volts(found.value), 'feeding-less-drop', from, { of: unit, bound: boundOf(found, 'at-most') });
}

function startVoltage(topology: Topology, unit: UnitId, solved: SolvedFeed): SumTerm<Volts> | null {
  if (topology.units.get(unit)?.kind === 'supply') return solved.backFed.has(unit) ? null : supplyVoltage(topology, unit);
  const found = solved.voltages.get(unit);
  return found === undefined
    ? null
    : computed('feeding-voltage', volts(found.value), 'network', [], { of: unit, bound: boundOf(found, 'at-most') });
}

/** The unit with the least headroom, of several the first by id. */
function findFirstToFail(units: readonly UnitVoltage[]): UnitId | null {
  let first: UnitVoltage | null = null;
  for (const one of units) {
    const headroom = one.headroom.value;
    if (headroom === null || one.headroom.bound !== null) continue;
    const least = first?.headroom.value ?? Number.POSITIVE_INFINITY;
    if (headroom < least || (headroom === least && first !== null && one.unit < first.unit)) first = one;
  }
  return first?.unit ?? null;
}

function missingOfUnits(topology: Topology, units: readonly UnitVoltage[]): readonly MissingFigure[] {
  return units.flatMap(({ unit, load, inrush, minimum, verdict }) => {
    if (verdict === 'not-fed' || !topology.units.has(unit)) return [];
    return [
      ...(load.value === null ? [{ figure: 'load' as const, of: unit }] : []),
      ...(inrush.value === null ? [{ figure: 'inrush' as const, of: unit }] : []),
      ...(minimum.value === null ? [{ figure: 'minimum-voltage' as const, of: unit }] : []),
    ];
  });
}

function missingOfLeads(topology: Topology): readonly MissingFigure[] {
  const resistances = resistancesOf(topology);
  return topology.feeds.flatMap(({ lead }) => (resistances.get(lead)?.missing ?? []).map((figure) => ({ figure, of: lead })));
}
