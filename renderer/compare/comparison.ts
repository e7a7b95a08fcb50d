import { type Change, type ChangeKind, type Comparison, changeKinds, compareCabinets } from '../../engine/edit/index.ts';
import { type ComparedSide, makeNames } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';

/** A comparison with the names of both cabinets; `before` is the other one, `after` the one in the window. */
export interface ShownComparison extends Comparison {
  readonly before: ComparedSide;
  readonly after: ComparedSide;
  /** The worst kind of change of each thing of the cabinet in the window. */
  readonly marks: ReadonlyMap<string, ChangeKind>;
}

let last: { readonly other: CabinetContent; readonly cabinet: CabinetContent; readonly shown: ShownComparison } | null = null;

/** The comparison that is shown; worked out anew only when one of the two cabinets changes. Null: nothing is compared. */
export function comparisonOf({ comparison, cabinet, checked: { topology } }: AppState): ShownComparison | null {
  if (comparison === null) return null;
  const other = comparison.content;
  if (last?.other !== other || last.cabinet !== cabinet) {
    const compared = compareCabinets(other, cabinet);
    const before = { content: other, names: makeNames(buildTopology(other).topology) };
    const after = { content: cabinet, names: namesOf(topology) };
    last = { other, cabinet, shown: { ...compared, before, after, marks: marksOf(compared.changes) } };
  }
  return last.shown;
}

function marksOf(changes: readonly Change[]): ReadonlyMap<string, ChangeKind> {
  const marks = new Map<string, ChangeKind>();
  // Changes come in the order of their kinds; what only gave way is not marked.
  for (const { kind, of } of changes) {
    if (kind !== 'shifted' && of.after !== null && !marks.has(of.after)) marks.set(of.after, kind);
  }
  return marks;
}

/** How many changes there are of each kind. */
export function countKinds(changes: readonly Change[]): readonly { readonly kind: ChangeKind; readonly count: number }[] {
  return changeKinds.flatMap((kind) => {
    const count = changes.filter((change) => change.kind === kind).length;
    return count === 0 ? [] : [{ kind, count }];
  });
}
