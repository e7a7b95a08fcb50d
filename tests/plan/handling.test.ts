import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { findHandlingWorlds } from '../../engine/plan/handling.ts';
import { repairTable } from '../../engine/repair/index.ts';
import type { Evidence, Fault, Intervention } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from './smallCabinet.ts';

/** Large, so that what handling may leave is not negligible. */
const handlingFault = 0.2;
const cabinet = soundCabinet(drivesContent(3, { repair: { chances: { handlingFault } } }));
const cut: Fault = { item: 'cable', link: 'w2', mode: 'cut', presence: 'steady' };

/** Two neighbours complained about each other; an act; the machine still halts, and nothing more was read. */
const actedOn = (act: Intervention): Evidence => ({
  snapshots: [
    {
      id: 'a',
      onset: 'while-running',
      halted: true,
      displays: [
        { unit: 'u1', meanings: ['downstream-loss'] },
        { unit: 'u2', meanings: ['upstream-loss'] },
      ],
      reports: [{ chain: 'c1', gaps: [2] }],
    },
    { id: 'b', interventions: [act], restarted: true, onset: 'at-power-up', halted: true },
  ],
});

describe('what the search itself may have left', () => {
  it.each<readonly [string, Intervention, number]>([
    ['one plug: sits loose, or is fouled', { do: 'reseat-plug', link: 'w2', end: 'lower' }, 2],
    ['both plugs of a cable', { do: 'turn-cable', link: 'w2' }, 4],
  ])('should share the probability of an act evenly over what it may leave: %s', (_what, act, ways) => {
    const evidence = actedOn(act);
    const diagnosis = diagnose(cabinet, evidence);
    const worlds = findHandlingWorlds(cabinet, evidence, diagnosis, repairTable(cabinet.content));
    const before = diagnosis.hypotheses.find(
      ({ faults }) => faults.length === 1 && JSON.stringify(faults[0]?.fault) === JSON.stringify(cut),
    );
    const left = worlds.filter(({ faults }) => JSON.stringify(faults[0]) === JSON.stringify(cut));
    // The cut alone explains what was seen as well as the cut with what was left: the worlds differ by their chances only.
    const unhandled = 1 - worlds.reduce((sum, { probability }) => sum + probability, 0);
    expect(left).toHaveLength(ways);
    for (const { probability } of left) {
      expect(probability / ((before?.probability ?? 0) * unhandled)).toBeCloseTo(handlingFault / ways, 2);
    }
    expect(left.filter(({ displacement }) => displacement !== null)).toHaveLength(ways / 2);
  });

  it('should count a bad part that was put in by its chance, and no more', () => {
    const badSpare = 0.1;
    const careful = soundCabinet(drivesContent(3, { repair: { chances: { handlingFault: 0, badSpare } } }));
    const evidence = actedOn({ do: 'replace-cable', link: 'w2' });
    const diagnosis = diagnose(careful, evidence);
    const worlds = findHandlingWorlds(careful, evidence, diagnosis, repairTable(careful.content));
    const single =
      (fault: Fault) =>
      ({ hypotheses }: typeof diagnosis) =>
        hypotheses.find(({ faults }) => faults.length === 1 && JSON.stringify(faults[0]?.fault) === JSON.stringify(fault));
    // Explains all that was seen, and no new cable mends it.
    const receiver = single({ item: 'board', unit: 'u2', mode: 'up-rx', presence: 'steady' })(diagnosis);
    const odds = single(cut)(diagnose(careful, { snapshots: evidence.snapshots.slice(0, 1) }))?.priorOdds ?? Number.NaN;
    const [still] = worlds.filter(({ faults }) => JSON.stringify(faults) === JSON.stringify([cut]));
    const unhandled = 1 - worlds.reduce((sum, { probability }) => sum + probability, 0);
    const expected = ((receiver?.probability ?? 0) / (receiver?.priorOdds ?? 0)) * odds * badSpare * unhandled;
    expect((still?.probability ?? 0) / expected).toBeCloseTo(1, 2);
  });

  it('should be nothing while the machine runs', () => {
    const { snapshots } = actedOn({ do: 'reseat-plug', link: 'w2', end: 'lower' });
    const runs = { snapshots: snapshots.map((one, index) => (index === 1 ? { ...one, halted: false } : one)) };
    expect(findHandlingWorlds(cabinet, runs, diagnose(cabinet, runs), repairTable(cabinet.content))).toEqual([]);
  });
});
