import { describe, expect, it } from 'vitest';
import { diagnose, listFaultSpace } from '../../engine/diagnosis/index.ts';
import { plainCabinet } from '../bench/cabinets.ts';

describe('a diagnosis before anything was seen', () => {
  it('should put every hypothesis into one group, pairs counted that can be at fault together', () => {
    const cabinet = plainCabinet(1, 4);
    const { elements, excludes } = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: 7, withWiringMistakes: true });
    const modes = elements.flatMap(({ modes: of }, element) => of.map(() => element));
    const isBarred = (a: number, b: number) => a === b || excludes.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
    let pairs = 0;
    modes.forEach((a, i) => {
      for (const b of modes.slice(i + 1)) pairs += isBarred(a, b) ? 0 : 1;
    });
    const { groups, hypothesesVisited } = diagnose(cabinet, { snapshots: [] });
    expect(hypothesesVisited).toBe(1 + modes.length + pairs);
    expect(groups.map(({ hypotheses }) => hypotheses)).toEqual([hypothesesVisited]);
  });
});
