import type { ChainId, UnitId } from '../../base/index.ts';
import { groupWords, makeNames, type ThingWord } from '../../messages/index.ts';
import type { OrdinalGroup } from '../../schema/index.ts';
import {
  findByOrdinal,
  findByPosition,
  findChainByName,
  findFeedbackByName,
  findLeadByName,
  findLinkByName,
  findUnitByName,
  type Topology,
} from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { type Asked, refused, understood } from './asked.ts';

/*
 * Names on the command line: a designation, an id, or a place on a chain. The leading sign of a designation may be left out, for
 * shells and people that stumble over it.
 */

interface Named {
  readonly id: string;
  readonly designation?: string | undefined;
}

/** A unit: `-TB2`, `TB2`, its id, `1/3` (chain and position), `1/drive/2` or `1/encoder/1` (chain, group, ordinal). */
export function readUnit(topology: Topology, name: string, thing: 'unit' | 'supply' = 'unit'): Asked<UnitId> {
  const wanted = name.trim();
  if (!wanted) return refused('name-missing', { where: name, thing });
  const found = findUnitByName(topology, wanted);
  if (found !== undefined) return understood(found);
  const place = readPlace(topology, wanted);
  if (place) return place;
  return named([...topology.units.values()], wanted, thing);
}

/** A link, by its cable's designation or its id. */
export function readLink(topology: Topology, name: string): Asked<string> {
  return find(name, 'cable', findLinkByName(topology, name), [...topology.links.values()]);
}

/** A power lead. */
export function readLead(topology: Topology, name: string): Asked<string> {
  return find(name, 'lead', findLeadByName(topology, name), [...topology.leads.values()]);
}

/** A feedback cable. */
export function readFeedback(topology: Topology, name: string): Asked<string> {
  return find(name, 'feedback', findFeedbackByName(topology, name), [...topology.feedbacks.values()]);
}

/** A chain: its number, id or name; "chain 1" is always the number. A text that is one chain's number and another one's id is refused. */
export function readChain(topology: Topology, name: string): Asked<ChainId> {
  const wanted = name.trim();
  if (!wanted) return refused('name-missing', { where: name, thing: 'chain' });
  const bare = wanted.replace(/^chain\s*/i, '');
  const numbered = topology.chains.find(({ record }) => String(record.number) === bare);
  if (numbered !== undefined && bare !== wanted) return understood(numbered.id);
  const found = findChainByName(topology, wanted) ?? findChainByName(topology, bare);
  if (numbered !== undefined && found !== undefined && numbered.id !== found) {
    const other = topology.chainById.get(found)?.record.number ?? numbered.record.number;
    return refused('chain-of-two', { name: wanted, numbers: [numbered.record.number, other] });
  }
  if (found !== undefined) return understood(found);
  const known = topology.chains.flatMap(({ id, record }) => [String(record.number), id, ...(record.name ? [record.name] : [])]);
  return refused('name-unknown', { thing: 'chain', name: wanted, near: findNearest(wanted, known) });
}

function find<I extends string>(name: string, thing: ThingWord, found: I | undefined, records: readonly Named[]): Asked<string> {
  const wanted = name.trim();
  if (!wanted) return refused('name-missing', { where: name, thing });
  return found === undefined ? named(records, wanted, thing) : understood<string>(found);
}

const withoutSign = (name: string) => name.replace(/^[-+=]+/, '').toLowerCase();

/** The one thing whose name differs only in the leading sign; else what stands in the way, with the nearest name. */
function named<I extends string>(records: readonly Named[], wanted: string, thing: ThingWord): Asked<I> {
  const ids = (match: (record: Named) => boolean) => records.filter(match).map(({ id }) => id);
  const same = ids(({ designation }) => designation?.trim().toLowerCase() === wanted.toLowerCase());
  const alike =
    same.length > 0 ? same : ids(({ designation }) => designation !== undefined && withoutSign(designation.trim()) === withoutSign(wanted));
  if (alike.length > 1) return refused('name-of-several', { thing, name: wanted, ids: alike });
  // Ids of these records are ids of this kind; the records carry them as plain text.
  if (alike[0] !== undefined) return understood(alike[0] as I);
  const known = records.flatMap(({ id, designation }) => (designation?.trim() ? [designation.trim(), id] : [id]));
  const names = records.map(({ id, designation }) => designation?.trim() || id);
  return refused('name-unknown', { thing, name: wanted, near: findNearest(wanted, known), known: names });
}

/** Two or three parts parted by a slash, the first of which names a chain; undefined when the text is nothing of the kind. */
function readPlace(topology: Topology, text: string): Asked<UnitId> | undefined {
  const [chainName = '', second = '', third, ...more] = text.split('/').map((part) => part.trim());
  if (more.length > 0 || !second) return undefined;
  const group = third === undefined ? undefined : readGroup(second);
  if (third === undefined ? !/^\d+$/.test(second) : group === undefined || !/^\d+$/.test(third)) return undefined;
  const chain = readChain(topology, chainName);
  if (!chain.ok) return chain;
  return group === undefined
    ? atPosition(topology, chain.value, Number(second), text)
    : atOrdinal(topology, chain.value, group, Number(third), text);
}

/** The unit at a position of a chain. `text` is how it was written. */
export function atPosition(topology: Topology, chain: ChainId, position: number, text: string): Asked<UnitId> {
  const found = findByPosition(topology, chain, position);
  if (found !== undefined) return understood(found);
  const length = topology.chainById.get(chain)?.units.length ?? 0;
  return refused('place-unknown', { name: text, chain: makeNames(topology).chain(chain), length });
}

/** The unit with an ordinal in its group on a chain. `text` is how it was written. */
export function atOrdinal(topology: Topology, chain: ChainId, group: OrdinalGroup, ordinal: number, text: string): Asked<UnitId> {
  const found = findByOrdinal(topology, chain, group, ordinal);
  if (found !== undefined) return understood(found);
  const count = [...topology.placeOf.values()].filter((place) => place.chain === chain && place.group === group).length;
  return refused('ordinal-unknown', { name: text, chain: makeNames(topology).chain(chain), group: groupWords[group], count });
}

/** "drive", "encoder" or "encoder interface". */
export function readGroup(text: string): OrdinalGroup | undefined {
  const word = text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');
  if (word === 'drive' || word === 'drives') return 'drive';
  return word === 'encoder' || word === 'encoders' || word === 'encoder interface' ? 'encoder-interface' : undefined;
}
