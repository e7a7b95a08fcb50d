import type { Draft } from 'immer';
import type { CabinetContent, Snapshot } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import type { CaseRecord } from './sitting.ts';

type Ids = Readonly<Record<string, unknown>>;

/**
 * Brings what was seen in line with a cabinet that was changed: what was seen of or done to things that are gone is dropped, and the
 * gaps of a report are counted anew, so that they lie between the same units as before. A gap into which a unit was put becomes
 * all gaps that it was divided into; a report of which no gap is left is dropped.
 */
export function keepEvidence(record: Draft<CaseRecord>, before: CabinetContent, after: CabinetContent): void {
  const { evidence } = record;
  const seesCabinet = evidence.snapshots.length > 0 || (evidence.circumstances?.length ?? 0) > 0;
  if (!seesCabinet || before === after) return;
  const gone = goneIds(before, after);
  const renumber = makeRenumber(before, after);
  for (const snapshot of evidence.snapshots) keepSnapshot(snapshot, gone, renumber);
  if (gone.size === 0 || evidence.circumstances === undefined) return;
  evidence.circumstances = evidence.circumstances.flatMap((circumstance) => {
    const { subjects } = circumstance;
    if (subjects === undefined || subjects.length === 0) return [circumstance];
    const left = subjects.filter((id) => !gone.has(id));
    // Without subjects it would concern everything.
    return left.length === 0 ? [] : [{ ...circumstance, subjects: left }];
  });
}

function goneIds(before: CabinetContent, after: CabinetContent): ReadonlySet<string> {
  const idsOf = (content: CabinetContent) =>
    (['chains', 'units', 'links', 'leads', 'feedbacks'] as const).flatMap((list) => (content[list] ?? []).map(({ id }) => id));
  const left = new Set(idsOf(after));
  return new Set(idsOf(before).filter((id) => !left.has(id)));
}

type Gap = number | 'none';
type Renumber = (chain: string, gaps: readonly Gap[]) => readonly Gap[];

function keepSnapshot(snapshot: Draft<Snapshot>, gone: ReadonlySet<string>, renumber: Renumber): void {
  const names = (thing: object) => Object.values(thing as Ids).some((value) => typeof value === 'string' && gone.has(value));
  if (snapshot.displays?.some(({ unit }) => gone.has(unit))) {
    snapshot.displays = snapshot.displays.filter(({ unit }) => !gone.has(unit));
  }
  if (snapshot.looks?.some(names)) snapshot.looks = snapshot.looks.filter((look) => !names(look));
  if (snapshot.interventions?.some(names)) snapshot.interventions = snapshot.interventions.filter((act) => !names(act));
  if (snapshot.reports === undefined) return;
  const kept = snapshot.reports.flatMap((report) => {
    const gaps = renumber(report.chain, report.gaps);
    if (gone.has(report.chain) || gaps.length === 0) return [];
    return gaps.join() === report.gaps.join() ? [report] : [{ ...report, gaps: [...gaps] }];
  });
  if (kept.length !== snapshot.reports.length || kept.some((report, index) => report !== snapshot.reports?.[index])) {
    snapshot.reports = kept;
  }
}

function makeRenumber(before: CabinetContent, after: CabinetContent): Renumber {
  const old = buildTopology(before).topology;
  const { placeOf } = buildTopology(after).topology;
  const now = (chain: string, unit: string) => {
    const place = [...placeOf].find(([id]) => id === unit)?.[1];
    return place !== undefined && place.chain === chain ? place.position : undefined;
  };
  return (chain, gaps) => {
    const units = old.chains.find(({ id }) => id === chain)?.units ?? [];
    const found = new Set<Gap>();
    for (const gap of gaps) {
      if (gap === 'none') {
        found.add(gap);
        continue;
      }
      const from = gap === 1 ? 0 : now(chain, units[gap - 2] ?? '');
      const to = now(chain, units[gap - 1] ?? '');
      // Where one of the two is gone the next one that is left stands for it.
      const first = from ?? lastBefore(units.slice(0, gap - 1), (unit) => now(chain, unit)) ?? 0;
      const last = to ?? firstAfter(units.slice(gap - 1), (unit) => now(chain, unit));
      if (last === undefined) continue;
      for (let position = Math.min(first + 1, last); position <= last; position += 1) found.add(position);
    }
    return [...found];
  };
}

function lastBefore(units: readonly string[], place: (unit: string) => number | undefined): number | undefined {
  return firstAfter([...units].reverse(), place);
}

function firstAfter(units: readonly string[], place: (unit: string) => number | undefined): number | undefined {
  for (const unit of units) {
    const position = place(unit);
    if (position !== undefined) return position;
  }
  return undefined;
}
