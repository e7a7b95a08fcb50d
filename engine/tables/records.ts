/** A record of any list, whatever it holds. */
export interface Draft {
  readonly id: string;
  readonly [field: string]: unknown;
}

/** The records of one list while another list is taken into it, found by id, by designation, and nameless cables by where they lie. */
export class Records {
  readonly #all = new Map<string, Draft>();
  readonly #orders = new Map<string, number>();
  readonly #named = new Map<string, Set<string>>();
  readonly #nameless = new Map<string, Set<string>>();

  constructor(records: Iterable<Draft>) {
    for (const record of records) this.set(record);
  }

  get(id: string): Draft | undefined {
    return this.#all.get(id);
  }

  /** Adds a record, or replaces the one of its id in its place. */
  set(record: Draft): void {
    const old = this.#all.get(record.id);
    if (old !== undefined) this.#forget(old);
    else this.#orders.set(record.id, this.#orders.size);
    this.#all.set(record.id, record);
    const name = nameOf(record);
    if (name !== null) append(this.#named, name, record.id);
    if (!record['designation']) append(this.#nameless, endsKey(record['upper'], record['lower']), record.id);
  }

  delete(id: string): void {
    const old = this.#all.get(id);
    if (old !== undefined) this.#forget(old);
    this.#all.delete(id);
  }

  list(): readonly Draft[] {
    return [...this.#all.values()];
  }

  /** Those of a designation, spaces around it left aside, in the order of the list. */
  named(name: string): readonly Draft[] {
    return this.#inOrder(this.#named.get(name));
  }

  /** The first that has no designation and lies between these ends. */
  nameless(upper: unknown, lowerUnit: unknown): Draft | null {
    return this.#inOrder(this.#nameless.get(endsKey(upper, { unit: lowerUnit })))[0] ?? null;
  }

  #inOrder(ids: ReadonlySet<string> | undefined): readonly Draft[] {
    const found = [...(ids ?? [])].sort((a, b) => (this.#orders.get(a) ?? 0) - (this.#orders.get(b) ?? 0));
    return found.flatMap((id) => this.#all.get(id) ?? []);
  }

  #forget(record: Draft): void {
    const name = nameOf(record);
    if (name !== null) this.#named.get(name)?.delete(record.id);
    this.#nameless.get(endsKey(record['upper'], record['lower']))?.delete(record.id);
  }
}

function nameOf(record: Draft): string | null {
  return typeof record['designation'] === 'string' ? record['designation'].trim() : null;
}

function endsKey(upper: unknown, lower: unknown): string {
  const unit = typeof lower === 'object' && lower !== null && 'unit' in lower ? lower.unit : undefined;
  return JSON.stringify([upper, unit]);
}

function append(map: Map<string, Set<string>>, key: string, id: string): void {
  const ids = map.get(key);
  if (ids === undefined) map.set(key, new Set([id]));
  else ids.add(id);
}
