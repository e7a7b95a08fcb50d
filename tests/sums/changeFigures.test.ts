import { describe, expect, it } from 'vitest';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import { makeNames, wordFigureChange } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { cabinetContent } from '../../engine/schema/index.ts';
import { cabinetFigures, changeFigures, type FigureChange, type ThingFigure, thingFigures } from '../../engine/sums/index.ts';
import { rawCodesIn } from '../messages/rawCodes.ts';
import { oneLink, sound, sumsOf } from './sketch.ts';

const idOf = { cable: 'w1', lead: 'd1', unit: 'u1', supply: 's' } as const;
// The keys are exactly the figures.
const changes: readonly FigureChange[] = [
  ...cabinetFigures.map((figure) => ({ figure, value: 7 })),
  ...(Object.keys(thingFigures) as ThingFigure[]).flatMap((figure) =>
    thingFigures[figure].map((thing) => ({ figure, id: idOf[thing], value: 7 })),
  ),
];
const nameOf = (change: FigureChange) => `${change.figure} of ${'id' in change ? change.id : 'the cabinet'}`;

describe('changeFigures', () => {
  it.each(changes.map((change) => [nameOf(change), change] as const))(
    'should change %s, and nothing else, and leave what it was given',
    (_, change) => {
      const before = oneLink();
      const written = serializeCabinet(before);
      const after = changeFigures(before, [change]);
      expect(serializeCabinet(before)).toBe(written);
      expect(cabinetContent.safeParse(after).success).toBe(true);
      const lines = (content: CabinetContent) =>
        new Set(
          serializeCabinet(content)
            .split('\n')
            .map((line) => line.trim().replace(/,$/, '')),
        );
      const added = [...lines(after)].filter((line) => !lines(before).has(line) && /: /.test(line) && !/[{[]$/.test(line));
      expect(added.map((line) => line.replace(/^"\w+": /, ''))).toEqual(['7']);
    },
  );

  it.each(changes.map((change) => [nameOf(change), change] as const))('should have words for %s', (_, change) => {
    const words = wordFigureChange(makeNames(sound(oneLink())), change);
    expect(words).toMatch(/7/);
    expect(rawCodesIn(words)).toEqual([]);
  });

  it('should change nothing for what is not there', () => {
    expect(changeFigures(oneLink(), [{ figure: 'length', id: 'nowhere', value: 7 }])).toEqual(oneLink());
  });

  it('should be what the sums follow', () => {
    const longer = changeFigures(oneLink(), [
      { figure: 'length', id: 'w1', value: 12 },
      { figure: 'reserve', value: 1 },
    ]);
    expect(sumsOf(longer).optical[0]?.margin.value).toBeCloseTo(6.4 - 1 + 1, 9);
  });
});
