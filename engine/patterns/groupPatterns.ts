import { compareText } from '../base/index.ts';
import { displayMeanings, type Onset } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { show } from './simulateSingles.ts';
import type { PatternGroup, Patterns, SeenBy, SingleFault } from './types.ts';

type Shown = Pick<SingleFault, 'displays' | 'reports'>;

/** Puts single faults together that show the same, by what is seen of them. */
export function groupPatterns(cabinet: Cabinet, singles: readonly SingleFault[], onset: Onset, seenBy: SeenBy): Patterns {
  const healthy = keyOf(show(cabinet, [], onset), seenBy);
  const groups = new Map<string, SingleFault[]>();
  for (const single of singles) {
    const key = keyOf(single, seenBy);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [single]);
    else group.push(single);
  }
  const unseen = groups.get(healthy) ?? [];
  groups.delete(healthy);
  return { onset, seenBy, groups: [...groups.values()].map(makeGroup).sort(compareGroups(cabinet)), unseen: byRate(unseen) };
}

const keyOf = ({ displays, reports }: Shown, seenBy: SeenBy): string =>
  `${[...displays.values()].join()}|${seenBy === 'displays' ? '' : [...reports.values()].join()}`;

const byRate = (faults: readonly SingleFault[]): readonly SingleFault[] =>
  [...faults].sort((a, b) => b.ratePerYear - a.ratePerYear || compareText(a.item, b.item) || compareText(a.fault.mode, b.fault.mode));

function makeGroup(members: readonly SingleFault[]): PatternGroup {
  const faults = byRate(members);
  const [first] = faults;
  if (first === undefined) throw new Error('a group has members');
  return {
    displays: first.displays,
    reports: first.reports,
    faults,
    ratePerYear: faults.reduce((sum, { ratePerYear }) => sum + ratePerYear, 0),
  };
}

/** By the place of the break along the chains, as one reads the sheet from left to right; then by what is shown from the first unit on. */
function compareGroups(cabinet: Cabinet): (a: PatternGroup, b: PatternGroup) => number {
  const place = ({ reports }: PatternGroup) => {
    const chain = cabinet.chains.findIndex(({ id }) => (reports.get(id) ?? 'none') !== 'none');
    const gap = chain < 0 ? 'none' : (reports.get(cabinet.chains[chain]?.id as never) ?? 'none'); // the chain that was just found
    return [chain < 0 ? Number.MAX_SAFE_INTEGER : chain, gap === 'none' ? 0 : gap] as const;
  };
  const shown = ({ displays }: PatternGroup) => [...displays.values()].map((meaning) => displayMeanings.indexOf(meaning));
  return (a, b) => {
    const [chainA, gapA] = place(a);
    const [chainB, gapB] = place(b);
    const first = chainA - chainB || gapA - gapB;
    if (first !== 0) return first;
    const right = shown(b);
    for (const [index, meaning] of shown(a).entries()) {
      const order = meaning - (right[index] ?? 0);
      if (order !== 0) return order;
    }
    return 0;
  };
}
