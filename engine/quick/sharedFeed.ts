import { compareText } from '../base/index.ts';
import type { CabinetContent, LeadRecord, Snapshot } from '../schema/index.ts';

/** Of a lead nothing is known but its ends: it was assumed, not read off the machine. */
function isBare({ id: _id, from: _from, to: _to, ...known }: LeadRecord): boolean {
  return Object.keys(known).length === 0;
}

/**
 * Units that are dark together while others of the same supply are lit, and whose leads are only assumed: one lead or one fuse may well
 * feed them all, which nobody could suspect as long as each has a lead of its own. Ids in mounting order; empty where nothing needs to be
 * asked.
 */
export function askSharedFeed({ units = [], leads = [] }: CabinetContent, { displays = [] }: Snapshot): readonly string[] {
  const darkUnits = new Set(displays.flatMap(({ unit, meanings }) => (meanings.every((meaning) => meaning === 'dark') ? [unit] : [])));
  // Asked again at every reading, and mostly there is nothing to ask.
  if (darkUnits.size < 2) return [];
  const supplies = new Set(units.flatMap(({ id, kind }) => (kind === 'supply' ? [id] : [])));
  const bySupply = new Map<string, string[]>();
  const mounted = [...units].sort((a, b) => (a.row ?? 0) - (b.row ?? 0) || (a.slot ?? 0) - (b.slot ?? 0) || compareText(a.id, b.id));
  for (const { id } of mounted) {
    const [lead, ...others] = leads.filter(({ to }) => to?.unit === id);
    const from = lead?.from?.unit;
    if (lead && others.length === 0 && from !== undefined && supplies.has(from) && isBare(lead)) {
      bySupply.set(from, [...(bySupply.get(from) ?? []), id]);
    }
  }
  for (const [supply, fed] of [...bySupply].sort(([a], [b]) => compareText(a, b))) {
    const dark = fed.filter((unit) => darkUnits.has(unit));
    // All of them dark speaks of the supply, which needs no asking.
    if (dark.length >= 2 && dark.length < fed.length && !darkUnits.has(supply)) return dark;
  }
  return [];
}

/** The leads of a cabinet in which each of these units is known to have its own; `notes` says how one knows. */
export function feedApart(leads: readonly LeadRecord[], units: readonly string[], notes: string): LeadRecord[] {
  return leads.map((lead) => (units.includes(lead.to?.unit ?? '') ? { ...lead, notes } : lead));
}

/** The leads of a cabinet in which one lead feeds all these units, one after another, as 24 V is looped from unit to unit. */
export function feedTogether(leads: readonly LeadRecord[], units: readonly string[]): LeadRecord[] {
  return leads.map((lead) => {
    const before = units[units.indexOf(lead.to?.unit ?? '') - 1];
    return before === undefined ? lead : { ...lead, from: { unit: before } };
  });
}
