import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourValues, type CabinetContent, type Evidence } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from '../plan/smallCabinet.ts';

// Domain, section 3: at most two unknown types at once are averaged over; more are set to the default, and it is said.

const unknownParameter: BehaviourParameter = 'lossScope';
const defaultValue = behaviourValues[unknownParameter][0];

/** Three drives of a type each; of these types `unknown` say nothing of their loss scope. */
function cabinetOf(unknown: readonly string[], known: Partial<Behaviour> = {}) {
  const plain = drivesContent(3);
  const content: CabinetContent = {
    ...plain,
    types: ['ta', 'tb', 'tc'].map((id) => ({
      id,
      name: id,
      behaviour: unknown.includes(id) ? { [unknownParameter]: 'unknown' as const } : known,
    })),
    units: (plain.units ?? []).map((unit, index) => (unit.kind === 'supply' ? unit : { ...unit, type: `t${'abc'[index - 1]}` })),
  };
  return soundCabinet(content);
}
// The third drive would speak of a break further up only with the other loss scope, so its behaviour decides.
const evidence: Evidence = {
  snapshots: [
    {
      onset: 'while-running',
      halted: true,
      displays: [
        { unit: 'u1', meanings: ['downstream-loss'] },
        { unit: 'u2', meanings: ['upstream-loss'] },
        { unit: 'u3', meanings: ['upstream-loss'] },
      ],
    },
  ],
};
const told = (unknown: readonly string[]) =>
  diagnose(cabinetOf(unknown), evidence).notes.flatMap((note) => (note.code === 'type-set-to-default' ? [note.type] : []));
const believed = (unknown: readonly string[]) => diagnose(cabinetOf(unknown), evidence).behaviours.map(({ type }) => type);

describe('types of unknown behaviour', () => {
  it('should be averaged over as long as they are two', () => {
    expect(told(['tb', 'tc'])).toEqual([]);
    expect(believed(['tb', 'tc'])).toEqual(['tb', 'tc']);
  });

  it('should be set to the default from the third one on, by id, and be told of', () => {
    expect(told(['ta', 'tb', 'tc'])).toEqual(['tc']);
    expect(believed(['ta', 'tb', 'tc'])).toEqual(['ta', 'tb']);
    const { items } = diagnose(cabinetOf(['ta', 'tb', 'tc']), evidence);
    expect(items).toEqual(diagnose(cabinetOf(['ta', 'tb'], { [unknownParameter]: defaultValue }), evidence).items);
    // What is averaged over gives another answer, else nothing was shown here.
    expect(items).not.toEqual(diagnose(cabinetOf(['tb', 'tc'], { [unknownParameter]: defaultValue }), evidence).items);
  });
});
