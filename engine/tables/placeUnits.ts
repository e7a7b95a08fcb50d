import type { UnitId } from '../base/index.ts';
import { readChainNumber } from '../quick/index.ts';
import { type CabinetContent, type ChainRecord, type LinkRecord, recordSchemas, type UnitRecord } from '../schema/index.ts';
import { buildTopology } from '../topology/index.ts';
import { readDecimal } from './csv.ts';
import type { Doubt, FieldChange } from './importTypes.ts';
import type { TableWords } from './makeTable.ts';

/** Where a row of a list says that its unit hangs. */
export interface PlaceWish {
  readonly row: number;
  readonly unit: string;
  readonly chain: string;
  readonly position: string;
}

/** What comes of the wishes: new chains and cables, and for each row what changes, or why it cannot be. */
export interface Placed {
  readonly chains: readonly ChainRecord[];
  readonly links: readonly LinkRecord[];
  readonly changes: ReadonlyMap<number, readonly FieldChange[]>;
  readonly doubts: ReadonlyMap<number, Doubt>;
}

/**
 * Hangs units on chains where a list says so: at the end of a chain, one after another, each with a cable that has no name yet. A chain
 * that the cabinet lacks is added. A unit that hangs somewhere already stays there: to move it means to cut a cable, and that is drawn.
 */
export function placeUnits(
  content: CabinetContent,
  wishes: readonly PlaceWish[],
  words: TableWords,
  newId: (base: string) => string,
): Placed {
  const chains: ChainRecord[] = [...(content.chains ?? [])];
  const links: LinkRecord[] = [...(content.links ?? [])];
  const changes = new Map<number, FieldChange[]>();
  const doubts = new Map<number, Doubt>();
  const { topology } = buildTopology(content);
  const ends = new Map(
    topology.chains.map(({ id, units }) => [id as string, { count: units.length, last: units.at(-1) as string | undefined }]),
  );
  const asked = wishes.flatMap((wish) => {
    const read = readWish(wish, chains, words);
    if ('code' in read) doubts.set(wish.row, read);
    return 'code' in read ? [] : [{ ...wish, ...read }];
  });
  const units = new Map((content.units ?? []).map((record) => [record.id, record]));
  const ports = portsInUse(links);
  const later = (at: number | null) => at ?? Number.MAX_SAFE_INTEGER;
  for (const { row, unit, number, at, ...wish } of asked.sort((a, b) => later(a.at) - later(b.at) || a.row - b.row)) {
    const chain = chains.find((one) => one.number === number) ?? { id: newId(`chain-${number}`), number };
    const place = topology.placeOf.get(unit as UnitId); // the id of a record of this content
    if (place !== undefined) {
      const stays = stayingWhere(topology.chainById.get(place.chain)?.record.number ?? 0, place.position, number, at);
      if (stays.length > 0) changes.set(row, stays);
      continue;
    }
    const end = ends.get(chain.id) ?? { count: 0, last: undefined };
    const trouble = whyNot(units.get(unit), ports, end.last, end.count, at);
    if (trouble !== null) {
      doubts.set(row, { code: trouble, key: at === null ? 'chain' : 'position', text: at === null ? wish.chain : wish.position });
      continue;
    }
    if (!chains.includes(chain)) chains.push(chain);
    const upper = end.last === undefined ? { chain: chain.id } : { unit: end.last };
    links.push({ id: newId(`cable-to-${unit}`), upper, lower: { unit } });
    ports.up.add(unit);
    if (end.last !== undefined) ports.down.add(end.last);
    ends.set(chain.id, { count: end.count + 1, last: unit });
    changes.set(row, [taken('chain', number), taken('position', end.count + 1)]);
  }
  return { chains, links, changes, doubts };
}

const taken = (key: 'chain' | 'position', value: number): FieldChange => ({ key, before: '', after: String(value), isTaken: true });

/** Number of the chain and the position that a row names; null: at the end. */
function readWish(
  { chain, position }: PlaceWish,
  chains: readonly ChainRecord[],
  words: TableWords,
): Doubt | { number: number; at: number | null } {
  const plain = (text: string | undefined) => text?.trim().toLowerCase();
  const named = chains.find(({ id, name, number }) =>
    [id, name, words.chainPort(number)].some((one) => one !== undefined && plain(one) === plain(chain)),
  );
  const [only, ...others] = chains;
  const number = named?.number ?? (chain.trim() === '' && others.length === 0 ? (only?.number ?? 1) : readChainNumber(chain));
  if (number === null || !recordSchemas.chains.shape.number.safeParse(number).success)
    return { code: 'name-unknown', key: 'chain', text: chain };
  const at = position.trim() === '' ? null : readDecimal(position);
  if (position.trim() !== '' && (at === null || !Number.isInteger(at) || at < 1))
    return { code: 'not-a-number', key: 'position', text: position };
  return { number, at };
}

function stayingWhere(chain: number, position: number, wantedChain: number, wantedPosition: number | null): FieldChange[] {
  const stays = (key: 'chain' | 'position', before: number, after: number): FieldChange[] =>
    before === after ? [] : [{ key, before: String(before), after: String(after), isTaken: false }];
  return [...stays('chain', chain, wantedChain), ...(wantedPosition === null ? [] : stays('position', position, wantedPosition))];
}

/** The units in whose up port, and in whose down port, a cable sits. */
function portsInUse(links: readonly LinkRecord[]): { readonly up: Set<string>; readonly down: Set<string> } {
  const up = new Set<string>();
  const down = new Set<string>();
  for (const { upper, lower } of links) {
    if (lower !== undefined) up.add(lower.unit);
    if (upper !== undefined && 'unit' in upper) down.add(upper.unit);
  }
  return { up, down };
}

function whyNot(
  record: UnitRecord | undefined,
  ports: { readonly up: ReadonlySet<string>; readonly down: ReadonlySet<string> },
  last: string | undefined,
  count: number,
  at: number | null,
): Doubt['code'] | null {
  if (record?.kind === 'supply' || record?.onChain === false) return 'never-on-chain';
  if (at !== null && at <= count) return 'position-taken';
  if (at !== null && at > count + 1) return 'position-gap';
  const isTaken = (record !== undefined && ports.up.has(record.id)) || (last !== undefined && ports.down.has(last));
  return isTaken ? 'port-taken' : null;
}
