import { describe, expect, it } from 'vitest';
import { chooseParting, type RankedStep, type Step } from '../../engine/steps/index.ts';

const ranked = (step: Step, figures: Partial<Omit<RankedStep, 'step'>> = {}): RankedStep => ({
  step,
  information: 0.5,
  partsGroup: 0,
  mends: 0,
  outcomes: [],
  darkIsNormal: false,
  ...figures,
});
const lightBelow: Step = { do: 'look', look: { look: 'light-at-plug', link: 'w1', end: 'lower' } };
const replace: Step = { do: 'act', acts: [{ do: 'replace-cable', link: 'w1' }] };

describe('chooseParting', () => {
  it('should name for a group what parts it, rather a gentler step than a little better one, and nothing where nothing does', () => {
    expect(chooseParting([ranked(replace, { partsGroup: 0.6 }), ranked(lightBelow, { partsGroup: 0.5 })])?.step).toBe(lightBelow);
    expect(chooseParting([ranked(replace, { partsGroup: 0.6 }), ranked(lightBelow, { partsGroup: 0.1 })])?.step).toBe(replace);
    expect(chooseParting([ranked(replace), ranked(lightBelow, { partsGroup: 0.001 })])).toBeNull();
  });
});
