import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { endOf, evidenceAfter, type Plan, type PlannedStep, planSteps } from '../../engine/plan/index.ts';
import type { Evidence, Fault, Intervention, Snapshot } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { Random } from '../generators/random.ts';
import { RealMachine, type World } from './realMachine.ts';
import { drivesContent, seenSnapshot, soundCabinet } from './smallCabinet.ts';

/*
 * Repairs followed to their end: a machine with its faults is asked, step by step, what the planner puts first.
 */

const cabinet = soundCabinet(drivesContent(3));
const plan = (evidence: Evidence, of: Cabinet = cabinet): Plan => planSteps(of, evidence, diagnose(of, evidence), { exactSituations: 0 });

interface Followed {
  readonly machine: RealMachine;
  readonly evidence: Evidence;
  readonly taken: readonly PlannedStep[];
}

/** Takes the first step of the plan again and again until the machine runs and nothing more is worth doing. */
function follow(faults: readonly Fault[], most: number, random: Random | null = null, world: World = {}): Followed {
  const machine = new RealMachine(cabinet, faults, random, world);
  let evidence = machine.firstLook();
  const taken: PlannedStep[] = [];
  while (taken.length < most) {
    const { steps, exhausted } = plan(evidence);
    const [best] = steps;
    if (exhausted || best === undefined || best.useless !== null) break;
    taken.push(best);
    const outcome = machine.take(
      best.step,
      best.outcomes.map((one) => one.outcome),
    );
    evidence = evidenceAfter(evidence, best.step, outcome);
    if (!machine.halted) break;
  }
  return { machine, evidence, taken };
}

const actsOf = ({ taken }: Followed) => taken.flatMap(({ step }) => (step.do === 'act' ? step.acts : []));
const stateOf = (evidence: Evidence) => endOf(cabinet, evidence, diagnose(cabinet, evidence));

describe('repairs to their end', () => {
  it('should mend two faults at once', () => {
    const followed = follow(
      [
        { item: 'plug', link: 'w2', end: 'upper', mode: 'fouled', presence: 'steady' },
        { item: 'fuse', unit: 'u3', mode: 'open', presence: 'steady' },
      ],
      16,
    );
    expect(followed.machine.halted).toBe(false);
    expect(followed.machine.isMended).toBe(true);
    expect(actsOf(followed)).toContainEqual({ do: 'replace-fuse', unit: 'u3' });
  });

  it('should find a plug that only needs seating, and say that nothing is proved', () => {
    const followed = follow([{ item: 'plug', link: 'w2', end: 'lower', mode: 'loose', presence: 'steady' }], 10);
    expect(followed.machine.isMended).toBe(true);
    expect(actsOf(followed).every(({ do: kind }) => !kind.startsWith('replace'))).toBe(true);
    expect(stateOf(followed.evidence)).toMatchObject({ end: 'not-proved' });
    expect(stateOf(followed.evidence).touched.length).toBeGreaterThan(0);
  });

  it('should follow a board that was exchanged and replace it where it stands now', () => {
    const faults: readonly Fault[] = [{ item: 'board', unit: 'u2', mode: 'dead-lit' }];
    const swap: Intervention = { do: 'exchange-boards', unit: 'u2', other: 'u3' };
    const first = seenSnapshot(cabinet, faults);
    const second = { ...seenSnapshot(cabinet, faults, { onset: 'at-power-up', before: [swap] }), interventions: [swap], restarted: true };
    const { steps, displaced } = plan({ snapshots: [first, second] });
    expect(displaced).toHaveLength(2);
    const replacing = steps.filter(
      ({ step, mends }) => mends > 0.8 && step.do === 'act' && step.acts.some((act) => act.do === 'replace-board'),
    );
    expect(replacing.length).toBeGreaterThan(0);
    for (const { step } of replacing)
      expect(step).toMatchObject({ acts: expect.arrayContaining([expect.objectContaining({ unit: 'u3' })]) });
  });

  it('should blame the place when the fault stays where it was', () => {
    const faults: readonly Fault[] = [{ item: 'place', unit: 'u2', mode: 'contact-bad' }];
    const swap: Intervention = { do: 'exchange-boards', unit: 'u2', other: 'u3' };
    const first = seenSnapshot(cabinet, faults);
    const second = { ...seenSnapshot(cabinet, faults, { onset: 'at-power-up', before: [swap] }), interventions: [swap], restarted: true };
    const { steps } = plan({ snapshots: [first, second] });
    const mends = (kind: string) =>
      Math.max(
        0,
        ...steps.map((one) => (one.step.do === 'act' && one.step.acts.length === 1 && one.step.acts[0]?.do === kind ? one.mends : 0)),
      );
    expect(mends('reseat-unit')).toBeGreaterThan(0.1);
    expect(mends('replace-board')).toBeLessThan(0.01);
    expect(steps[0]?.step).toMatchObject({ do: 'look', look: { look: 'voltage', unit: 'u2' } });
  });

  it('should think of a bad spare when a sure exchange did not help', () => {
    const faults: readonly Fault[] = [{ item: 'cable', link: 'w2', mode: 'cut' }];
    // Through the new cable one sees nothing either, so no plug that was left loose explains it.
    const looks: Snapshot['looks'] = [
      { look: 'lamp', link: 'w2', fibre: 'outbound', outcomes: ['none'] },
      { look: 'lamp', link: 'w2', fibre: 'return', outcomes: ['none'] },
    ];
    const first: Snapshot = { ...seenSnapshot(cabinet, faults), looks };
    const again: Snapshot = {
      ...seenSnapshot(cabinet, faults, { onset: 'at-power-up' }),
      looks,
      interventions: [{ do: 'replace-cable', link: 'w2' }],
      restarted: true,
    };
    const { steps, mishap } = plan({ snapshots: [first, again] });
    expect(mishap).toBeGreaterThan(0.3);
    const once = steps.find(
      ({ step }) => step.do === 'act' && step.acts.length === 1 && step.acts[0]?.do === 'replace-cable' && step.acts[0].link === 'w2',
    );
    expect(once?.mends).toBeGreaterThan(0.3);
  });

  it('should point at the last thing touched when it got worse', () => {
    const faults: readonly Fault[] = [{ item: 'plug', link: 'w1', end: 'lower', mode: 'fouled' }];
    const acts: readonly Intervention[] = [
      { do: 'clean-plug', link: 'w1', end: 'lower' },
      { do: 'reseat-plug', link: 'w3', end: 'upper' },
    ];
    const worse = seenSnapshot(cabinet, faults, { onset: 'at-power-up', before: [...acts, { do: 'unplug', link: 'w3', end: 'upper' }] });
    const told = (touched: readonly Intervention[]) =>
      plan({ snapshots: [seenSnapshot(cabinet, faults), { ...worse, interventions: [...touched], restarted: true }] });
    const { mishap, steps } = told(acts);
    expect(mishap).toBeGreaterThan(0.05);
    const reseat = steps.find(
      ({ step }) => step.do === 'act' && step.acts.some((act) => 'link' in act && act.link === 'w3' && act.do.endsWith('plug')),
    );
    expect(reseat?.mends).toBeGreaterThan(0.05);
    // Had the plug not been touched, nothing that was done could have loosened it.
    expect(told(acts.slice(0, 1)).mishap).toBeLessThan(mishap / 10);
  });

  it('should think of plugs that the search itself fouled or crossed', () => {
    const fuse: Fault = { item: 'fuse', unit: 'u2', mode: 'open' };
    const careful = soundCabinet(drivesContent(3, { repair: { chances: { handlingFault: 0 } } }));
    const told = (of: Cabinet, acts: Intervention[], added: Fault, look: NonNullable<Snapshot['looks']>[number]) => {
      const later = seenSnapshot(of, [fuse, added], { onset: 'at-power-up', before: acts });
      const snapshots = [seenSnapshot(of, [fuse]), { ...later, interventions: acts, restarted: true, looks: [look] }];
      const { steps } = plan({ snapshots }, of);
      return (kind: string) =>
        Math.max(0, ...steps.map(({ step, mends }) => (step.do === 'act' && step.acts.some((act) => act.do === kind) ? mends : 0)));
    };
    const fouled = (of: Cabinet) =>
      told(
        of,
        [
          { do: 'replace-fuse', unit: 'u2' },
          { do: 'reseat-plug', link: 'w3', end: 'upper' },
        ],
        { item: 'plug', link: 'w3', end: 'upper', mode: 'fouled' },
        { look: 'light-at-plug', link: 'w3', end: 'lower', outcomes: ['weak'] },
      );
    // Two faults from the beginning would explain it too.
    expect(fouled(cabinet)('clean-plug')).toBeGreaterThan(fouled(careful)('clean-plug') + 0.2);
    const crossed = (of: Cabinet) =>
      told(
        of,
        [
          { do: 'replace-fuse', unit: 'u2' },
          { do: 'replace-board', unit: 'u2' },
        ],
        { item: 'wiring', unit: 'u2', mode: 'crossed' },
        { look: 'compare-plugs', unit: 'u2', outcomes: ['differs'] },
      );
    // No wiring mistake from before can be suspected: the machine ran.
    expect(crossed(cabinet)('uncross-plugs')).toBeGreaterThan(0.5);
    expect(crossed(careful)('uncross-plugs')).toBe(0);
  });

  it('should change its mind when a misreading is put right', () => {
    const right = seenSnapshot(cabinet, [{ item: 'fuse', unit: 'u2', mode: 'open' }]);
    const wrong = {
      ...right,
      displays: (right.displays ?? []).map((seen) => (seen.unit === 'u2' ? { ...seen, meanings: ['quiet' as const] } : seen)),
    };
    const fuse = (evidence: Evidence) =>
      plan(evidence).steps.find(({ step }) => step.do === 'act' && step.acts.some(({ do: kind }) => kind === 'replace-fuse'));
    const before = fuse({ snapshots: [wrong] })?.mends ?? 0;
    const after = fuse({ snapshots: [right] })?.mends ?? 0;
    expect(after).toBeGreaterThan(before + 0.1);
  });

  it('should offer to bring out a fault that has vanished, and prove nothing', () => {
    const gone = seenSnapshot(cabinet, [{ item: 'plug', link: 'w2', end: 'upper', mode: 'loose' }]);
    const evidence: Evidence = { snapshots: [gone, { restarted: true, onset: 'at-power-up', halted: false }] };
    const { steps, end } = plan(evidence);
    expect(end).toMatchObject({ end: 'open', because: ['nothing-done'] });
    expect(end.mayComeBack).toBeGreaterThan(0.9);
    const provoking = steps.filter(({ step }) => step.do === 'provoke');
    expect(provoking.map(({ step }) => step.do === 'provoke' && step.how)).toEqual(expect.arrayContaining(['wait', 'flex']));
    const halts = (how: string) =>
      provoking.find(({ step }) => step.do === 'provoke' && step.how === how)?.outcomes.find(({ outcome }) => outcome === 'halts')
        ?.probability ?? 0;
    expect(halts('flex')).toBeGreaterThan(halts('wait'));
  });

  it('should mend a machine that runs again by itself rather than wait until it stops', () => {
    const cheap = soundCabinet(drivesContent(3, { repair: { weights: { comeback: 60 } } }));
    const gone = seenSnapshot(cheap, [{ item: 'plug', link: 'w2', end: 'upper', mode: 'loose' }]);
    const evidence: Evidence = { snapshots: [gone, { restarted: true, onset: 'at-power-up', halted: false }] };
    // An hour lost by the next stop is less than the repair; but then it has to be mended all the same.
    const { exhausted, expectedCost, steps } = plan(evidence, cheap);
    expect(exhausted).toBe(false);
    expect(expectedCost).toBeGreaterThan(60);
    expect(steps[0]?.mends).toBeGreaterThan(0.3);
  });

  it('should let a machine alone that runs and shows nothing', () => {
    const { exhausted, stopping } = plan({ snapshots: [{ ...seenSnapshot(cabinet, []), halted: false }] });
    expect({ exhausted, stopping }).toEqual({ exhausted: true, stopping: 'watch' });
  });

  it('should say when everything is exhausted', () => {
    const content = drivesContent(1, { repair: { weights: { outsideHelp: 30 } } });
    const one = soundCabinet(content);
    const evidence: Evidence = { snapshots: [seenSnapshot(one, [{ item: 'controller', mode: 'all-ports-dead' }])] };
    const { exhausted, stopping, expectedCost } = plan(evidence, one);
    expect({ exhausted, stopping }).toEqual({ exhausted: true, stopping: 'get-help' });
    expect(expectedCost).toBeLessThanOrEqual(30);
  });

  it('should count the reference position that an exchange puts at risk', () => {
    const { steps } = plan({ snapshots: [seenSnapshot(cabinet, [{ item: 'board', unit: 'u2', mode: 'dead-dark' }])] });
    const board = steps.find(({ step }) => step.do === 'act' && step.acts.length === 1 && step.acts[0]?.do === 'replace-board');
    expect(board?.risks).toContainEqual(expect.objectContaining({ code: 'reference-position', feedbacks: ['g2'] }));
    expect(board?.own.risks).toBeGreaterThan(30);
    expect(board?.changes.map(({ from, to }) => `${from} ${to}`)).toEqual(['open isolated', 'isolated closed']);
    expect(board?.changes[0]?.effects).toContain('erases-displays');
  });

  it('should look for lost power, not for light, when displays are dark', () => {
    const followed = follow([{ item: 'supply', unit: 's1', mode: 'output-lost', presence: 'steady' }], 8);
    expect(followed.machine.isMended).toBe(true);
    expect(followed.taken.some(({ step }) => step.do === 'look' && step.look.look.startsWith('light'))).toBe(false);
    expect(actsOf(followed).map(({ do: kind }) => kind)).toContain('replace-supply');
  });

  it('should go on after an outcome that nobody predicted', () => {
    const evidence: Evidence = { snapshots: [seenSnapshot(cabinet, [{ item: 'cable', link: 'w2', mode: 'cut' }])] };
    const [look] = plan(evidence).steps.filter(({ step }) => step.do === 'look' && step.look.look === 'light-at-plug');
    expect(look?.outcomes.find(({ outcome }) => outcome === 'wrong-hole')?.probability).toBeLessThan(0.02);
    const odd = look ? evidenceAfter(evidence, look.step, 'wrong-hole') : evidence;
    const after = plan(odd);
    expect(after.steps.filter(({ useless }) => useless === null).length).toBeGreaterThan(0);
    expect(Number.isFinite(after.expectedCost)).toBe(true);
  });

  it('should mend drawn faults in a world with misreadings and bad parts', () => {
    const random = new Random(5);
    let mended = 0;
    const faults: readonly Fault[] = [
      { item: 'plug', link: 'w3', end: 'upper', mode: 'loose', presence: 'steady' },
      { item: 'cable', link: 'w1', mode: 'outbound-cut', presence: 'steady' },
      { item: 'board', unit: 'u3', mode: 'up-rx', presence: 'steady' },
    ];
    for (const fault of faults) mended += follow([fault], 14, random, { misreading: 0.04, badPart: 0.02 }).machine.isMended ? 1 : 0;
    expect(mended).toBe(faults.length);
  });
});
