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

  /**
   * All pairs of classes, in square tiles of two: the two presences of one effect are neighbours in the list, and a predictor that
   * keeps its last pair's work is asked for the same pair of effects four times running.
   */
  private visitPairs(): boolean {
    const count = this.flat.classes.length;
    const shares = new Float64Array(count);
    // Which classes have members that exclude a member of this one: a byte each is faster to ask than a map.
    const marks = [new Uint8Array(count), new Uint8Array(count)] as const;
    for (let c = 0; c < count; c += 2) {
      for (const row of [0, 1] as const) {
        this.markConflicts(c + row, marks[row]);
      }
      if (this.problem.onProgress?.(c / Math.max(1, count)) === false) {
        return false;
      }
      for (let d = c; d < count; d += 2) {
        for (let i = c; i < Math.min(c + 2, count); i += 1) {
          for (let j = Math.max(i, d); j < Math.min(d + 2, count); j += 1) {
            this.visitPair(i, j, shares, marks[i === c ? 0 : 1][j] === 1);
          }
        }
      }
    }
    this.flat.modes.forEach((mode, index) => {
      this.gain(index, mode.odds * (shares[mode.cls] ?? 0));
    });
    return true;
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

  private visitPair(i: number, j: number, shares: Float64Array, hasConflicts: boolean): void {
    const first = this.flat.classes[i];
    const second = this.flat.classes[j];
    if (first === undefined || second === undefined) {
      return;
    }
    if (i === j) {
      this.visitWithin(i);
      return;
    }
    this.two[0] = first.example;
    this.two[1] = second.example;
    let odds = first.weight * second.weight;
    let count = first.members.length * second.members.length;
    let best = first.best * second.best;
    if (!hasConflicts) {
      const likelihood = this.weigh(this.two);
      shares[i] = (shares[i] ?? 0) + second.weight * likelihood;
      shares[j] = (shares[j] ?? 0) + first.weight * likelihood;
      this.account(i, j, odds, likelihood, count, best);
      return;
    }
    // Count all pairs of members, then take out those that exclude each other; what is predicted depends on the effects alone.
    const likelihood = this.weigh(this.two);
    for (const a of first.members) {
      for (const b of second.members) {
        if (this.isBarred(a, b)) {
          const barred = (this.flat.modes[a]?.odds ?? 0) * (this.flat.modes[b]?.odds ?? 0);
          odds -= barred;
          count -= 1;
          this.gain(a, -barred * likelihood);
          this.gain(b, -barred * likelihood);
        }
      }
    }
    shares[i] = (shares[i] ?? 0) + second.weight * likelihood;
    shares[j] = (shares[j] ?? 0) + first.weight * likelihood;
    if (count === 0) {
      return;
    }
    if (best * likelihood > this.top.threshold) {
      best = this.allowedPairs(i, j).reduce((most, pair) => Math.max(most, pair.odds), 0);
    }
    this.account(i, j, odds, likelihood, count, best);
  }

  private account(i: number, j: number, odds: number, likelihood: number, count: number, best: number): void {
    const mass = odds * likelihood;
    this.total += mass;
    this.visitedOdds += odds;
    this.visited += count;
    if (best * likelihood > this.top.threshold) {
      this.top.add(best * likelihood, () => ({ classes: [i, j], likelihood }));
    }
    if (mass > this.topPairs.threshold) {
      this.topPairs.add(mass, () => ({ classes: [i, j], likelihood, mass }));
    }
  }

  /** Pairs of members of one class. */
  private visitWithin(i: number): void {
    const pairs = this.allowedPairs(i, i);
    const [first] = pairs;
    if (first === undefined) {
      return;
    }
    this.two[0] = this.choice(first.a);
    this.two[1] = this.choice(first.b);
    const likelihood = this.weigh(this.two);
    let odds = 0;
    let best = 0;
    for (const pair of pairs) {
      odds += pair.odds;
      best = Math.max(best, pair.odds);
      this.gain(pair.a, pair.odds * likelihood);
      this.gain(pair.b, pair.odds * likelihood);
    }
    this.account(i, i, odds, likelihood, pairs.length, best);
  }

  /** Calls `take` for every pair of members of two classes (or one) that do not exclude each other, until it answers false. */
  private forAllowedPairs(i: number, j: number, take: (a: number, b: number, odds: number) => boolean): void {
    const { modes, classes } = this.flat;
    const others = classes[j]?.members ?? [];
    for (const a of classes[i]?.members ?? []) {
      const odds = modes[a]?.odds ?? 0;
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
        for (const { a, b, odds } of this.allowedPairs(i, j)) {
          add([a, b], odds);
        }
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
