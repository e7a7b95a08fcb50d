import type { FaultChoice, SearchProblem } from './types.ts';

/** One mode that can occur, with its index in the flat list. */
export interface FlatMode {
  readonly choice: FaultChoice;
  readonly odds: number;
  readonly cls: number;
}

/** Modes that are predicted alike and therefore searched as one. */
export interface EffectClass {
  readonly members: readonly number[];
  /** Σ odds of the members. */
  readonly weight: number;
  /** Odds of the likeliest member. */
  readonly best: number;
  readonly example: FaultChoice;
}

/** The flat form of a problem that the search works on. */
export interface FlatProblem {
  readonly modes: readonly FlatMode[];
  readonly classes: readonly EffectClass[];
  /** Element of each mode. */
  readonly elementOf: Int32Array;
  /** Elements that exclude an element, itself among them: no two modes of these can be at fault together. */
  readonly barredBy: readonly (readonly number[])[];
  /** Classes of the modes of each element. */
  readonly classesOf: readonly (readonly number[])[];
  /** ∏ over the elements of (1 + Σ odds of its modes), exclusions taken out: Σ odds of all allowed combinations, none included. */
  readonly allOdds: number;
}

type Searchable = Pick<SearchProblem<unknown>, 'elements' | 'excludes'>;

/** Flattens a problem: drops modes that cannot occur, gathers those of equal effect, lists what excludes what. */
export function flatten({ elements, excludes }: Searchable): FlatProblem {
  const known = flattened.get(elements);
  if (known !== undefined && known.excludes === excludes) {
    return known.flat;
  }
  const flat = workOut({ elements, ...(excludes === undefined ? {} : { excludes }) });
  flattened.set(elements, { excludes, flat });
  return flat;
}

/** Searched anew for every reading, the list of elements stays the same. */
const flattened = new WeakMap<Searchable['elements'], { readonly excludes: Searchable['excludes']; readonly flat: FlatProblem }>();

function workOut(problem: Searchable): FlatProblem {
  const modes: FlatMode[] = [];
  const classOf = new Map<string, number>();
  const members: number[][] = [];
  problem.elements.forEach((element, elementIndex) => {
    element.modes.forEach((mode, modeIndex) => {
      if (mode.odds <= 0) {
        return;
      }
      const key = mode.effect ?? `\u0000${elementIndex}/${modeIndex}`;
      let cls = classOf.get(key);
      if (cls === undefined) {
        cls = members.length;
        classOf.set(key, cls);
        members.push([]);
      }
      members[cls]?.push(modes.length);
      modes.push({ choice: { element: elementIndex, mode: modeIndex }, odds: mode.odds, cls });
    });
  });
  const barredBy = problem.elements.map((_, element) => [element]);
  for (const [one, other] of problem.excludes ?? []) {
    barredBy[one]?.push(other);
    barredBy[other]?.push(one);
  }
  const classesOf = problem.elements.map((): number[] => []);
  for (const { choice, cls } of modes) {
    const list = classesOf[choice.element];
    if (list !== undefined && !list.includes(cls)) {
      list.push(cls);
    }
  }
  return {
    modes,
    classes: members.map((list) => makeClass(list, modes)),
    elementOf: Int32Array.from(modes, ({ choice }) => choice.element),
    barredBy,
    classesOf,
    allOdds: sumAllOdds(problem),
  };
}

function makeClass(members: readonly number[], modes: readonly FlatMode[]): EffectClass {
  let weight = 0;
  let best = 0;
  for (const index of members) {
    const odds = modes[index]?.odds ?? 0;
    weight += odds;
    best = Math.max(best, odds);
  }
  const example = modes[members[0] ?? 0]?.choice ?? { element: 0, mode: 0 };
  return { members, weight, best, example };
}

/**
 * Σ odds over all allowed combinations. Elements that exclude each other form small groups (a cable with its two fibres); within
 * a group the sum runs over its subsets without an excluded pair, between groups it factorises.
 */
export function sumAllOdds(problem: Searchable): number {
  const odds = problem.elements.map((element) => element.modes.reduce((sum, mode) => sum + Math.max(0, mode.odds), 0));
  const groupOf = problem.elements.map((_, index) => index);
  const find = (index: number): number => {
    const up = groupOf[index] ?? index;
    return up === index ? index : find(up);
  };
  const excluded = new Set<string>();
  for (const [one, other] of problem.excludes ?? []) {
    groupOf[find(one)] = find(other);
    excluded.add(`${one},${other}`);
    excluded.add(`${other},${one}`);
  }
  const groups = new Map<number, number[]>();
  problem.elements.forEach((_, index) => {
    const root = find(index);
    groups.set(root, [...(groups.get(root) ?? []), index]);
  });
  const sumOf = (group: readonly number[], chosen: readonly number[]): number => {
    const [first, ...rest] = group;
    if (first === undefined) {
      return 1;
    }
    const without = sumOf(rest, chosen);
    const isAllowed = chosen.every((other) => !excluded.has(`${first},${other}`));
    return isAllowed ? without + (odds[first] ?? 0) * sumOf(rest, [...chosen, first]) : without;
  };
  let product = 1;
  for (const group of groups.values()) {
    product *= sumOf(group, []);
  }
  return product;
}
