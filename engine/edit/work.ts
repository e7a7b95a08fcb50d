import { compareNatural, makeProblem, type Problem } from '../base/index.ts';
import type { CabinetContent, LinkRecord } from '../schema/index.ts';
import { Designations } from './designations.ts';
import { type Edited, type EditedList, editedLists, type RecordOf, standingLists } from './types.ts';

type Lists = { [L in EditedList]?: Map<string, RecordOf<L>> };
type Rest = Omit<CabinetContent, EditedList>;
type DesignatedList = 'units' | 'links' | 'leads' | 'feedbacks';

/**
 * A cabinet while it is edited. Records are replaced, never changed; `finish` makes a content that shares everything that stayed.
 * Ids made here count on from the greatest one that is there, so that an id that was just given up is not given again at once.
 */
export class Work {
  readonly #before: CabinetContent;
  readonly #lists: Lists = {};
  readonly #changed = new Set<string>();
  #rest: Rest;
  #ids: Set<string> | null = null;
  /** By stem, the greatest number that ids bear after it. Ids that were given up count on. */
  readonly #greatest = new Map<string, number>();
  readonly #designations = new Map<DesignatedList, Designations>();

  constructor(content: CabinetContent) {
    this.#before = content;
    this.#rest = content;
  }

  /** The members of the content that are no lists of records. */
  get rest(): Rest {
    return this.#rest;
  }

  /** Replaces members that are no lists of records, or leaves them out where they are undefined; `id` names what changes by it. */
  setRest(rest: Partial<Rest>, id: string): void {
    const entries = Object.entries({ ...this.#rest, ...rest }).filter(([, value]) => value !== undefined);
    const known = this.#designations.get('units');
    known?.remove(this.#rest.controller?.designation);
    this.#rest = Object.fromEntries(entries) as Rest; // only optional members can have been undefined
    known?.add(this.#rest.controller?.designation);
    this.#changed.add(id);
  }

  all<L extends EditedList>(list: L): readonly RecordOf<L>[] {
    return [...this.#map(list).values()];
  }

  get<L extends EditedList>(list: L, id: string): RecordOf<L> | undefined {
    return this.#map(list).get(id);
  }

  /** Adds a record, or replaces the one of its id. */
  put<L extends EditedList>(list: L, record: RecordOf<L>): void {
    const records = this.#map(list);
    this.#rename(list, records.get(record.id), record);
    records.set(record.id, record);
    if (this.#ids === null || this.#ids.has(record.id)) return;
    this.#ids.add(record.id);
    for (const [stem, most] of this.#greatest) this.#greatest.set(stem, Math.max(most, numberAfter(record.id, stem)));
  }

  drop(list: EditedList, id: string): void {
    const records = this.#map(list);
    this.#rename(list, records.get(id), undefined);
    records.delete(id);
  }

  /** The designations of a list; those of the units with that of the controller. */
  designations(list: DesignatedList): Designations {
    const known = this.#designations.get(list);
    if (known !== undefined) return known;
    const made = new Designations();
    for (const record of this.#map(list).values()) made.add(record.designation);
    if (list === 'units') made.add(this.#rest.controller?.designation);
    this.#designations.set(list, made);
    return made;
  }

  #rename(list: EditedList, before: object | undefined, after: object | undefined): void {
    const designations = this.#designations.get(list as DesignatedList); // of another list nothing is kept
    designations?.remove(designationOf(before));
    designations?.add(designationOf(after));
  }

  /** An id that nothing in the cabinet bears, such as `u12` for the stem `u`. */
  freshId(stem: string): string {
    this.#ids ??= this.#allIds();
    const number = 1 + (this.#greatest.get(stem) ?? greatest([...this.#ids], stem));
    this.#greatest.set(stem, number);
    const id = `${stem}${number}`;
    this.#ids.add(id);
    return id;
  }

  /** The link that sits in the upper port of a chain or in the `down` port of a unit; of several the first by id. */
  linkFrom(port: { readonly chain: string } | { readonly unit: string }): LinkRecord | undefined {
    return first(this.all('links').filter(({ upper }) => upper !== undefined && samePort(upper, port)));
  }

  /** The link that sits in the `up` port of a unit. */
  linkInto(unit: string): LinkRecord | undefined {
    return first(this.all('links').filter(({ lower }) => lower?.unit === unit));
  }

  finish(): Edited {
    const cabinet: CabinetContent = { ...this.#rest };
    const edited = { added: [] as string[], changed: [...this.#changed], removed: [] as string[] };
    for (const list of editedLists) {
      if (this.#lists[list] === undefined) continue;
      this.#writeList(cabinet, list);
      this.#noteChanges(list, edited);
    }
    return { cabinet: withoutRepairsOf(cabinet, new Set(edited.removed)), ...edited };
  }

  #noteChanges(list: EditedList, edited: { readonly added: string[]; readonly changed: string[]; readonly removed: string[] }): void {
    const after = this.#map(list);
    const before = new Map((this.#before[list] ?? []).map((record) => [record.id, record]));
    for (const [id, record] of after) {
      const old = before.get(id);
      if (old === undefined) edited.added.push(id);
      else if (old !== record) edited.changed.push(id);
    }
    for (const id of before.keys()) if (!after.has(id)) edited.removed.push(id);
  }

  #writeList<L extends EditedList>(cabinet: CabinetContent, list: L): void {
    const records = this.all(list);
    const before: readonly RecordOf<L>[] = this.#before[list] ?? [];
    if (records.length === before.length && records.every((record, index) => record === before[index])) return;
    // One list of the content at a time: its records are those of this list.
    cabinet[list] = records as CabinetContent[L];
  }

  #map<L extends EditedList>(list: L): Map<string, RecordOf<L>> {
    const known = this.#lists[list] as Map<string, RecordOf<L>> | undefined; // each list's map holds its own records
    if (known !== undefined) return known;
    const records: readonly RecordOf<L>[] = this.#before[list] ?? [];
    const made = new Map(records.map((record) => [record.id, record]));
    this.#lists[list] = made as Lists[L];
    return made;
  }

  #allIds(): Set<string> {
    const standing = standingLists.flatMap((list) => [...this.#map(list).keys()]);
    const controller = this.#rest.controller?.id;
    return new Set([...standing, ...(controller === undefined ? [] : [controller])]);
  }
}

/** Rows of the repair table go with the part that they are about. */
function withoutRepairsOf(cabinet: CabinetContent, gone: ReadonlySet<string>): CabinetContent {
  const { repair } = cabinet;
  const isGone = ({ subject }: { readonly subject?: string | undefined }) => subject !== undefined && gone.has(subject);
  return repair?.acts?.some(isGone) ? { ...cabinet, repair: { ...repair, acts: repair.acts.filter((row) => !isGone(row)) } } : cabinet;
}

/** An id for a list whose ids are its own, such as `type-3`. */
export function freeSharedId(records: readonly { readonly id: string }[], stem: string): string {
  return `${stem}${
    1 +
    greatest(
      records.map(({ id }) => id),
      stem,
    )
  }`;
}

export function samePort(
  a: { readonly chain: string } | { readonly unit: string },
  b: { readonly chain: string } | { readonly unit: string },
): boolean {
  return 'chain' in a ? 'chain' in b && a.chain === b.chain : 'unit' in b && a.unit === b.unit;
}

/** What was asked for is not there: it was taken out meanwhile, or never was. */
export function unknownThing(id: string): Problem {
  return makeProblem('edit-thing-unknown', 'refused', { subjects: [id], facts: { id } });
}

function greatest(ids: readonly string[], stem: string): number {
  return ids.reduce((most, id) => Math.max(most, numberAfter(id, stem)), 0);
}

/** The number that follows a stem in an id; 0 where none does. Only as many digits as a number holds exactly. */
function numberAfter(id: string, stem: string): number {
  if (!id.startsWith(stem)) return 0;
  const digits = id.slice(stem.length);
  return /^[0-9]{1,9}$/.test(digits) ? Number(digits) : 0;
}

function designationOf(record: object | undefined): string | undefined {
  return record !== undefined && 'designation' in record && typeof record.designation === 'string' ? record.designation : undefined;
}

function first(links: readonly LinkRecord[]): LinkRecord | undefined {
  return links.length < 2 ? links[0] : [...links].sort((a, b) => compareNatural(a.id, b.id))[0];
}
