import type { DifferenceCounts } from '../../engine/messages/index.ts';
import type { CabinetContent, Snapshot } from '../../engine/schema/index.ts';
import type { DocumentState } from '../state/appState.ts';
import type { CaseRecord } from '../state/sitting.ts';
import { sameContent } from './sameContent.ts';

interface WithId {
  readonly id: string;
}

const counted = ['units', 'links', 'leads'] as const;
const otherLists = ['chains', 'feedbacks', 'types', 'legends', 'fibres', 'spares', 'photos'] as const;

/** In how many things two documents differ, to be told in one line. */
export function findDifferences(a: DocumentState, b: DocumentState): DifferenceCounts {
  return { ...cabinetDifferences(a.cabinet, b.cabinet), ...caseDifferences(a.caseRecord, b.caseRecord) };
}

/** The same for two states of one cabinet. The order of what has ids carries no meaning. */
export function cabinetDifferences(a: CabinetContent, b: CabinetContent): DifferenceCounts {
  const [units, links, leads] = counted.map((list) => differing(a[list], b[list]));
  const lists = otherLists.reduce((sum, list) => sum + differing(a[list], b[list]), 0);
  const named = new Set<string>([...counted, ...otherLists]);
  // The keys of a content are its own; those of the other may be more.
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof CabinetContent>;
  const rest = [...keys].filter((key) => !named.has(key) && !sameContent(a[key], b[key])).length;
  return { units: units ?? 0, links: links ?? 0, leads: leads ?? 0, other: lists + rest, displays: 0, reports: 0, caseOther: 0 };
}

export function hasDifferences(differences: DifferenceCounts): boolean {
  return Object.values(differences).some((count) => count > 0);
}

function caseDifferences(a: CaseRecord, b: CaseRecord): Pick<DifferenceCounts, 'displays' | 'reports' | 'caseOther'> {
  const displays = observations(a, b, ({ displays: list }) => list ?? []);
  const reports = observations(a, b, ({ reports: list }) => list ?? []);
  const bare = (record: CaseRecord) => ({
    ...record,
    evidence: { ...record.evidence, snapshots: record.evidence.snapshots.map((shot) => ({ ...shot, displays: null, reports: null })) },
  });
  return { displays, reports, caseOther: sameContent(bare(a), bare(b)) ? 0 : 1 };
}

function observations(a: CaseRecord, b: CaseRecord, pick: (snapshot: Snapshot) => readonly object[]): number {
  const count = Math.max(a.evidence.snapshots.length, b.evidence.snapshots.length);
  let differing = 0;
  for (let index = 0; index < count; index += 1) {
    const left = pick(a.evidence.snapshots[index] ?? {});
    const right = pick(b.evidence.snapshots[index] ?? {});
    const only = (some: readonly object[], others: readonly object[]) =>
      some.filter((one) => !others.some((other) => sameContent(one, other))).length;
    differing += Math.max(only(left, right), only(right, left));
  }
  return differing;
}

function differing(a: readonly WithId[] = [], b: readonly WithId[] = []): number {
  const before = new Map(a.map((item) => [item.id, item]));
  const after = new Map(b.map((item) => [item.id, item]));
  const changed = a.filter((item) => !sameContent(item, after.get(item.id))).length;
  return changed + b.filter((item) => !before.has(item.id)).length;
}
