import type { UnitId } from '../base/index.ts';
import type { Topology } from '../topology/index.ts';
import { chargedVoltage, dischargeTime } from './formulas.ts';
import { assumed, computed, documented, type FigureCode, type MissingFigure, type SumTerm, unknown } from './terms.ts';
import type { DcLinkSums } from './types.ts';
import {
  given,
  type Kilowatts,
  kilowatts,
  type Microfarads,
  microfarads,
  percent,
  ratedVolts,
  resistorOhms,
  type Seconds,
  seconds,
} from './units.ts';

/** How far a line voltage may be above its nominal figure where nothing is said of it, %. */
export const usualTolerance = percent(10);

/** The DC links of a cabinet, by supply; `unplaced` are drives of which it is not known on which link they hang. */
export function computeDcLinks(topology: Topology): { readonly links: readonly DcLinkSums[]; readonly unplaced: readonly MissingFigure[] } {
  const owners = topology.supplies.filter((supply) => topology.units.get(supply)?.supply?.dcLink !== undefined);
  const only = owners.length === 1 ? owners[0] : undefined;
  const drives = [...topology.units].filter(([, { kind }]) => kind === 'servo-drive' || kind === 'spindle-drive');
  const ownerOf = new Map(drives.map(([unit, record]): [UnitId, string | undefined] => [unit, record.dcLinkSupply ?? only]));
  const unplaced = drives.flatMap(([unit]): readonly MissingFigure[] =>
    owners.length > 0 && !owners.some((owner) => owner === ownerOf.get(unit)) ? [{ figure: 'dc-link-supply', of: unit }] : [],
  );
  const links = owners.map((supply) =>
    dcLink(
      topology,
      supply,
      drives.flatMap(([unit]) => (ownerOf.get(unit) === supply ? [unit] : [])),
      unplaced.length > 0,
    ),
  );
  return { links, unplaced };
}

/**
 * The longest discharge time; null when there is no DC link on record, when that of any is not known, or when some drive hangs on a
 * link that is not on record: then no number may be said.
 */
export function longestDischarge(links: readonly DcLinkSums[], unplaced: readonly MissingFigure[]): Seconds | null {
  if (links.length === 0 || unplaced.length > 0) return null;
  let longest = 0;
  for (const { discharge } of links) {
    if (discharge.value === null) return null;
    longest = Math.max(longest, discharge.value);
  }
  return seconds(longest);
}

/** How long the DC links of a cabinet take to discharge to a safe voltage, in seconds; null where no number may be said. */
export function findWaitingTime(topology: Topology): Seconds | null {
  const { links, unplaced } = computeDcLinks(topology);
  return longestDischarge(links, unplaced);
}

function dcLink(topology: Topology, supply: UnitId, drives: readonly UnitId[], hasUnplaced: boolean): DcLinkSums {
  const ratings = topology.units.get(supply)?.supply?.dcLink;
  const missing: MissingFigure[] = [];
  const note = (figure: FigureCode, of: string) => void missing.push({ figure, of });
  const rated = documented('rated-dc-power', given(kilowatts, ratings?.ratedKw), supply, ratings?.source);
  if (rated.value === null) note('rated-dc-power', supply);
  const power = sumPower(topology, supply, drives, hasUnplaced, note);
  const share = power.value === null || rated.value === null || rated.value === 0 ? null : power.value / rated.value;
  const capacitance = sumCapacitance(topology, supply, drives, note);
  return {
    supply,
    power,
    rated,
    share,
    over: power.value !== null && rated.value !== null && power.value > rated.value,
    capacitance,
    discharge: findDischarge(topology, supply, capacitance, hasUnplaced, note),
    missing,
  };
}

function sumPower(
  topology: Topology,
  supply: UnitId,
  drives: readonly UnitId[],
  hasUnplaced: boolean,
  note: (figure: FigureCode, of: string) => void,
): SumTerm<Kilowatts> {
  const terms = drives.map((unit) => documented('dc-power', given(kilowatts, topology.units.get(unit)?.dcLinkKw), unit));
  for (const { value, of } of terms) if (value === null) note('dc-power', of ?? supply);
  if (terms.every(({ value }) => value === null)) return unknown('dc-power', supply, terms);
  const isShort = hasUnplaced || terms.some(({ value }) => value === null);
  const sum = terms.reduce((total, { value }) => total + (value ?? 0), 0);
  return computed('dc-power', kilowatts(sum), 'sum-of-powers', terms, { of: supply, bound: isShort ? 'at-least' : null });
}

/** Supply and drives together. One figure that is missing makes the sum unknown: a time from it would be too short to be safe. */
function sumCapacitance(
  topology: Topology,
  supply: UnitId,
  drives: readonly UnitId[],
  note: (figure: FigureCode, of: string) => void,
): SumTerm<Microfarads> {
  const ratings = topology.units.get(supply)?.supply?.dcLink;
  const terms = [
    documented('capacitance', given(microfarads, ratings?.capacitanceUf), supply, ratings?.source),
    ...drives.map((unit) => documented('capacitance', given(microfarads, topology.units.get(unit)?.dcLinkCapacitanceUf), unit)),
  ];
  const lacking = terms.filter(({ value }) => value === null);
  for (const { of } of lacking) note('capacitance', of ?? supply);
  if (lacking.length > 0) return unknown('capacitance', supply, terms);
  const sum = terms.reduce((total, { value }) => total + (value ?? 0), 0);
  if (sum === 0) {
    // No DC link is without capacitance: this would promise that there is nothing to wait for.
    note('capacitance', supply);
    return unknown('capacitance', supply, terms);
  }
  return computed('capacitance', microfarads(sum), 'sum-of-capacitances', terms, { of: supply });
}

function findDischarge(
  topology: Topology,
  supply: UnitId,
  capacitance: SumTerm<Microfarads>,
  hasUnplaced: boolean,
  note: (figure: FigureCode, of: string) => void,
): SumTerm<Seconds> {
  const ratings = topology.units.get(supply)?.supply?.dcLink;
  const resistor = given(resistorOhms, ratings?.dischargeOhm);
  const line = given(ratedVolts, ratings?.lineVoltageV);
  if (resistor === null) note('discharge-resistor', supply);
  // A line of no volts is a slip of the pen, and would promise that there is nothing to wait for.
  if (line === null || line === 0) note('line-voltage', supply);
  const resistorTerm = documented('discharge-resistor', resistor, supply, ratings?.source);
  const lineTerm = documented('line-voltage', line, supply, ratings?.source);
  if (resistor === null || line === null || line === 0 || capacitance.value === null || hasUnplaced) {
    return unknown('discharge-time', supply, [resistorTerm, capacitance, lineTerm]);
  }
  const tolerance = given(percent, ratings?.lineTolerancePercent);
  const toleranceTerm =
    tolerance === null
      ? assumed('line-tolerance', usualTolerance, 'usual-tolerance', { of: supply })
      : documented('line-tolerance', tolerance, supply, ratings?.source);
  const charged = chargedVoltage(line, tolerance ?? usualTolerance);
  const chargedTerm = computed('charged-voltage', charged, 'peak-of-line', [lineTerm, toleranceTerm], { of: supply });
  const from = [resistorTerm, capacitance, chargedTerm];
  return computed('discharge-time', dischargeTime(resistor, capacitance.value, charged), 'discharge-curve', from, { of: supply });
}
