import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { listScenarios } from '../../engine/diagnosis/scenarios.ts';
import { prepare, runSearch } from '../../engine/diagnosis/searched.ts';
import { behaviourParameters, type CabinetContent, displayMeanings, type Evidence, type Fault } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { plainContent } from '../bench/cabinets.ts';
import { Random } from '../generators/random.ts';

const allUnknown = Object.fromEntries(behaviourParameters.map((parameter) => [parameter, 'unknown'] as const));

/** A chain of four whose types are wholly unknown: every unit's the same one, or two in turn. */
function unknownCabinet(types: 1 | 2): Cabinet {
  const plain = plainContent(1, 4);
  const content: CabinetContent = {
    ...plain,
    types: ['t1', 't2'].slice(0, types).map((id) => ({ id, name: id, behaviour: allUnknown })),
    units: (plain.units ?? []).map((unit, index) =>
      unit.kind === 'supply' ? unit : { ...unit, type: types === 2 && index % 2 === 0 ? 't2' : 't1' },
    ),
  };
  const { cabinet } = checkCabinet(content);
  if (cabinet === null) {
    throw new Error('sound by construction');
  }
  return cabinet;
}

/** What a fault makes the displays show, with some left unread and, now and then, one read wrongly. */
function evidenceOf(cabinet: Cabinet, fault: Fault, random: Random): Evidence {
  const { displays, reports } = simulate({ cabinet, faults: [fault], onset: 'while-running' });
  return {
    snapshots: [
      {
        onset: 'while-running',
        displays: [...displays.values()]
          .filter(() => random.chance(0.8))
          .map(({ unit, meaning }) => ({ unit, meanings: [random.chance(0.05) ? random.pick(displayMeanings) : meaning] })),
        reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
      },
    ],
  };
}

describe('narrowing of unknown behaviour', () => {
  it('should leave the probabilities of all modes within half a per cent of the full average', { timeout: 60_000 }, () => {
    const cabinet = unknownCabinet(1);
    const random = new Random(20261125);
    const faults: Fault[] = [
      { item: 'cable', link: 'w1.2', mode: 'cut' },
      { item: 'cable', link: 'w1.3', mode: 'outbound-cut' },
      { item: 'board', unit: 'u1.2', mode: 'dead-dark' },
      { item: 'board', unit: 'u1.3', mode: 'dead-lit' },
    ];
    for (const fault of faults) {
      const evidence = evidenceOf(cabinet, fault, random);
      const narrowed = prepare(cabinet, evidence);
      const { scenarios } = listScenarios(cabinet, narrowed.plan);
      expect(narrowed.scenarios.length).toBeLessThan(scenarios.length);
      const some = runSearch(narrowed);
      const all = runSearch({ ...narrowed, scenarios });
      some?.result.modes.forEach((row, e) => {
        row.forEach((probability, m) => {
          expect(
            Math.abs(probability - (all?.result.modes[e]?.[m] ?? Number.NaN)),
            `${fault.mode} ${narrowed.space.elements[e]?.id}`,
          ).toBeLessThan(0.005);
        });
      });
    }
  });

  it('should weigh two wholly unknown types without trying every combination', () => {
    const cabinet = unknownCabinet(2);
    const evidence = evidenceOf(cabinet, { item: 'cable', link: 'w1.2', mode: 'cut' }, new Random(7));
    const narrowed = prepare(cabinet, evidence);
    expect(listScenarios(cabinet, narrowed.plan).scenarios.length).toBeGreaterThan(500);
    expect(narrowed.scenarios.length).toBeLessThanOrEqual(24);
    expect(narrowed.notes).toContainEqual({ code: 'behaviour-narrowed' });
    const shares = narrowed.scenarios.reduce((sum, { share }) => sum + share, 0);
    expect(shares).toBeGreaterThan(0);
    expect(shares).toBeLessThanOrEqual(1 + 1e-9);
  });
});
