import type { CabinetContent, LinkRecord } from '../schema/index.ts';
import { placeOf } from './places.ts';
import type { EditedList, RecordOf } from './types.ts';

/** Which record of one cabinet is which of another; the same both ways round. */
export interface Pairs {
  /** The id in the second cabinet of an id in the first. */
  readonly toAfter: ReadonlyMap<string, string>;
  readonly toBefore: ReadonlyMap<string, string>;
}

export type Matching = { readonly [L in EditedList]: Pairs };

type Key<R> = (record: R) => string | null;

/**
 * Says what is the same thing in two cabinets: what bears the same id; of the rest what bears the same designation (name, number),
 * and of the rest what is at the same place. A key that several things of one cabinet have tells nothing. Two units of one id that
 * differ in kind and designation are two things.
 */
export function matchCabinets(before: CabinetContent, after: CabinetContent): Matching {
  const designation = (record: { readonly designation?: string | undefined }) => text(record.designation);
  const name = (record: { readonly name: string }) => text(record.name);
  const units = pair('units', before, after, [
    [designation, designation],
    [standsAt, standsAt],
  ]);
  const chains = pair('chains', before, after, [same(({ number }: RecordOf<'chains'>) => String(number))]);
  // Ends of cables of the first cabinet are told by what they are matched with in the second.
  const links = pair('links', before, after, [
    [designation, designation],
    [(link) => linkEnds(link, units.toAfter, chains.toAfter), (link) => linkEnds(link, null, null)],
  ]);
  const leads = pair('leads', before, after, [
    [designation, designation],
    [
      ({ from, to }) => ends(mapped(units.toAfter, from?.unit), mapped(units.toAfter, to?.unit)),
      ({ from, to }) => ends(from?.unit, to?.unit),
    ],
  ]);
  const feedbacks = pair('feedbacks', before, after, [
    [designation, designation],
    [({ unit, axis }) => ends(mapped(units.toAfter, unit), axis ?? ''), ({ unit, axis }) => ends(unit, axis ?? '')],
  ]);
  return {
    units,
    chains,
    links,
    leads,
    feedbacks,
    spares: pair('spares', before, after, [same(designation)]),
    types: pair('types', before, after, [same(name)]),
    legends: pair('legends', before, after, [same(name)]),
    fibres: pair('fibres', before, after, [same(name)]),
    photos: pair('photos', before, after, []),
  };
}

const same = <R>(key: Key<R>): readonly [Key<R>, Key<R>] => [key, key];

function pair<L extends EditedList>(
  list: L,
  before: CabinetContent,
  after: CabinetContent,
  keys: readonly (readonly [Key<RecordOf<L>>, Key<RecordOf<L>>])[],
): Pairs {
  // Each list of a content holds its own records.
  const left = new Map(((before[list] ?? []) as readonly RecordOf<L>[]).map((record) => [record.id, record]));
  const right = new Map(((after[list] ?? []) as readonly RecordOf<L>[]).map((record) => [record.id, record]));
  const toAfter = new Map<string, string>();
  const toBefore = new Map<string, string>();
  const take = (a: string, b: string) => {
    toAfter.set(a, b);
    toBefore.set(b, a);
    left.delete(a);
    right.delete(b);
  };
  for (const [id, record] of [...left]) {
    const other = right.get(id);
    if (other !== undefined && isSame(record, other)) take(id, id);
  }
  for (const [keyBefore, keyAfter] of keys) {
    const byKey = uniqueBy([...right.values()], keyAfter);
    for (const [key, record] of uniqueBy([...left.values()], keyBefore)) {
      const other = byKey.get(key);
      if (other !== undefined) take(record.id, other.id);
    }
  }
  return { toAfter, toBefore };
}

function isSame(a: object, b: object): boolean {
  const [left, right] = [a, b] as readonly { readonly kind?: unknown; readonly designation?: unknown }[];
  return left?.kind === right?.kind || left?.designation === right?.designation;
}

function uniqueBy<R>(records: readonly R[], key: Key<R>): ReadonlyMap<string, R> {
  const found = new Map<string, R>();
  const doubled = new Set<string>();
  for (const record of records) {
    const told = key(record);
    if (told === null) continue;
    if (found.has(told)) doubled.add(told);
    found.set(told, record);
  }
  for (const told of doubled) found.delete(told);
  return found;
}

function standsAt(unit: RecordOf<'units'>): string | null {
  const place = placeOf(unit);
  return place === null ? null : `${unit.kind}/${place.row}/${place.slot}`;
}

function linkEnds(link: LinkRecord, units: ReadonlyMap<string, string> | null, chains: ReadonlyMap<string, string> | null): string | null {
  const { upper, lower } = link;
  if (upper === undefined || lower === undefined) return null;
  const lowerUnit = units === null ? lower.unit : units.get(lower.unit);
  if ('chain' in upper) return ends(chains === null ? upper.chain : chains.get(upper.chain), lowerUnit);
  return ends(units === null ? upper.unit : units.get(upper.unit), lowerUnit);
}

const mapped = (map: ReadonlyMap<string, string>, id: string | undefined) => (id === undefined ? undefined : map.get(id));
const ends = (a: string | undefined, b: string | undefined) => (a === undefined || b === undefined ? null : `${a} ${b}`);

function text(value: string | undefined): string | null {
  return value?.trim() || null;
}
