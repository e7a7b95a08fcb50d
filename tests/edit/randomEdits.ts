import fc from 'fast-check';
import {
  addChain,
  addFeedback,
  type ChainSpot,
  copyThings,
  duplicateThings,
  type EditResult,
  feedUnits,
  insertUnits,
  joinPorts,
  layCable,
  moveInChain,
  moveToPlace,
  type Port,
  pasteClip,
  reconnectLead,
  removeThings,
  replugEnd,
  takeOffChain,
} from '../../engine/edit/index.ts';
import { type CabinetContent, unitKinds } from '../../engine/schema/index.ts';
import { Random } from '../generators/random.ts';

/** One random edit: its name, and what it answers for a cabinet. The same seed does the same to the same cabinet. */
export interface RandomEdit {
  readonly name: string;
  readonly seed: number;
}

type Make = (content: CabinetContent, random: Random) => EditResult | null;

const idsIn = (list: readonly { readonly id: string }[] | undefined) => (list ?? []).map(({ id }) => id);
const one = (random: Random, ids: readonly string[]) => (ids.length === 0 ? null : random.pick(ids));
const some = (random: Random, ids: readonly string[]) => random.shuffled(ids).slice(0, random.whole(1, 4));

function spot(content: CabinetContent, random: Random): ChainSpot {
  const unit = () => one(random, idsIn(content.units)) ?? 'nowhere';
  const chain = () => one(random, idsIn(content.chains)) ?? 'nowhere';
  const spots: readonly (() => ChainSpot)[] = [
    () => ({ onLink: one(random, idsIn(content.links)) ?? 'nowhere' }),
    () => ({ afterUnit: unit() }),
    () => ({ beforeUnit: unit() }),
    () => ({ endOf: chain() }),
    () => ({ chain: chain(), position: random.whole(1, 14) }),
  ];
  return random.pick(spots)();
}

function port(content: CabinetContent, random: Random): Port {
  if (random.chance(0.2)) return { chain: one(random, idsIn(content.chains)) ?? 'nowhere' };
  return { unit: one(random, idsIn(content.units)) ?? 'nowhere', side: random.pick(['up', 'down'] as const) };
}

const place = (random: Random) => ({ row: random.whole(0, 4), slot: random.whole(0, 12) });

/** Every edit that a hand can do, with random things; also such as must be refused. */
export const edits: Readonly<Record<string, Make>> = {
  insert: (content, random) =>
    insertUnits(content, {
      units: Array.from({ length: random.whole(1, 3) }, () => ({ kind: random.pick(unitKinds) })),
      at: random.chance(0.8) ? spot(content, random) : null,
      ...(random.chance(0.3) ? { place: place(random) } : {}),
    }),
  remove: (content, random) =>
    removeThings(
      content,
      some(random, [...idsIn(content.units), ...idsIn(content.links), ...idsIn(content.leads), ...idsIn(content.chains), 'nowhere']),
    ),
  move: (content, random) => moveInChain(content, some(random, idsIn(content.units)), spot(content, random)),
  'take off': (content, random) => takeOffChain(content, some(random, idsIn(content.units))),
  place: (content, random) => moveToPlace(content, some(random, idsIn(content.units)), place(random)),
  lay: (content, random) => layCable(content, random.chance(0.3) ? null : port(content, random)),
  join: (content, random) => joinPorts(content, port(content, random), port(content, random)),
  replug: (content, random) => {
    const link = one(random, idsIn(content.links)) ?? 'nowhere';
    return replugEnd(content, link, random.pick(['upper', 'lower'] as const), random.chance(0.2) ? null : port(content, random));
  },
  chain: (content) => addChain(content),
  feed: (content, random) =>
    feedUnits(
      content,
      { unit: one(random, idsIn(content.units)) ?? 'nowhere' },
      some(random, idsIn(content.units)),
      random.pick(['each', 'through'] as const),
    ),
  reconnect: (content, random) =>
    reconnectLead(content, one(random, idsIn(content.leads)) ?? 'nowhere', {
      from: random.chance(0.2) ? null : { unit: one(random, idsIn(content.units)) ?? 'nowhere' },
      ...(random.chance(0.5) ? { to: one(random, idsIn(content.units)) } : {}),
    }),
  feedback: (content, random) => addFeedback(content, { unit: one(random, idsIn(content.units)) ?? 'nowhere' }),
  duplicate: (content, random) =>
    duplicateThings(content, some(random, [...idsIn(content.units), ...idsIn(content.chains)]), {
      at: random.chance(0.5) ? spot(content, random) : null,
      ...(random.chance(0.3) ? { place: place(random) } : {}),
    }),
  paste: (content, random) => {
    const text = copyThings(
      content,
      [...idsIn(content.units), ...idsIn(content.chains)].filter(() => random.chance(0.4)),
    );
    return text === null ? null : pasteClip(content, text, { at: random.chance(0.5) ? spot(content, random) : null });
  },
};

export const editNames = Object.keys(edits);

/** Does one random edit; null where it finds nothing to be done to. */
export function doEdit(content: CabinetContent, { name, seed }: RandomEdit): EditResult | null {
  return edits[name]?.(content, new Random(seed)) ?? null;
}

export const arbitraryEdits = (most: number): fc.Arbitrary<readonly RandomEdit[]> =>
  fc.array(fc.record({ name: fc.constantFrom(...editNames), seed: fc.nat() }), { minLength: 1, maxLength: most });
