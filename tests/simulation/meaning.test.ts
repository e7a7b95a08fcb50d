import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { listFaultSpace } from '../../engine/diagnosis/index.ts';
import { layOut, meaningAt, simulateMoments, stateOf, tripOf } from '../../engine/simulation/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';

describe('the short ways through the simulation', () => {
  it('should show what the whole simulation shows, for any two faults, coming and going, at both onsets', () => {
    let shown = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const random = new Random(seed);
      const { cabinet } = checkCabinet(makeCabinet(seed));
      if (cabinet === null) throw new Error(`generated cabinet ${seed} is not sound`);
      const space = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: 7, withWiringMistakes: true });
      const all = space.faults.flat();
      const faults = [random.pick(all), random.pick(all)].map((fault) => ({ ...fault, absentNow: random.chance(0.5) }));
      const input = {
        cabinet,
        faults,
        onset: random.pick(['while-running', 'at-power-up'] as const),
        halted: random.chance(0.8),
        beforeTrip:
          random.chance(0.3) && cabinet.chains[0]?.units[0] ? [{ do: 'take-out-unit' as const, unit: cabinet.chains[0].units[0] }] : [],
      };
      const whole = simulateMoments(layOut(input));
      const moments = layOut(input);
      for (const [unit, { meaning }] of whole.displays) {
        expect(meaningAt(unit, moments), `seed ${seed}, ${unit}`).toBe(meaning);
        shown += meaning === 'quiet' ? 0 : 1;
      }
      expect(tripOf(input)).toEqual(whole.trip);
      expect(stateOf(moments.now)).toEqual(whole.now);
    }
    expect(shown).toBeGreaterThan(100);
  });
});
