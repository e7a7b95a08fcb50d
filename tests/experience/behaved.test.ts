import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { findClues, findDifferences, mendedCauses } from '../../engine/experience/behaved.ts';
import { type ConfirmedCase, confirmCase, gatherExperience } from '../../engine/experience/index.ts';
import { type Behaviour, behaviourParameters, behaviourValues } from '../../engine/schema/index.ts';
import { readContent } from '../support/sampleCabinets.ts';
import { provedCase } from './provedCase.ts';

const content = readContent('two-chains');

function cutOf(link: string, behaves: Partial<Behaviour> = {}, id = link): ConfirmedCase {
  const told = { fault: { item: 'cable', link, mode: 'cut' }, act: { do: 'replace-cable', link }, behaves, id } as const;
  const read = confirmCase(provedCase(content, told));
  if ('reason' in read) throw new Error(JSON.stringify(read.reason));
  return read;
}

const said = ({ clues }: Pick<ConfirmedCase, 'clues'>) =>
  clues.map(({ equipment, parameter, assumed, instead }) => `${equipment.model}: ${parameter} ${assumed} → ${instead}`);

describe('equipment that behaves otherwise than documented', () => {
  it('should say nothing where everything was as documented', () => {
    const { differences, clues } = cutOf('WH2');
    expect([differences, clues]).toEqual([[], []]);
  });

  it('should name what was seen otherwise, and which behaviour would explain it', () => {
    const read = cutOf('WH1', { lossScope: 'chain' });
    expect(read.differences).toContainEqual({
      observation: { kind: 'display', snapshot: 0, unit: 'TB2' },
      seen: ['upstream-loss'],
      predicted: 'quiet',
    });
    expect(said(read)).toEqual([
      'QE drive 2: lossScope neighbour → chain',
      'QE spindle drive 4: lossScope neighbour → chain',
      'QE scale interface: lossScope neighbour → chain',
    ]);
    // The cause is what was mended all the same.
    expect(read.causes.every(({ item }) => item === 'cable' || item === 'plug')).toBe(true);
  });

  it('should name no behaviour but the real one where only one thing is otherwise', () => {
    for (const parameter of behaviourParameters) {
      for (const value of behaviourValues[parameter]) {
        for (const one of said(cutOf('WH2', { [parameter]: value }))) expect(one).toContain(`${parameter} `);
      }
    }
  });

  it('should hold looks against the prediction too', () => {
    const one = provedCase(content, { fault: { item: 'cable', link: 'WH2', mode: 'cut' }, act: { do: 'replace-cable', link: 'WH2' } });
    const { cabinet } = checkCabinet(content);
    if (!cabinet) throw new Error('not sound');
    const diagnosis = diagnose(cabinet, one.evidence);
    const causes = mendedCauses(cabinet, one.evidence, diagnosis);
    const [halted, ...rest] = one.evidence.snapshots;
    const withLook = (outcome: 'bright' | 'none') => {
      const looks = [{ look: 'light-at-port' as const, link: 'WH2', end: 'upper' as const, outcomes: [outcome] }];
      const evidence = { snapshots: [{ ...halted, looks }, ...rest] };
      const differences = findDifferences(cabinet, evidence, diagnosis, causes);
      return { differences, clues: findClues(cabinet, evidence, diagnosis, causes, differences) };
    };
    expect(withLook('bright').differences).toEqual([]);
    const dark = withLook('none');
    expect(dark.differences).toEqual([{ observation: { kind: 'look', snapshot: 0, index: 0 }, seen: ['none'], predicted: 'bright' }]);
    expect(said(dark)).toContain('QE drive 2: idleLight yes → no');
  });

  it('should gather the cases of one clue', () => {
    const cases = ['WH1', 'WH2'].map((link) => cutOf(link, { lossScope: 'chain' }).content);
    const { clues } = gatherExperience(cases);
    const [drive] = clues.filter(({ equipment }) => equipment.model === 'QE drive 2' && equipment.revision === '07');
    expect(drive?.cases.map(({ id }) => id)).toEqual(['WH1', 'WH2']);
    expect(clues[0]?.cases.length).toBe(2);
  });
});
