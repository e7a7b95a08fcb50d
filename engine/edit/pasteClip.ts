import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import type { CabinetContent, LinkRecord, UnitRecord } from '../schema/index.ts';
import { buildTopology } from '../topology/index.ts';
import { findGap } from './chainWork.ts';
import { cutOut, readClip } from './clip.ts';
import { type DesignatedKind, designationsBeside, nextDesignation } from './designation.ts';
import { splitDesignation } from './designations.ts';
import { mostUnits, placeUnits } from './insertUnits.ts';
import { refuseJoin } from './join.ts';
import { placeOf, standAt } from './places.ts';
import type { ChainSpot, EditResult, Place, SharedList } from './types.ts';
import { freeSharedId, Work } from './work.ts';

/** Where what is pasted goes. Left out: on no chain, at the end of the cabinet. */
export interface PasteTarget {
  /** Into a chain there; `null` or left out: the units hang together as they were copied, and on nothing else. */
  readonly at?: ChainSpot | null;
  /** Where the first one stands; the others keep their places beside it. */
  readonly place?: Place;
  /** Serial numbers come along too. Left out: they do not; a second part of one number does not exist. */
  readonly keepSerials?: boolean;
}

/** Pastes what `copyThings` wrote, with new ids and the next free designations. Text that is no cabinet is refused with its reason. */
export function pasteClip(content: CabinetContent, text: string, target: PasteTarget = {}): EditResult {
  const read = readClip(text);
  return read.ok ? pasteCabinet(content, read.value, target) : read;
}

/** Copies and pastes in one step. */
export function duplicateThings(content: CabinetContent, ids: readonly string[], target: PasteTarget = {}): EditResult {
  const clip = cutOut(content, ids);
  return clip === null ? fail(makeProblem('clip-empty', 'refused')) : pasteCabinet(content, clip, target);
}

function pasteCabinet(content: CabinetContent, clip: CabinetContent, target: PasteTarget): EditResult {
  if ((content.units ?? []).length + (clip.units ?? []).length > mostUnits) {
    return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'units', maximum: mostUnits } }));
  }
  const work = new Work(content);
  const shared = pasteShared(work, clip);
  const ids = new Map<string, string>();
  const units = ordered(clip);
  for (const unit of units) ids.set(unit.id, work.freshId('u'));
  for (const unit of units) work.put('units', pastedUnit(work, unit, ids, shared, target.keepSerials ?? false));
  const joined = pasteLinks(work, clip, ids, shared, target.at ?? null);
  if (!joined.ok) return joined;
  pasteCables(work, clip, ids);
  const trouble = standPasted(work, units, ids, target.place ?? null);
  return trouble === null ? ok(work.finish()) : fail(trouble);
}

/** Chain by chain from its head outwards, then the rest: the order in which the new ones are numbered. */
function ordered(clip: CabinetContent): readonly UnitRecord[] {
  const { topology } = buildTopology(clip);
  const below = new Map(
    (clip.links ?? []).flatMap(({ upper, lower }) => (upper && 'unit' in upper && lower ? [[upper.unit, lower.unit]] : [])),
  );
  const fed = new Set((clip.links ?? []).map(({ lower }) => lower?.unit));
  const heads = [
    ...topology.chains.flatMap(({ units }) => units.slice(0, 1) as readonly string[]),
    ...(clip.units ?? []).map(({ id }) => id),
  ];
  const found = new Set<string>();
  for (const head of heads) {
    if (fed.has(head) && !topology.chains.some(({ units }) => (units[0] as string | undefined) === head)) continue;
    for (let id: string | undefined = head; id !== undefined && !found.has(id); id = below.get(id)) found.add(id);
  }
  for (const { id } of clip.units ?? []) found.add(id);
  const byId = new Map((clip.units ?? []).map((unit) => [unit.id, unit]));
  return [...found].flatMap((id) => byId.get(id) ?? []);
}

type Shared = ReadonlyMap<string, string>;
const sharedStems = { types: 'type-', legends: 'legend-', fibres: 'fibre-', photos: 'photo-' } as const;

/** What the units name: used as it is where the cabinet has the very same, else brought along under a new id. */
function pasteShared(work: Work, clip: CabinetContent): { readonly [L in SharedList]: Shared } {
  const legends = bring('legends', (record) => record);
  const fibres = bring('fibres', (record) => record);
  const photos = bring('photos', (record) => record);
  const types = bring('types', (record) => {
    const { legend, ...rest } = record;
    const named = legend === undefined ? undefined : legends.get(legend);
    return named === undefined ? rest : { ...rest, legend: named };
  });
  return { types, legends, fibres, photos };

  function bring<L extends SharedList>(list: L, renamed: (record: SharedRecord<L>) => SharedRecord<L>): Shared {
    const found = new Map<string, string>();
    for (const original of (clip[list] ?? []) as readonly SharedRecord<L>[]) {
      const record = renamed(original);
      const there = work.all(list) as readonly SharedRecord<L>[];
      const { id: _id, ...said } = record;
      const same = there.find(({ id: _other, ...other }) => JSON.stringify(sorted(other)) === JSON.stringify(sorted(said)));
      const id = same?.id ?? (there.some((one) => one.id === record.id) ? freeSharedId(there, sharedStems[list]) : record.id);
      if (same === undefined) work.put(list, { ...record, id });
      found.set(original.id, id);
    }
    return found;
  }
}

type SharedRecord<L extends SharedList> = NonNullable<CabinetContent[L]>[number];

/** Members in the order of their names, so that equal records have equal texts. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, member]) => [key, sorted(member)]),
  );
}

function pastedUnit(
  work: Work,
  unit: UnitRecord,
  ids: ReadonlyMap<string, string>,
  shared: { readonly [L in SharedList]: Shared },
  keepSerials: boolean,
): UnitRecord {
  const { row: _row, slot: _slot, onChain, type, photos, dcLinkSupply, ...rest } = keepSerials ? unit : withoutSerials(unit);
  const known = type === undefined ? undefined : shared.types.get(type);
  const supply = dcLinkSupply === undefined ? undefined : ids.get(dcLinkSupply);
  const pictures = photos?.flatMap((photo) => shared.photos.get(photo) ?? []);
  return {
    ...rest,
    id: ids.get(unit.id) ?? unit.id,
    designation: pastedDesignation(work, unit.kind, unit.designation),
    ...(onChain === false && (unit.kind === 'servo-drive' || unit.kind === 'spindle-drive') ? { onChain } : {}),
    ...(known === undefined ? {} : { type: known }),
    ...(supply === undefined ? {} : { dcLinkSupply: supply }),
    ...(pictures === undefined || pictures.length === 0 ? {} : { photos: pictures }),
  };
}

/** A record without what only one part on earth bears. */
function withoutSerials(unit: UnitRecord): UnitRecord {
  const { serial: _serial, board, ...rest } = unit;
  if (board === undefined) return rest;
  const { serial: _boardSerial, ...kept } = board;
  return Object.keys(kept).length === 0 ? rest : { ...rest, board: kept };
}

/** A designation for something pasted, as a member of it; none where there was none. */
const designated = (work: Work, kind: DesignatedKind, designation: string | undefined) =>
  designation === undefined ? {} : { designation: pastedDesignation(work, kind, designation) };

/** The designation itself where it is free; else its stem with the next number. */
function pastedDesignation(work: Work, kind: DesignatedKind, designation: string): string {
  const wanted = designation.trim();
  if (wanted === '') return nextDesignation(work, kind);
  const taken = designationsBeside(work, kind);
  if (!taken.has(wanted)) return wanted;
  const numbered = taken.next(splitDesignation(wanted)?.stem ?? `${wanted}.`);
  return numbered.length <= 200 ? numbered : nextDesignation(work, kind);
}

/** Cables between pasted units; chains that came along become new ones, unless everything goes into one that is there. */
function pasteLinks(
  work: Work,
  clip: CabinetContent,
  ids: ReadonlyMap<string, string>,
  shared: { readonly [L in SharedList]: Shared },
  at: ChainSpot | null,
): Result<null> {
  const chains = at === null ? pasteChains(work, clip) : ok(new Map<string, string>());
  if (!chains.ok) return chains;
  const port = (upper: LinkRecord['upper']): LinkRecord['upper'] => {
    if (upper === undefined) return undefined;
    const id = 'chain' in upper ? chains.value.get(upper.chain) : ids.get(upper.unit);
    return id === undefined ? undefined : 'chain' in upper ? { chain: id } : { unit: id };
  };
  const made: LinkRecord[] = [];
  for (const link of clip.links ?? []) {
    const { fibre, serial: _serial, upper: from, lower: to, ...rest } = link;
    const upper = port(from);
    const lower = to === undefined ? undefined : ids.get(to.unit);
    if (upper === undefined || lower === undefined) continue;
    // A clip may come from anywhere: cables that no cabinet can have are left out.
    const upperPort = 'chain' in upper ? upper : ({ unit: upper.unit, side: 'down' } as const);
    if (refuseJoin(work, upperPort, { unit: lower, side: 'up' }) !== null) continue;
    const known = fibre === undefined ? undefined : shared.fibres.get(fibre);
    const record = {
      ...rest,
      id: work.freshId('w'),
      ...designated(work, 'link', link.designation),
      upper,
      lower: { unit: lower },
      ...(known === undefined ? {} : { fibre: known }),
    };
    work.put('links', record);
    made.push(record);
  }
  return at === null ? ok(null) : hangIn(work, [...ids.values()], at);
}

/** Makes the chains of a clip anew, and answers the new ids by the old ones. */
function pasteChains(work: Work, clip: CabinetContent): Result<ReadonlyMap<string, string>> {
  const ids = new Map<string, string>();
  for (const chain of clip.chains ?? []) {
    const id = work.freshId('chain');
    const number = 1 + Math.max(0, ...work.all('chains').map((one) => one.number));
    if (number > 999 || work.all('chains').length >= 200) {
      return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'chains', maximum: 200 } }));
    }
    const { serial: _serial, ...rest } = chain;
    work.put('chains', { ...rest, id, number });
    ids.set(chain.id, id);
  }
  return ok(ids);
}

/** Hangs pasted runs into a chain, one behind another: each run's head into the gap, what was behind the gap to its last unit. */
function hangIn(work: Work, ids: readonly string[], at: ChainSpot): Result<null> {
  let spot = at;
  for (const id of ids) {
    const unit = work.get('units', id);
    if (unit === undefined || unit.kind === 'supply' || unit.onChain === false || work.linkInto(id) !== undefined) continue;
    let last = id;
    const seen = new Set([id]);
    for (;;) {
      const next = work.linkFrom({ unit: last })?.lower?.unit;
      if (next === undefined || seen.has(next)) break;
      seen.add(next);
      last = next;
    }
    const gap = findGap(work, spot);
    if (!gap.ok) return gap;
    const cable = () => ({ id: work.freshId('w'), designation: nextDesignation(work, 'link') });
    const there = 'above' in gap.value ? work.get('links', gap.value.above.id) : work.linkFrom(gap.value.port);
    const behind = 'above' in gap.value ? gap.value.above.lower : there?.lower;
    if (there !== undefined) work.put('links', { ...there, lower: { unit: id } });
    else if (!('above' in gap.value)) work.put('links', { ...cable(), upper: gap.value.port, lower: { unit: id } });
    if (behind !== undefined) work.put('links', { ...cable(), upper: { unit: last }, lower: behind });
    spot = { afterUnit: last };
  }
  return ok(null);
}

function pasteCables(work: Work, clip: CabinetContent, ids: ReadonlyMap<string, string>): void {
  for (const lead of clip.leads ?? []) {
    const { serial: _serial, ...rest } = lead;
    const from = lead.from && ids.get(lead.from.unit);
    const to = lead.to && ids.get(lead.to.unit);
    if (lead.from === undefined || from === undefined || to === undefined) continue;
    if (from === to || work.get('units', to)?.kind === 'supply') continue;
    const { output } = lead.from;
    const known = output !== undefined && work.get('units', from)?.supply?.outputs?.some(({ id }) => id === output);
    work.put('leads', {
      ...rest,
      id: work.freshId('l'),
      ...designated(work, 'lead', lead.designation),
      from: { unit: from, ...(known ? { output } : {}) },
      to: { unit: to },
    });
  }
  for (const feedback of clip.feedbacks ?? []) {
    const { serial: _serial, ...rest } = feedback;
    const unit = ids.get(feedback.unit);
    if (unit === undefined || work.get('units', unit)?.kind === 'supply') continue;
    work.put('feedbacks', { ...rest, id: work.freshId('g'), ...designated(work, 'feedback', feedback.designation), unit });
  }
}

/** Pasted units keep their places to each other: from `place` on, or in rows below all others. */
function standPasted(work: Work, units: readonly UnitRecord[], ids: ReadonlyMap<string, string>, place: Place | null) {
  const places = units.map(placeOf);
  const hung = units.some(({ id }) => {
    const upper = work.linkInto(ids.get(id) ?? '')?.upper;
    return upper !== undefined && 'unit' in upper && ![...ids.values()].includes(upper.unit);
  });
  const known = places.flatMap((one) => one ?? []);
  if (known.length < units.length || (hung && place === null)) {
    return placeUnits(
      work,
      units.map(({ id }) => ids.get(id) ?? id),
      place,
    );
  }
  const [first] = known;
  const top = Math.min(...known.map(({ row }) => row));
  const left = Math.min(...known.filter(({ row }) => row === top).map(({ slot }) => slot));
  const origin = place ?? { row: 1 + Math.max(0, ...work.all('units').map(({ row }) => row ?? 0)), slot: first === undefined ? 1 : left };
  for (const [index, unit] of units.entries()) {
    const from = places[index];
    if (from === null || from === undefined) continue;
    const to = { row: origin.row + from.row - top, slot: Math.max(0, origin.slot + from.slot - left) };
    const trouble = standAt(work, ids.get(unit.id) ?? unit.id, to);
    if (trouble !== null) return trouble;
  }
  return null;
}
