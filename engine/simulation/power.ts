import type { LeadId, UnitId } from '../base/index.ts';
import { findLowVoltage, type LowVoltage } from '../sums/index.ts';
import { type Cabinet, isFeedDocumented } from '../topology/index.ts';
import { type Arrangement, isLeadInPlace } from './arrangement.ts';

/** What interrupts the 24 V feed: open leads, and supplies that give nothing. */
export interface PowerFaults {
  readonly openLeads: ReadonlySet<LeadId>;
  readonly deadSupplies: ReadonlySet<UnitId>;
}

/** The 24 V at one moment: units that have it, and units that the leads reach but with less than they need. */
export interface Power {
  readonly powered: ReadonlySet<UnitId>;
  readonly low: ReadonlyMap<UnitId, LowVoltage>;
}

/**
 * The units (supplies included) that have 24 V: those to which some path of closed leads leads from a supply that gives power, and at
 * which, where the 24 V sums have data, enough of it is left. A unit passes power on whether it works or not, and so does one with too
 * little; one that was taken out does not. Where no lead at all is documented, every unit that stands there has it (domain section 5,
 * step 1).
 */
export function findPower(cabinet: Cabinet, arrangement: Arrangement, faults: PowerFaults): Power {
  const kept = keptOf(cabinet);
  const missing = [faults.openLeads, faults.deadSupplies, arrangement.takenOut];
  const key = missing.every(({ size }) => size === 0) ? '' : missing.map((ids) => [...ids].sort().join('\u0000')).join('\u0001');
  const known = kept.get(key);
  if (known !== undefined) return known;
  if (kept.size >= mostKept) kept.clear();
  const power = workOutPower(cabinet, arrangement, faults);
  kept.set(key, power);
  return power;
}

/** Searching simulates a cabinet thousands of times with the same few states of its 24 V, and the voltages are dear. */
const keptPowers = new WeakMap<Cabinet, Map<string, Power>>();
const mostKept = 500;

function keptOf(cabinet: Cabinet): Map<string, Power> {
  let kept = keptPowers.get(cabinet);
  if (kept === undefined) {
    kept = new Map();
    keptPowers.set(cabinet, kept);
  }
  return kept;
}

function workOutPower(cabinet: Cabinet, arrangement: Arrangement, faults: PowerFaults): Power {
  const reached = findReached(cabinet, arrangement, faults);
  const conducts = (feed: (typeof cabinet.feeds)[number]) => !faults.openLeads.has(feed.lead) && isLeadInPlace(arrangement, feed);
  const low: ReadonlyMap<UnitId, LowVoltage> = isFeedDocumented(cabinet) ? findLowVoltage(cabinet, { reached, conducts }) : new Map();
  return { powered: low.size === 0 ? reached : new Set([...reached].filter((unit) => !low.has(unit))), low };
}

/** The units of `findPower` that have 24 V. */
export function findPowered(cabinet: Cabinet, arrangement: Arrangement, faults: PowerFaults): ReadonlySet<UnitId> {
  return findPower(cabinet, arrangement, faults).powered;
}

/**
 * The units (supplies included) to which closed leads lead from a supply that gives power, whatever voltage is left there; all that
 * stand there where no lead is documented.
 */
export function findReached(cabinet: Cabinet, arrangement: Arrangement, faults: PowerFaults): ReadonlySet<UnitId> {
  const sources = isFeedDocumented(cabinet) ? cabinet.supplies : [...cabinet.units.keys()];
  const powered = new Set<UnitId>(sources.filter((unit) => !faults.deadSupplies.has(unit) && !arrangement.takenOut.has(unit)));
  let grew = true;
  while (grew) {
    grew = false;
    for (const feed of cabinet.feeds) {
      if (powered.has(feed.from) && !powered.has(feed.to) && !faults.openLeads.has(feed.lead) && isLeadInPlace(arrangement, feed)) {
        powered.add(feed.to);
        grew = true;
      }
    }
  }
  return powered;
}

/** The open leads and dead supplies that stand between a unit and every supply: what to look at when it has no 24 V. */
export function findPowerCauses(
  cabinet: Cabinet,
  unit: UnitId,
  faults: PowerFaults,
): { readonly leads: readonly LeadId[]; readonly supplies: readonly UnitId[] } {
  const leads: LeadId[] = [];
  const supplies: UnitId[] = [];
  const seen = new Set<UnitId>([unit]);
  const open: UnitId[] = [unit];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (faults.deadSupplies.has(next)) {
      supplies.push(next);
    }
    for (const feed of cabinet.feeds) {
      if (feed.to !== next) {
        continue;
      }
      if (faults.openLeads.has(feed.lead)) {
        leads.push(feed.lead);
      } else if (!seen.has(feed.from)) {
        seen.add(feed.from);
        open.push(feed.from);
      }
    }
  }
  return { leads: leads.sort(), supplies: supplies.sort() };
}
