/**
 * Remembers the last few things that were worked out for an owner (a cabinet, as a rule), because the next question is mostly about the
 * same one. Equal keys give the same object again, so what is kept must never be changed. An owner nobody holds any more takes its own along.
 */
export class Recent<Owner extends object, Value> {
  private readonly kept = new WeakMap<Owner, Map<string, Value>>();

  /** `most`: how many are kept of one owner; the one asked for longest ago makes room. */
  constructor(private readonly most: number) {}

  get(owner: Owner, key: string, workOut: () => Value): Value {
    const own = this.kept.get(owner) ?? new Map<string, Value>();
    this.kept.set(owner, own);
    const known = own.get(key);
    const value = known ?? workOut();
    // A map goes by the order in which keys came: what was asked for last stands last.
    own.delete(key);
    own.set(key, value);
    if (own.size > this.most) {
      const [oldest] = own.keys();
      own.delete(oldest ?? key);
    }
    return value;
  }
}
