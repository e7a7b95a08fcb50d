import type { LeadId, UnitId } from '../base/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type Arrangement, isLeadInPlace } from './arrangement.ts';

/** What interrupts the 24 V feed: open leads, and supplies that give nothing. */
export interface PowerFaults {
  readonly openLeads: ReadonlySet<LeadId>;
  readonly deadSupplies: ReadonlySet<UnitId>;
}

/**
 * The units (supplies included) that have 24 V: those to which some path of closed leads leads from a supply that gives power.
 * A unit passes power on whether it works or not; one that was taken out does not (domain section 5, step 1).
 */
export function findPowered(cabinet: Cabinet, arrangement: Arrangement, faults: PowerFaults): ReadonlySet<UnitId> {
  const powered = new Set<UnitId>(
    cabinet.supplies.filter((supply) => !faults.deadSupplies.has(supply) && !arrangement.takenOut.has(supply)),
  );
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
