import { describe, expect, it } from 'vitest';
import { isSameShown, showParameter } from '../../engine/behaviour/index.ts';
import { defaultBehaviour } from '../../engine/cabinet/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourParameters, behaviourValues } from '../../engine/schema/index.ts';

const others = (parameter: BehaviourParameter) => behaviourValues[parameter].slice(1);
const withValue = (parameter: BehaviourParameter, value: string): Behaviour => ({ ...defaultBehaviour, [parameter]: value });

describe('the example chain', () => {
  it.each(behaviourParameters.flatMap((parameter) => others(parameter).map((value) => ({ parameter, value }))))(
    'should look otherwise when $parameter is $value, and all else as usual',
    ({ parameter, value }) => {
      const usual = showParameter(defaultBehaviour, parameter);
      expect(isSameShown(usual, showParameter(withValue(parameter, value), parameter))).toBe(false);
      expect(isSameShown(usual, showParameter(defaultBehaviour, parameter))).toBe(true);
    },
  );

  it('should show a break as the domain text says: neighbours only, or everybody beyond it', () => {
    const shown = (value: string) => {
      const { units, simulation } = showParameter(withValue('lossScope', value), 'lossScope');
      return units.map((unit) => simulation.displays.get(unit)?.meaning);
    };
    expect(shown('neighbour')).toEqual(['quiet', 'downstream-loss', 'upstream-loss', 'quiet']);
    expect(shown('chain')).toEqual(['downstream-loss', 'downstream-loss', 'upstream-loss', 'upstream-loss']);
  });
});
