import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { listFaultSpace } from '../../engine/diagnosis/index.ts';
import { type CabinetContent, directions, type Fault, type LookObservation, linkEnds, onsets } from '../../engine/schema/index.ts';
import { type Look, layOut, outcomeAt, simulate } from '../../engine/simulation/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { plainSimulation } from './plainSimulation.ts';

/** Up to four faults of every kind, on different items, steady or come and gone. */
function drawFaults(random: Random, all: readonly (readonly Fault[])[]): readonly Fault[] {
  return random
    .shuffled(all)
    .slice(0, random.whole(0, 4))
    .map((modes) => {
      const fault = random.pick(modes);
      return fault.presence === 'intermittent' && random.chance(0.6) ? { ...fault, absentNow: true } : fault;
    });
}

function everyLook({ links = [], units = [] }: CabinetContent): readonly Look[] {
  const onChain = units.filter(({ kind, onChain: isOn }) => kind !== 'supply' && isOn !== false);
  return [
    ...links.flatMap(({ id }): Look[] => [
      ...linkEnds.flatMap((end) => (['light-at-plug', 'light-at-port'] as const).map((look) => ({ look, link: id, end }))),
      ...directions.map((fibre) => ({ look: 'lamp' as const, link: id, fibre })),
      { look: 'compare-fibres', link: id },
    ]),
    ...units.filter(({ kind }) => kind !== 'supply').map(({ id }): Look => ({ look: 'voltage', unit: id })),
    ...onChain.map(({ id }): Look => ({ look: 'compare-plugs', unit: id })),
  ];
}

describe('what is shown, reported and seen, against the domain text written down plainly', () => {
  it('should show, report and let see the same, whatever is broken, however equipment behaves', () => {
    const seen = new Map<string, number>();
    const note = (what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);
    for (let seed = 1; seed <= 300; seed += 1) {
      const random = new Random(seed ^ 0x51ab);
      const content = makeCabinet(seed, { units: random.whole(1, 9), behaviours: random.pick(['default', 'mixed'] as const) });
      if (content.controller && random.chance(0.05)) Object.assign(content.controller, { powered: false });
      const { cabinet } = checkCabinet(content);
      if (cabinet === null) throw new Error(`generated cabinet ${seed} is not sound`);
      const space = listFaultSpace(cabinet, { circumstances: [], daysSinceWhole: 7, withWiringMistakes: true });
      const input = { faults: drawFaults(random, space.faults), onset: random.pick(onsets), halted: random.chance(0.8) };
      const plain = plainSimulation({ content, ...input });
      const { displays, reports } = simulate({ cabinet, ...input });
      const where = `seed ${seed}: ${JSON.stringify(input)}`;
      const shown = Object.fromEntries([...displays].map(([unit, { meaning }]) => [unit, meaning]));
      expect(shown, where).toEqual(Object.fromEntries(plain.displays));
      const reported = Object.fromEntries([...reports].map(([chain, { gap }]) => [chain, gap]));
      expect(reported, where).toEqual(Object.fromEntries(plain.reports));
      for (const meaning of plain.displays.values()) note(meaning);
      const looks = everyLook(content);
      const outcomes = looks.map((look) => plain.lookAt(look as Omit<LookObservation, 'outcomes'>));
      const { now } = layOut({ cabinet, ...input });
      expect(
        looks.map((look) => outcomeAt(look, now)),
        where,
      ).toEqual(outcomes);
      for (const [index, { look }] of looks.entries()) note(`${look}: ${outcomes[index]}`);
    }
    // The draw must reach everything that can be seen; a voltage that sags comes from the sums alone.
    const all = ['dark', 'quiet', 'upstream-loss', 'downstream-loss', 'both-losses', 'other'];
    const looks = {
      'light-at-plug': ['none', 'weak', 'bright', 'wrong-hole'],
      'light-at-port': ['none', 'bright'],
      lamp: ['none', 'weak', 'clear'],
      voltage: ['steady', 'absent'],
      'compare-plugs': ['same', 'differs'],
      'compare-fibres': ['same', 'differs'],
    };
    const wanted = [...all, ...Object.entries(looks).flatMap(([look, outcomes]) => outcomes.map((outcome) => `${look}: ${outcome}`))];
    for (const what of wanted) expect(seen.get(what) ?? 0, what).toBeGreaterThan(1);
  });
});
