/** A small deterministic source of chance (mulberry32, public domain), so that equal seeds give equal cabinets on every machine. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** A number from 0 up to, not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** A whole number, both bounds included. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }

  /** A number with one decimal, which JSON keeps exactly. */
  tenth(from: number, to: number): number {
    return this.whole(from * 10, to * 10) / 10;
  }

  pick<T>(list: readonly [T, ...T[]] | readonly T[]): T {
    const found = list[this.whole(0, list.length - 1)];
    if (found === undefined) throw new Error('nothing to pick from');
    return found;
  }

  shuffled<T>(list: readonly T[]): T[] {
    const keyed = list.map((item) => ({ item, key: this.next() }));
    return keyed.sort((a, b) => a.key - b.key).map(({ item }) => item);
  }

  /** `members` with the given probability, else nothing: spread it into an object to leave a field out now and then. */
  maybe<T extends object>(probability: number, members: () => T): T | Record<string, never> {
    return this.chance(probability) ? members() : {};
  }
}
