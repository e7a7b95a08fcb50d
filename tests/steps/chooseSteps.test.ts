import { describe, expect, it } from 'vitest';
import type { UnitId } from '../../engine/base/index.ts';
import { chooseParting, chooseSteps, type RankedStep, type Step } from '../../engine/steps/index.ts';

const ranked = (step: Step, figures: Partial<Omit<RankedStep, 'step'>> = {}): RankedStep => ({
  step,
  information: 0.5,
  partsGroup: 0,
  mends: 0,
  outcomes: [],
  darkIsNormal: false,
  ...figures,
});
const read: Step = { do: 'read-display', unit: 'u1' as UnitId };
const lightBelow: Step = { do: 'look', look: { look: 'light-at-plug', link: 'w1', end: 'lower' } };
const lightAbove: Step = { do: 'look', look: { look: 'light-at-plug', link: 'w1', end: 'upper' } };
const reseat: Step = { do: 'act', acts: [{ do: 'reseat-plug', link: 'w1', end: 'upper' }] };
const replace: Step = { do: 'act', acts: [{ do: 'replace-cable', link: 'w1' }] };
const exchange: Step = { do: 'act', acts: [{ do: 'exchange-cables', link: 'w1', other: 'w2' }] };
const exchangeBack: Step = { do: 'act', acts: [{ do: 'exchange-cables', link: 'w2', other: 'w1' }] };
const stepsOf = (list: readonly RankedStep[]) => list.map(({ step }) => step);

describe('chooseSteps', () => {
  it('should put first what tells most', () => {
    expect(stepsOf(chooseSteps([ranked(replace, { information: 1.2 }), ranked(read, { information: 0.8 })]))[0]).toBe(replace);
  });

  it('should put first what interferes least, where several tell about as much', () => {
    const list = [ranked(replace, { information: 1 }), ranked(reseat, { information: 0.98 }), ranked(lightBelow, { information: 0.96 })];
    expect(stepsOf(chooseSteps(list))[0]).toBe(lightBelow);
  });

  it('should put first an act that mends nine times of ten, however much another step would tell', () => {
    const list = [ranked(lightBelow, { information: 1.4 }), ranked(reseat, { information: 0.2, mends: 0.92 })];
    expect(stepsOf(chooseSteps(list))[0]).toBe(reseat);
    const almost = [ranked(lightBelow, { information: 1.4 }), ranked(reseat, { information: 0.2, mends: 0.89 })];
    expect(stepsOf(chooseSteps(almost))[0]).toBe(lightBelow);
  });

  it('should list the same at the same place once, and nothing that tells nothing', () => {
    const list = [
      ranked(lightBelow, { information: 1 }),
      ranked(lightAbove, { information: 0.9 }),
      ranked(exchange, { information: 0.8 }),
      ranked(exchangeBack, { information: 0.8 }),
      ranked(read, { information: 0 }),
    ];
    expect(stepsOf(chooseSteps(list))).toEqual([lightBelow, exchange]);
    expect(chooseSteps([])).toEqual([]);
  });

  it('should name for a group what parts it, rather a gentler step than a little better one, and nothing where nothing does', () => {
    expect(chooseParting([ranked(replace, { partsGroup: 0.6 }), ranked(lightBelow, { partsGroup: 0.5 })])?.step).toBe(lightBelow);
    expect(chooseParting([ranked(replace, { partsGroup: 0.6 }), ranked(lightBelow, { partsGroup: 0.1 })])?.step).toBe(replace);
    expect(chooseParting([ranked(replace), ranked(lightBelow, { partsGroup: 0.001 })])).toBeNull();
  });
});
