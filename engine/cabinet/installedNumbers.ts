import type { CabinetContent, UnitKind } from '../schema/index.ts';

type SpareKind = NonNullable<CabinetContent['spares']>[number]['kind'];

/**
 * The part numbers documented in a cabinet for what a kind of spare replaces; empty where none is, and for spares of another kind.
 * `only`: of boards, fuses and units those of one kind of unit.
 */
export function installedNumbers(content: CabinetContent, kind: SpareKind, only?: UnitKind): ReadonlySet<string> {
  const units = (content.units ?? []).filter((unit) => only === undefined || unit.kind === only);
  return new Set(
    numbered({ ...content, units }, kind)
      .map((part) => part?.partNumber?.trim() ?? '')
      .filter((number) => number !== ''),
  );
}

function numbered(content: CabinetContent, kind: SpareKind): readonly ({ readonly partNumber?: string | undefined } | undefined)[] {
  const { units = [], links = [], leads = [], feedbacks = [], chains = [] } = content;
  switch (kind) {
    case 'cable':
      return links;
    case 'board':
      return units.map(({ board }) => board);
    case 'unit':
      return units.filter((unit) => unit.kind !== 'supply');
    case 'supply':
      return units.filter((unit) => unit.kind === 'supply');
    case 'lead':
      return leads;
    case 'fuse':
      return units.map(({ fuse }) => fuse);
    case 'feedback-cable':
      return feedbacks;
    case 'controller-port':
      return chains;
    case 'other':
      return [];
  }
}
