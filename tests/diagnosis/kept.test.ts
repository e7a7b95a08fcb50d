import { describe, expect, it } from 'vitest';
import { Recent } from '../../engine/base/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { makeEvidence } from '../generators/cases.ts';
import { Random } from '../generators/random.ts';

function soundCabinet(content: CabinetContent): Cabinet {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) {
    throw new Error(JSON.stringify(problems));
  }
  return cabinet;
}

/** The same evidence as somebody enters it: reading by reading, then with something that makes faults likelier. */
function asEntered({ snapshots, ...rest }: Evidence): readonly Evidence[] {
  const steps: Evidence[] = snapshots.flatMap((snapshot, index) => {
    const before = snapshots.slice(0, index);
    const { displays = [], looks, ...others } = snapshot;
    return [
      ...displays.slice(0, 2).map((_, count) => ({ ...rest, snapshots: [...before, { ...others, displays: displays.slice(0, count) }] })),
      { ...rest, snapshots: [...before, { ...others, displays, ...(looks === undefined ? {} : { looks }) }] },
    ];
  }, 60_000);
  const all = { ...rest, snapshots };
  return [...steps, { ...all, circumstances: [{ kind: 'heat' }] }, { ...all, daysSinceWhole: 30 }, all];
}

describe('what is kept from one question to the next', () => {
  it('should not change any answer: a cabinet asked again and again answers as one never asked', () => {
    for (let seed = 1; seed <= 4; seed += 1) {
      const random = new Random(seed);
      const content = makeCabinet(seed, { units: random.whole(1, 3), behaviours: 'default' });
      const asked = soundCabinet(content);
      for (const evidence of asEntered(makeEvidence(random, content))) {
        expect(diagnose(asked, evidence), `seed ${seed}`).toEqual(diagnose(soundCabinet(content), evidence));
      }
    }
  }, 60_000);

  it('should make room by forgetting what was asked for longest ago', () => {
    const recent = new Recent<object, string>(2);
    const owner = {};
    let made = 0;
    const ask = (key: string) =>
      recent.get(owner, key, () => {
        made += 1;
        return `${key}${made}`;
      });
    expect([ask('a'), ask('b'), ask('a'), ask('c'), ask('a'), ask('b')]).toEqual(['a1', 'b2', 'a1', 'c3', 'a1', 'b4']);
    expect(recent.get({}, 'a', () => 'of another owner')).toBe('of another owner');
  });
});
