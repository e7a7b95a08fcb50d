import type { FeedSums, LeadLoad, UnitVoltage } from '../../engine/sums/index.ts';

/** One line of the feed: a supply, or a unit with the lead that feeds it. */
export interface FeedLine {
  readonly key: string;
  readonly unit: string;
  readonly at: UnitVoltage | null;
  readonly lead: LeadLoad | null;
  /** Further leads that feed it too. */
  readonly also: readonly LeadLoad[];
  /** Columns to the right: a branch goes one to the right, a run goes straight down. */
  readonly depth: number;
}

const deepest = 6;

/**
 * The feed from the supplies downwards, as lines. A unit stands below what feeds it, once; a run of units that feed each other goes
 * straight down, so that forty of them do not run out of the page. What no supply reaches comes last.
 */
export function feedLines(feed: FeedSums): readonly FeedLine[] {
  const byUnit = new Map(feed.units.map((one) => [one.unit as string, one]));
  const leadsFrom = new Map<string, LeadLoad[]>();
  const leadsTo = new Map<string, LeadLoad[]>();
  for (const lead of feed.leads) {
    leadsFrom.set(lead.from, [...(leadsFrom.get(lead.from) ?? []), lead]);
    leadsTo.set(lead.to, [...(leadsTo.get(lead.to) ?? []), lead]);
  }
  const lines: FeedLine[] = [];
  const placed = new Set<string>();
  const waiting: { readonly unit: string; readonly lead: LeadLoad | null; readonly depth: number }[] = [];
  const place = (root: string) => {
    waiting.push({ unit: root, lead: null, depth: 0 });
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      const { unit, lead, depth } = next;
      if (placed.has(unit)) continue;
      placed.add(unit);
      const also = (leadsTo.get(unit) ?? []).filter((one) => one !== lead);
      lines.push({ key: `${unit}/${lead?.lead ?? ''}`, unit, at: byUnit.get(unit) ?? null, lead, also: lead === null ? [] : also, depth });
      const further = (leadsFrom.get(unit) ?? []).filter(({ to }) => !placed.has(to));
      const isBranch = further.length > 1 || lead === null;
      // Last in, first out: the first lead is followed first.
      for (const one of [...further].reverse())
        waiting.push({ unit: one.to, lead: one, depth: Math.min(depth + (isBranch ? 1 : 0), deepest) });
    }
  };
  for (const { supply } of feed.supplies) place(supply);
  for (const { unit } of feed.units) if (!placed.has(unit)) place(unit);
  return lines;
}

/** The part of the volts that is drawn: from below the least voltage that is needed to above the highest that there is. */
export function voltScale(feed: FeedSums): { readonly from: number; readonly to: number; readonly ticks: readonly number[] } {
  const known = (values: readonly (number | null)[]) => values.filter((value): value is number => value !== null);
  const volts = known([...feed.units.map(({ voltage }) => voltage.value), ...feed.supplies.map(({ voltage }) => voltage.value)]);
  const needed = known(feed.units.map(({ minimum }) => minimum.value));
  const top = Math.max(24, ...volts);
  const from = Math.min(top - 2, ...needed, ...volts) - 0.5;
  const to = top + 0.5;
  const step = [0.5, 1, 2, 5, 10, 20, 50, 100].find((one) => (to - from) / one <= 7) ?? 200;
  const ticks: number[] = [];
  for (let tick = Math.ceil(from / step) * step; tick <= to && ticks.length < 12; tick += step) ticks.push(tick);
  return { from, to, ticks };
}
