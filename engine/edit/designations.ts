/** A designation taken apart: "=A1+K2-TB3" is the beginning "=A1+K2-TB" and the number 3. Null: it does not end with a number. */
export function splitDesignation(designation: string): { readonly stem: string; readonly number: number } | null {
  const found = /^(.*?)([0-9]{1,9})$/.exec(designation.trim());
  return found === null ? null : { stem: found[1] ?? '', number: Number(found[2]) };
}

interface Stem {
  /** How many different designations bear it. */
  count: number;
  /** The greatest number after it; null: the one that was it is gone, and it must be looked for. */
  greatest: number | null;
}

/** The designations of a set of things, as they come and go; says at once how each stem is numbered on. */
export class Designations {
  readonly #counts = new Map<string, number>();
  readonly #stems = new Map<string, Stem>();

  has(designation: string): boolean {
    return this.#counts.has(designation);
  }

  add(text: string | undefined): void {
    const designation = text?.trim() ?? '';
    if (designation === '') return;
    const count = this.#counts.get(designation) ?? 0;
    this.#counts.set(designation, count + 1);
    const split = count === 0 ? splitDesignation(designation) : null;
    if (split === null) return;
    const stem = this.#stems.get(split.stem) ?? { count: 0, greatest: 0 };
    stem.count += 1;
    stem.greatest = stem.greatest === null ? null : Math.max(stem.greatest, split.number);
    this.#stems.set(split.stem, stem);
  }

  remove(text: string | undefined): void {
    const designation = text?.trim() ?? '';
    const count = this.#counts.get(designation) ?? 0;
    if (count > 1) this.#counts.set(designation, count - 1);
    if (count !== 1) return;
    this.#counts.delete(designation);
    const split = splitDesignation(designation);
    const stem = split === null ? undefined : this.#stems.get(split.stem);
    if (split === null || stem === undefined) return;
    stem.count -= 1;
    if (stem.count === 0) this.#stems.delete(split.stem);
    else if (split.number === stem.greatest) stem.greatest = null;
  }

  /** A stem with the first number after the greatest that it bears. */
  next(stem: string): string {
    return `${stem}${1 + this.#greatestOf(stem)}`;
  }

  /** The stem that most designations of these class letters bear, the first by text of several; null where there is none. */
  commonStem(letters: string): string | null {
    let best: string | null = null;
    let most = 0;
    for (const [stem, { count }] of this.#stems) {
      const isOfLetters = stem.endsWith(letters) && !/[A-Za-z]/.test(stem.slice(0, -letters.length).slice(-1));
      if (isOfLetters && (count > most || (count === most && best !== null && stem < best))) {
        best = stem;
        most = count;
      }
    }
    return best;
  }

  #greatestOf(text: string): number {
    const stem = this.#stems.get(text);
    if (stem === undefined) return 0;
    if (stem.greatest === null) {
      stem.greatest = 0;
      for (const designation of this.#counts.keys()) {
        const split = splitDesignation(designation);
        if (split?.stem === text) stem.greatest = Math.max(stem.greatest, split.number);
      }
    }
    return stem.greatest;
  }
}
