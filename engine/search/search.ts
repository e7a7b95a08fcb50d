import { type EffectClass, type FlatProblem, flatten } from './classes.ts';
import { enumerate } from './enumerate.ts';
import { TopList } from './topList.ts';
import type { FaultChoice, SearchClass, SearchHypothesis, SearchProblem, SearchResult } from './types.ts';

const defaultKeep = 200;
/** How many combinations of two effects are listed besides all single ones. */
const keptPairs = 400;

/**
 * Visits every allowed combination of up to `maxFaults` faults and weighs it: prior odds × likelihood of the observations. Modes
 * of equal effect are weighed together, which changes nothing in the answer. Answers null when `onProgress` gave the search up.
 * Cost: about k²/2 predictions for two faults, k the number of different effects.
 */
export function search<Prediction>(problem: SearchProblem<Prediction>): SearchResult | null {
  if (problem.maxFaults > 2 || problem.minimalOnly === true) {
    return enumerate(problem);
  }
  return new PairSearch(problem, flatten(problem)).run();
}

interface AllowedPair {
  readonly a: number;
  readonly b: number;
  readonly odds: number;
}

/** A combination of classes that may hold one of the most probable hypotheses. */
interface Candidate {
  readonly classes: readonly number[];
  readonly likelihood: number;
}

class PairSearch<Prediction> {
  private readonly marginals: Float64Array;
  private readonly top: TopList<Candidate>;
  private readonly topPairs = new TopList<{ readonly classes: readonly number[]; readonly likelihood: number; readonly mass: number }>(
    keptPairs,
  );
  private readonly singles: Float64Array;
  /** By class, as in `EffectClass`. */
  private readonly weights: Float64Array;
  private readonly bests: Float64Array;
  private readonly sizes: Int32Array;
  private total = 0;
  private visitedOdds = 0;
  private visited = 1;
  /** Handed to `predict` again and again: one array of each length, so that the inner loop makes no garbage. */
  private readonly one: FaultChoice[] = [];
  private readonly two: FaultChoice[] = [];

  constructor(
    private readonly problem: SearchProblem<Prediction>,
    private readonly flat: FlatProblem,
  ) {
    this.marginals = new Float64Array(flat.modes.length);
    this.singles = new Float64Array(flat.classes.length);
    this.weights = Float64Array.from(flat.classes, ({ weight }) => weight);
    this.bests = Float64Array.from(flat.classes, ({ best }) => best);
    this.sizes = Int32Array.from(flat.classes, ({ members }) => members.length);
    this.top = new TopList(problem.keep ?? defaultKeep);
  }

  run(): SearchResult | null {
    const { classes } = this.flat;
    const nothing = this.weigh([]);
    this.total = nothing;
    this.top.add(nothing, () => ({ classes: [], likelihood: nothing }));
    if (this.problem.maxFaults >= 1) {
      classes.forEach((cls, index) => {
        this.visitSingle(cls, index);
      });
    }
    if (this.problem.maxFaults >= 2 && !this.visitPairs()) {
      return null;
    }
    return this.result(nothing);
  }

  private weigh(faults: readonly FaultChoice[]): number {
    const prediction = this.problem.predict(faults);
    const { observations } = this.problem;
    let likelihood = 1;
    for (let i = 0; i < observations.length; i += 1) {
      likelihood *= observations[i]?.likelihood(prediction) ?? 1;
    }
    return likelihood;
  }

  private visitSingle(cls: EffectClass, index: number): void {
    this.one[0] = cls.example;
    const likelihood = this.weigh(this.one);
    this.singles[index] = likelihood;
    this.total += cls.weight * likelihood;
    this.visitedOdds += cls.weight;
    this.visited += cls.members.length;
    for (const member of cls.members) {
      this.gain(member, (this.flat.modes[member]?.odds ?? 0) * likelihood);
    }
    this.top.add(cls.best * likelihood, () => ({ classes: [index], likelihood }));
  }

  private gain(mode: number, mass: number): void {
    this.marginals[mode] = (this.marginals[mode] ?? 0) + mass;
  }

  /** All pairs of classes, row by row. */
  private visitPairs(): boolean {
    const { classes, modes } = this.flat;
    const count = classes.length;
    const examples = classes.map(({ example }) => example);
    const shares = new Float64Array(count);
    const row = new Float64Array(count);
    // By class: 1 where a member excludes a member of the row's class; a byte each is faster to ask than a map.
    const conflicts = new Uint8Array(count);
    const weighRow = this.problem.weighRow ?? ((...given) => this.weighOneByOne(...given));
    for (let i = 0; i < count; i += 1) {
      if (this.problem.onProgress?.(i / Math.max(1, count)) === false) {
        return false;
      }
      this.visitWithin(i);
      const first = classes[i];
      if (first !== undefined && i + 1 < count) {
        weighRow(first.example, examples, i + 1, row);
        this.markConflicts(i, conflicts);
        this.visitRow(i, first, row, conflicts, shares);
      }
    }
    modes.forEach((mode, index) => {
      this.gain(index, mode.odds * (shares[mode.cls] ?? 0));
    });
    return true;
  }

  private weighOneByOne(first: FaultChoice, seconds: readonly FaultChoice[], start: number, likelihoods: Float64Array): void {
    this.two[0] = first;
    for (let k = start; k < seconds.length; k += 1) {
      this.two[1] = seconds[k] ?? first;
      likelihoods[k] = this.weigh(this.two);
    }
  }

  /** Marks the classes that have a member which cannot be at fault together with some member of a class. */
  private markConflicts(cls: number, marks: Uint8Array): void {
    const { classes, elementOf, barredBy, classesOf } = this.flat;
    marks.fill(0);
    for (const member of classes[cls]?.members ?? []) {
      for (const element of barredBy[elementOf[member] ?? 0] ?? []) {
        for (const other of classesOf[element] ?? []) {
          marks[other] = 1;
        }
      }
    }
  }

  private isBarred(a: number, b: number): boolean {
    const { elementOf, barredBy } = this.flat;
    const [one, other] = [elementOf[a] ?? 0, elementOf[b] ?? 0];
    return one === other || (barredBy[one]?.includes(other) ?? false);
  }

  private visitRow(i: number, first: EffectClass, row: Float64Array, conflicts: Uint8Array, shares: Float64Array): void {
    const { weights, bests, sizes } = this;
    const { weight, best } = first;
    const size = first.members.length;
    // Sums and thresholds are kept in locals: this runs millions of times.
    let share = 0;
    let total = 0;
    let visitedOdds = 0;
    let visited = 0;
    let topLeast = this.top.threshold;
    let pairsLeast = this.topPairs.threshold;
    for (let j = i + 1; j < row.length; j += 1) {
      const likelihood = row[j] ?? 0;
      const other = weights[j] ?? 0;
      const size2 = sizes[j] ?? 0;
      share += other * likelihood;
      shares[j] = (shares[j] ?? 0) + weight * likelihood;
      let odds = weight * other;
      let count = size * size2;
      let most = best * (bests[j] ?? 0);
      if (conflicts[j] === 1) {
        // Count all pairs of members, then take out those that exclude each other; what is predicted depends on the effects alone.
        const barred = this.takeOutBarred(i, j, likelihood);
        odds -= barred.odds;
        count -= barred.count;
        if (count === 0) {
          continue;
        }
        if (most * likelihood > topLeast) {
          most = this.allowedPairs(i, j).reduce((greatest, pair) => Math.max(greatest, pair.odds), 0);
        }
      }
      const mass = odds * likelihood;
      total += mass;
      visitedOdds += odds;
      visited += count;
      if (most * likelihood > topLeast || mass > pairsLeast) {
        this.keep(i, j, mass, likelihood, most);
        topLeast = this.top.threshold;
        pairsLeast = this.topPairs.threshold;
      }
    }
    shares[i] = (shares[i] ?? 0) + share;
    this.total += total;
    this.visitedOdds += visitedOdds;
    this.visited += visited;
  }

  private takeOutBarred(i: number, j: number, likelihood: number): { readonly odds: number; readonly count: number } {
    let odds = 0;
    let count = 0;
    for (const a of this.flat.classes[i]?.members ?? []) {
      for (const b of this.flat.classes[j]?.members ?? []) {
        if (this.isBarred(a, b)) {
          const barred = (this.flat.modes[a]?.odds ?? 0) * (this.flat.modes[b]?.odds ?? 0);
          odds += barred;
          count += 1;
          this.gain(a, -barred * likelihood);
          this.gain(b, -barred * likelihood);
        }
      }
    }
    return { odds, count };
  }

  private keep(i: number, j: number, mass: number, likelihood: number, best: number): void {
    this.top.add(best * likelihood, () => ({ classes: [i, j], likelihood }));
    this.topPairs.add(mass, () => ({ classes: [i, j], likelihood, mass }));
  }

  /** Pairs of members of one class. Before anything is observed all modes are of one class, and these pairs are all there are. */
  private visitWithin(i: number): void {
    const members = this.flat.classes[i]?.members ?? [];
    const [first] = this.allowedPairs(i, i, 1);
    if (first === undefined) {
      return;
    }
    this.two[0] = this.choice(first.a);
    this.two[1] = this.choice(first.b);
    const likelihood = this.weigh(this.two);
    const { elementOf, barredBy } = this.flat;
    const weights = Float64Array.from(members, (member) => this.flat.modes[member]?.odds ?? 0);
    const isBarred = new Uint8Array(barredBy.length);
    let odds = 0;
    let best = 0;
    for (let k = 0; k < members.length; k += 1) {
      const a = members[k] ?? 0;
      const barred = barredBy[elementOf[a] ?? 0] ?? [];
      const weight = weights[k] ?? 0;
      for (const element of barred) {
        isBarred[element] = 1;
      }
      for (let l = k + 1; l < members.length; l += 1) {
        const b = members[l] ?? 0;
        if (isBarred[elementOf[b] ?? 0] === 0) {
          const pair = weight * (weights[l] ?? 0);
          odds += pair;
          best = Math.max(best, pair);
          this.gain(a, pair * likelihood);
          this.gain(b, pair * likelihood);
          this.visited += 1;
        }
      }
      for (const element of barred) {
        isBarred[element] = 0;
      }
    }
    this.total += odds * likelihood;
    this.visitedOdds += odds;
    this.keep(i, i, odds * likelihood, likelihood, best);
  }

  /**
   * Calls `take` for every pair of members of two classes (or one) that do not exclude each other, until it answers false; of members
   * none of whose pairs can have more than `least` odds there need be none.
   */
  private forAllowedPairs(
    i: number,
    j: number,
    take: (a: number, b: number, odds: number) => boolean,
    least: () => number = () => 0,
  ): void {
    const { modes, classes } = this.flat;
    const others = classes[j]?.members ?? [];
    for (const a of classes[i]?.members ?? []) {
      const odds = modes[a]?.odds ?? 0;
      // By a hair more, since products round.
      if (odds * (classes[j]?.best ?? 0) * (1 + 1e-9) < least()) {
        continue;
      }
      for (let k = 0; k < others.length; k += 1) {
        const b = others[k] ?? 0;
        if ((i !== j || a < b) && !this.isBarred(a, b) && !take(a, b, odds * (modes[b]?.odds ?? 0))) {
          return;
        }
      }
    }
  }

  private allowedPairs(i: number, j: number, limit = Number.POSITIVE_INFINITY): readonly AllowedPair[] {
    const pairs: AllowedPair[] = [];
    this.forAllowedPairs(i, j, (a, b, odds) => pairs.push({ a, b, odds }) < limit);
    return pairs;
  }

  private choice(mode: number): FaultChoice {
    const found = this.flat.modes[mode]?.choice;
    if (found === undefined) {
      throw new Error('no such mode');
    }
    return found;
  }

  private result(nothing: number): SearchResult {
    const { total } = this;
    const share = (mass: number) => (total > 0 ? mass / total : 0);
    const modes = this.problem.elements.map((element) => element.modes.map(() => 0));
    this.flat.modes.forEach(({ choice }, index) => {
      const row = modes[choice.element];
      if (row !== undefined) {
        // Taking excluded pairs out again may leave a rounding error below zero.
        row[choice.mode] = Math.max(0, share(this.marginals[index] ?? 0));
      }
    });
    return {
      total,
      visitedOdds: this.visitedOdds,
      unvisitedOdds: Math.max(0, this.flat.allOdds - 1 - this.visitedOdds),
      visited: this.visited,
      nothing: share(nothing),
      modes,
      hypotheses: this.expandTop(share),
      classes: this.listClasses(share),
    };
  }

  /** The most probable hypotheses are among the members of the most promising combinations of classes. */
  private expandTop(share: (mass: number) => number): readonly SearchHypothesis[] {
    const found = new TopList<SearchHypothesis>(this.problem.keep ?? defaultKeep);
    for (const { classes, likelihood } of this.top.list()) {
      const [i, j] = classes;
      const add = (members: readonly number[], odds: number) =>
        found.add(odds * likelihood, () => ({
          faults: members.map((member) => this.choice(member)),
          odds,
          likelihood,
          probability: share(odds * likelihood),
        }));
      if (i === undefined) {
        add([], 1);
      } else if (j === undefined) {
        for (const member of this.flat.classes[i]?.members ?? []) {
          add([member], this.flat.modes[member]?.odds ?? 0);
        }
      } else {
        this.forAllowedPairs(
          i,
          j,
          (a, b, odds) => {
            if (odds * likelihood > found.threshold) {
              add([a, b], odds);
            }
            return true;
          },
          () => found.threshold / likelihood,
        );
      }
    }
    return found.list();
  }

  private listClasses(share: (mass: number) => number): readonly SearchClass[] {
    const list: SearchClass[] = [];
    this.flat.classes.forEach((cls, index) => {
      const likelihood = this.singles[index] ?? 0;
      if (likelihood > 0) {
        list.push({ example: [cls.example], likelihood, probability: share(cls.weight * likelihood) });
      }
    });
    for (const { classes, likelihood, mass } of this.topPairs.list()) {
      const [i, j] = classes;
      const [first] = this.allowedPairs(i ?? 0, j ?? 0, 1);
      if (first !== undefined) {
        list.push({
          example: [this.choice(first.a), this.choice(first.b)],
          likelihood,
          probability: share(mass),
        });
      }
    }
    return list.sort((a, b) => b.probability - a.probability);
  }
}
