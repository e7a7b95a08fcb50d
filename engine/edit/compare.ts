import { compareNatural, compareText } from '../base/index.ts';
import type { CabinetContent, LinkEnd, LinkRecord } from '../schema/index.ts';
import { buildTopology } from '../topology/index.ts';
import { type ChainPosition, type Change, changeKinds, type PlugPlace } from './changes.ts';
import { compareFields } from './compareFields.ts';
import { type Matching, matchCabinets } from './matching.ts';
import { findMoved } from './moved.ts';
import { placeOf } from './places.ts';
import { type EditedList, editedLists, type FeedSource } from './types.ts';

/** All differences of two cabinets, in the order of `changeKinds`, then by list and id. */
export interface Comparison {
  readonly changes: readonly Change[];
  readonly matching: Matching;
}

/**
 * Compares two cabinets: a design with a machine, a cabinet with its last save, yesterday's with today's. What is the same thing is
 * told by identity, then by designation and place (`matchCabinets`). A cabinet compared with itself has no differences; compared the
 * other way round they are the same with `was` and `is` exchanged.
 */
export function compareCabinets(before: CabinetContent, after: CabinetContent): Comparison {
  const matching = matchCabinets(before, after);
  const changes: Change[] = [
    ...editedLists.flatMap((list) => cameAndWent(list, before, after, matching)),
    ...movedInChains(before, after, matching),
    ...movedInRows(before, after, matching),
    ...replugged(before, after, matching),
    ...reconnected(before, after, matching),
    ...compareFields(before, after, matching),
  ];
  return { changes: changes.sort(compareChanges), matching };
}

function compareChanges(a: Change, b: Change): number {
  const kind = ({ kind: one }: Change) => changeKinds.indexOf(one);
  const list = ({ of }: Change) => ['cabinet', 'controller', ...editedLists].indexOf(of.list);
  const id = ({ of }: Change) => [of.before ?? of.after ?? '', of.after ?? of.before ?? ''].sort(compareNatural).join(' ');
  const rest = (change: Change) => ('path' in change ? change.path : 'end' in change ? change.end : 'part' in change ? change.part : '');
  return kind(a) - kind(b) || list(a) - list(b) || compareNatural(id(a), id(b)) || compareText(rest(a), rest(b));
}

function cameAndWent(list: EditedList, before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const { toAfter, toBefore } = matching[list];
  const ids = (content: CabinetContent) => (content[list] ?? []).map(({ id }) => id);
  return [
    ...ids(before)
      .filter((id) => !toAfter.has(id))
      .map((id): Change => ({ kind: 'removed', of: { list, before: id, after: null } })),
    ...ids(after)
      .filter((id) => !toBefore.has(id))
      .map((id): Change => ({ kind: 'added', of: { list, before: null, after: id } })),
  ];
}

/** Pairs of ids as one key that is the same whichever cabinet is first. */
const keyOf = (a: string, b: string) => [a, b].sort().join('|');

interface Standing {
  readonly before: string;
  readonly after: string;
  readonly key: string;
}

function pairsOf(matching: Matching): readonly Standing[] {
  return [...matching.units.toAfter].map(([before, after]) => ({ before, after, key: keyOf(before, after) }));
}

function movedInChains(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const was = positions(before);
  const is = positions(after);
  const pairs = pairsOf(matching);
  const stays = ({ before: a, after: b }: Standing) => {
    const [from, to] = [was.get(a), is.get(b)];
    return from !== undefined && to !== undefined && matching.chains.toAfter.get(from.chain) === to.chain;
  };
  const moved = new Set<string>();
  for (const chain of matching.chains.toAfter.keys()) {
    const own = pairs.filter((pair) => stays(pair) && was.get(pair.before)?.chain === chain);
    const order = (place: (pair: Standing) => number) => [...own].sort((a, b) => place(a) - place(b)).map(({ key }) => key);
    const found = findMoved(
      order((pair) => was.get(pair.before)?.position ?? 0),
      order((pair) => is.get(pair.after)?.position ?? 0),
    );
    for (const key of found) moved.add(key);
  }
  return pairs.flatMap((pair): Change[] => {
    const [from, to] = [was.get(pair.before) ?? null, is.get(pair.after) ?? null];
    if (from === null && to === null) return [];
    if (stays(pair) && !moved.has(pair.key)) return [];
    return [{ kind: 'moved-in-chain', of: { list: 'units', before: pair.before, after: pair.after }, was: from, is: to }];
  });
}

function positions(content: CabinetContent): ReadonlyMap<string, ChainPosition> {
  const { placeOf: places } = buildTopology(content).topology;
  return new Map([...places].map(([unit, { chain, position }]) => [unit, { chain, position }]));
}

function movedInRows(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const places = (content: CabinetContent) => new Map((content.units ?? []).map((unit) => [unit.id, placeOf(unit)]));
  const was = places(before);
  const is = places(after);
  const pairs = pairsOf(matching);
  const rows = new Set([...was.values()].flatMap((place) => place?.row ?? []));
  const moved = new Set<string>();
  for (const row of rows) {
    const own = pairs.filter((pair) => was.get(pair.before)?.row === row && is.get(pair.after)?.row === row);
    const order = (slot: (pair: Standing) => number) =>
      [...own].sort((a, b) => slot(a) - slot(b) || compareText(a.key, b.key)).map(({ key }) => key);
    for (const key of findMoved(
      order((pair) => was.get(pair.before)?.slot ?? 0),
      order((pair) => is.get(pair.after)?.slot ?? 0),
    ))
      moved.add(key);
  }
  return pairs.flatMap((pair): Change[] => {
    const [from, to] = [was.get(pair.before) ?? null, is.get(pair.after) ?? null];
    if (from?.row === to?.row && from?.slot === to?.slot) return [];
    const of = { list: 'units', before: pair.before, after: pair.after } as const;
    const shifted = from !== null && to !== null && from.row === to.row && !moved.has(pair.key);
    return [shifted ? { kind: 'shifted', of, was: from, is: to } : { kind: 'moved-in-row', of, was: from, is: to }];
  });
}

function replugged(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const links = new Map((after.links ?? []).map((link) => [link.id, link]));
  const toAfter = (place: PlugPlace | null): string => {
    if (place === null) return '';
    return 'chain' in place
      ? `chain ${matching.chains.toAfter.get(place.chain) ?? '?'}`
      : `unit ${matching.units.toAfter.get(place.unit) ?? '?'}`;
  };
  const told = (place: PlugPlace | null) => (place === null ? '' : 'chain' in place ? `chain ${place.chain}` : `unit ${place.unit}`);
  return (before.links ?? []).flatMap((link) => {
    const other = links.get(matching.links.toAfter.get(link.id) ?? '');
    if (other === undefined) return [];
    return (['upper', 'lower'] as const).flatMap((end): Change[] => {
      const [was, is] = [plugPlace(link, end), plugPlace(other, end)];
      if (toAfter(was) === told(is)) return [];
      return [{ kind: 'replugged', of: { list: 'links', before: link.id, after: other.id }, end, was, is }];
    });
  });
}

function plugPlace(link: LinkRecord, end: LinkEnd): PlugPlace | null {
  return link[end] ?? null;
}

function reconnected(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const leads = new Map((after.leads ?? []).map((lead) => [lead.id, lead]));
  const told = (source: FeedSource | null, unit: string | undefined) => (source === null ? '' : `${unit ?? '?'} ${source.output ?? ''}`);
  return (before.leads ?? []).flatMap((lead) => {
    const other = leads.get(matching.leads.toAfter.get(lead.id) ?? '');
    if (other === undefined) return [];
    return (['from', 'to'] as const).flatMap((end): Change[] => {
      const [was, is]: readonly [FeedSource | null, FeedSource | null] = [lead[end] ?? null, other[end] ?? null];
      if (told(was, was === null ? '' : matching.units.toAfter.get(was.unit)) === told(is, is?.unit)) return [];
      return [{ kind: 'reconnected', of: { list: 'leads', before: lead.id, after: other.id }, end, was, is }];
    });
  });
}
