/** A number from 0 up to 1 from a seed and whole numbers that name the draw; equal input gives equal numbers (splitmix32, Steele et al. 2014). */
export function draw(seed: number, ...names: readonly number[]): number {
  let state = seed >>> 0;
  for (const name of names) state = mix(state + Math.imul(name + 1, 0x9e3779b9));
  return mix(state) / 2 ** 32;
}

function mix(value: number): number {
  let z = (value + 0x9e3779b9) >>> 0;
  z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
  z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
  return (z ^ (z >>> 16)) >>> 0;
}

/** Draws one after another from a seed. */
export class Draws {
  private count = 0;

  constructor(private readonly seed: number) {}

  next(): number {
    this.count += 1;
    return draw(this.seed, this.count);
  }

  pick<T>(list: readonly T[]): T | undefined {
    return list[Math.floor(this.next() * list.length)];
  }

  shuffled<T>(list: readonly T[]): readonly T[] {
    return list
      .map((one) => ({ one, at: this.next() }))
      .sort((a, b) => a.at - b.at)
      .map(({ one }) => one);
  }
}
