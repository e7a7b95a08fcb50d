/**
 * The `size` entries of greatest value seen so far. Of equal values the one that came first stays in front, so that equal searches
 * give equal lists. A binary heap with the least at its root.
 */
export class TopList<T> {
  private readonly heap: { value: number; order: number; entry: T }[] = [];
  private count = 0;

  constructor(private readonly size: number) {}

  /** The value that a new entry must exceed; 0 while there is room. */
  get threshold(): number {
    return this.heap.length < this.size ? 0 : (this.heap[0]?.value ?? 0);
  }

  add(value: number, make: () => T): void {
    if (value <= this.threshold || this.size === 0) {
      return;
    }
    const item = { value, order: this.count, entry: make() };
    this.count += 1;
    if (this.heap.length < this.size) {
      this.heap.push(item);
      this.rise(this.heap.length - 1);
    } else {
      this.heap[0] = item;
      this.sink();
    }
  }

  /** Entries, greatest first. */
  list(): T[] {
    return [...this.heap].sort((a, b) => b.value - a.value || a.order - b.order).map(({ entry }) => entry);
  }

  private isLess(i: number, j: number): boolean {
    const [a, b] = [this.heap[i], this.heap[j]];
    return a !== undefined && b !== undefined && (a.value < b.value || (a.value === b.value && a.order > b.order));
  }

  private swap(i: number, j: number): void {
    const [a, b] = [this.heap[i], this.heap[j]];
    if (a !== undefined && b !== undefined) {
      this.heap[i] = b;
      this.heap[j] = a;
    }
  }

  private rise(from: number): void {
    for (let i = from; i > 0; ) {
      const parent = (i - 1) >> 1;
      if (!this.isLess(i, parent)) {
        return;
      }
      this.swap(i, parent);
      i = parent;
    }
  }

  private sink(): void {
    for (let i = 0; ; ) {
      const left = 2 * i + 1;
      const right = left + 1;
      let least = i;
      if (left < this.heap.length && this.isLess(left, least)) {
        least = left;
      }
      if (right < this.heap.length && this.isLess(right, least)) {
        least = right;
      }
      if (least === i) {
        return;
      }
      this.swap(i, least);
      i = least;
    }
  }
}
