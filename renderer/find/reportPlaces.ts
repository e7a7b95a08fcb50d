import { type OrdinalGroup, ordinalGroups } from '../../engine/schema/index.ts';
import { type ChainTopology, findByOrdinal, type Topology } from '../../engine/topology/index.ts';

/** A unit as the controller names it, while it is being typed: its group, and its number as text. */
export interface CountedField {
  readonly group: OrdinalGroup | 'controller';
  readonly ordinal: string;
}

export const blankField: CountedField = { group: 'drive', ordinal: '' };

export type Gaps = readonly (number | 'none')[];

/** What the two fields say: the gaps that are left, nothing yet, or what is wrong with them. */
export type ReadGaps =
  | { readonly kind: 'gaps'; readonly gaps: Gaps }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'unknown-place'; readonly place: CountedField }
  | { readonly kind: 'wrong-order' };

const isBlank = ({ group, ordinal }: CountedField) => group !== 'controller' && ordinal.trim() === '';

/** The position on its chain of a unit that is named by group and ordinal; 0 is the controller. */
function positionOf(topology: Topology, chain: ChainTopology, { group, ordinal }: CountedField): number | null {
  if (group === 'controller') return 0;
  const unit = findByOrdinal(topology, chain.id, group, Number(ordinal));
  return unit === undefined ? null : (topology.placeOf.get(unit)?.position ?? null);
}

/** The gaps between the last unit reached and the first one not reached; where only one is named, the gap beside it. */
export function readGaps(topology: Topology, chain: ChainTopology, reached: CountedField, missing: CountedField): ReadGaps {
  const from = isBlank(reached) ? null : positionOf(topology, chain, reached);
  const to = isBlank(missing) ? null : positionOf(topology, chain, missing);
  if (!isBlank(reached) && from === null) return { kind: 'unknown-place', place: reached };
  if (!isBlank(missing) && to === null) return { kind: 'unknown-place', place: missing };
  if (from === null) return to === null ? { kind: 'nothing' } : { kind: 'gaps', gaps: [to] };
  // The last unit of the chain is reached: nothing is lost.
  if (to === null) return { kind: 'gaps', gaps: [from < chain.units.length ? from + 1 : 'none'] };
  if (to <= from) return { kind: 'wrong-order' };
  return { kind: 'gaps', gaps: Array.from({ length: to - from }, (_, index) => from + 1 + index) };
}

/** The fields that say what was entered, so that it can be seen and corrected. */
export function fieldsOf(topology: Topology, chain: ChainTopology, gaps: Gaps | undefined): readonly [CountedField, CountedField] {
  const numbers = (gaps ?? []).filter((gap) => gap !== 'none');
  const [first] = numbers;
  const last = numbers[numbers.length - 1];
  if (first === undefined || last === undefined) return [blankField, blankField];
  const at = (position: number): CountedField => {
    const unit = chain.units[position - 1];
    const place = unit && topology.placeOf.get(unit);
    return place ? { group: place.group, ordinal: String(place.ordinal) } : { group: 'controller', ordinal: '' };
  };
  return [at(first - 1), at(last)];
}

/** The groups of which a chain has units. */
export function groupsOf(topology: Topology, chain: ChainTopology): readonly OrdinalGroup[] {
  return ordinalGroups.filter((group) => chain.units.some((unit) => topology.placeOf.get(unit)?.group === group));
}
