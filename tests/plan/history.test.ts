import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { endOf, listDisplaced, listHandlings, machineStateOf, planning, putBack } from '../../engine/plan/index.ts';
import type { Evidence, Intervention, Snapshot } from '../../engine/schema/index.ts';
import { drivesContent, seenSnapshot, soundCabinet } from './smallCabinet.ts';

const cabinet = soundCabinet(drivesContent(3));
const cut = seenSnapshot(cabinet, [{ item: 'cable', link: 'w2', mode: 'cut' }]);
const afterActs = (acts: readonly Intervention[], halted: boolean): Evidence => ({
  snapshots: [cut, { interventions: [...acts], restarted: true, onset: 'at-power-up', halted }],
});
const end = (evidence: Evidence) => endOf(cabinet, evidence, diagnose(cabinet, evidence));

describe('what was done', () => {
  it('should list what was touched, the newest first', () => {
    const evidence = afterActs(
      [
        { do: 'reseat-plug', link: 'w1', end: 'upper' },
        { do: 'replace-fuse', unit: 'u1' },
      ],
      true,
    );
    expect(listHandlings(evidence)).toEqual([
      { act: { do: 'replace-fuse', unit: 'u1' }, snapshot: 1 },
      { act: { do: 'reseat-plug', link: 'w1', end: 'upper' }, snapshot: 1 },
    ]);
  });

  it('should remember what stands elsewhere until it is put back', () => {
    const moved: readonly Intervention[] = [
      { do: 'exchange-boards', unit: 'u1', other: 'u2' },
      { do: 'turn-cable', link: 'w3' },
      { do: 'bridge-unit', unit: 'u3', cable: 'w3' },
      { do: 'take-out-unit', unit: 'u1' },
      { do: 'pull-feedback', feedback: 'g1' },
      { do: 'unplug', link: 'w1', end: 'upper' },
    ];
    const displaced = listDisplaced(cabinet, afterActs(moved, true));
    expect(displaced.map(({ kind }) => kind)).toEqual(['board', 'board', 'cable', 'unplugged', 'taken-out', 'bridged', 'feedback-pulled']);
    // Two boards exchanged are put back by one exchange.
    const back = [...new Map(displaced.flatMap(putBack).map((act) => [[...Object.values(act)].sort().join(), act])).values()];
    expect(listDisplaced(cabinet, afterActs([...moved, ...back], true))).toEqual([]);
  });

  it('should not count as displaced what was pulled from the beginning', () => {
    const content = drivesContent(1);
    const own = soundCabinet({ ...content, feedbacks: (content.feedbacks ?? []).map((record) => ({ ...record, plugged: false })) });
    expect(listDisplaced(own, { snapshots: [] })).toEqual([]);
  });
});

describe('how the search stands', () => {
  it('should be open while the machine is halted, and while nothing was done', () => {
    expect(end({ snapshots: [cut] })).toMatchObject({ end: 'open', because: ['still-halted'] });
    expect(end({ snapshots: [{ onset: 'while-running', halted: false }] })).toMatchObject({ end: 'open', because: ['nothing-done'] });
  });

  it('should be proved when the fault left with the one part that was exchanged', () => {
    const { end: how, lastActs, expected } = end(afterActs([{ do: 'replace-cable', link: 'w2' }], false));
    expect(how).toBe('proved');
    expect(lastActs).toEqual([{ do: 'replace-cable', link: 'w2' }]);
    expect(expected.displays.map(({ meaning }) => meaning)).toEqual(['quiet', 'quiet', 'quiet', 'quiet']);
    expect(expected.reports).toEqual([{ chain: 'c1', gap: 'none' }]);
  });

  it('should not be proved when it is gone after handling, and list what was touched', () => {
    const state = end(afterActs([{ do: 'reseat-plug', link: 'w2', end: 'upper' }], false));
    expect(state).toMatchObject({ end: 'not-proved', touched: [{ act: { do: 'reseat-plug' } }] });
    expect(state.because).toContain('only-handled');
  });

  // Domain section 7: gone after handling is not proved; an exchanged part, a route laid anew and plugs put right are.
  it.each<readonly [Intervention, boolean]>([
    [{ do: 'clean-plug', link: 'w2', end: 'upper' }, true],
    [{ do: 'reseat-unit', unit: 'u2' }, true],
    [{ do: 'replace-board', unit: 'u2' }, false],
    [{ do: 're-route', link: 'w2' }, false],
    [{ do: 'uncross-plugs', unit: 'u2' }, false],
  ])('should know what is handling only: %o', (act, isHandling) => {
    expect(end(afterActs([act], false)).because.includes('only-handled')).toBe(isHandling);
  });

  it('should not be proved when several parts were exchanged at once', () => {
    const state = end(
      afterActs(
        [
          { do: 'replace-cable', link: 'w2' },
          { do: 'replace-board', unit: 'u2' },
        ],
        false,
      ),
    );
    expect(state.because).toContain('several-acts-at-once');
  });

  it('should stay proved when what was pulled or exchanged on the way is put back, and it still runs', () => {
    const dark = seenSnapshot(cabinet, [{ item: 'board', unit: 'u2', mode: 'dead-dark' }]);
    const step = (acts: readonly Intervention[], halted: boolean): Snapshot => ({
      interventions: [...acts],
      restarted: true,
      onset: 'at-power-up',
      halted,
    });
    const pull = { do: 'pull-feedback', feedback: 'g2' } as const;
    const plug = { do: 'plug-feedback', feedback: 'g2' } as const;
    const replace = { do: 'replace-board', unit: 'u2' } as const;
    const pulled = [dark, step([pull], true), step([replace], false)];
    expect(end({ snapshots: pulled })).toMatchObject({ end: 'running-provisionally', because: ['something-bypassed'] });
    expect(end({ snapshots: [...pulled, step([plug], false)] })).toMatchObject({ end: 'proved', lastActs: [replace] });
    // Plugged in again along with the exchange: that plug mends nothing.
    expect(end({ snapshots: [dark, step([pull], true), step([replace, plug], false)] })).toMatchObject({
      end: 'proved',
      lastActs: [replace],
    });
    // A board on trial: the fault went along with it, a new one mended it, and the good one went home.
    const exchange = { do: 'exchange-boards', unit: 'u2', other: 'u3' } as const;
    const moved = seenSnapshot(cabinet, [{ item: 'board', unit: 'u2', mode: 'dead-dark' }], { onset: 'at-power-up', before: [exchange] });
    const tried = [dark, { ...moved, interventions: [exchange], restarted: true }, step([{ do: 'replace-board', unit: 'u3' }], false)];
    expect(end({ snapshots: tried })).toMatchObject({ end: 'running-provisionally', because: ['parts-displaced'] });
    const home = { do: 'exchange-boards', unit: 'u3', other: 'u2' } as const;
    expect(end({ snapshots: [...tried, step([home], false)] })).toMatchObject({ end: 'proved' });
  });

  it('should prove nothing by what was put back into a machine that ran because of it, or that did not run before', () => {
    const run: Snapshot = { restarted: true, onset: 'at-power-up', halted: false };
    const plug = { do: 'plug-feedback', feedback: 'g2' } as const;
    const pull: Snapshot = { ...run, interventions: [{ do: 'pull-feedback', feedback: 'g2' }] };
    expect(end({ snapshots: [cut, pull, { ...run, interventions: [plug] }] })).toMatchObject({
      because: expect.arrayContaining(['only-handled']),
    });
    expect(end({ snapshots: [cut, { ...pull, halted: true }, { ...run, interventions: [plug] }] }).lastActs).toEqual([plug]);
    // What is done to a machine that runs, and does more than put back, is what it ran after.
    const seat = { do: 'reseat-plug', link: 'w1', end: 'upper' } as const;
    const mended: Snapshot = { ...run, interventions: [{ do: 'replace-cable', link: 'w2' }] };
    expect(end({ snapshots: [cut, mended, { ...run, interventions: [seat] }] }).lastActs).toEqual([seat]);
  });

  it('should be running provisionally with something bypassed or moved', () => {
    expect(end(afterActs([{ do: 'bridge-unit', unit: 'u2', cable: 'w2' }], false))).toMatchObject({
      end: 'running-provisionally',
      because: ['something-bypassed'],
    });
    expect(end(afterActs([{ do: 'exchange-boards', unit: 'u2', other: 'u3' }], false))).toMatchObject({
      end: 'running-provisionally',
      because: ['parts-displaced'],
    });
  });
});

describe('the state of the machine', () => {
  it('should be as written, else open where something was looked at inside, else closed', () => {
    expect(machineStateOf({ snapshots: [] })).toBe('closed');
    expect(machineStateOf({ snapshots: [cut] })).toBe('open');
    expect(machineStateOf({ snapshots: [{ ...cut, state: 'isolated' }] })).toBe('isolated');
    expect(machineStateOf({ snapshots: [{ looks: [{ look: 'lamp', link: 'w1', fibre: 'outbound', outcomes: ['clear'] }] }] })).toBe(
      'isolated',
    );
    expect(machineStateOf(afterActs([], true))).toBe('closed');
  });
});

describe('planning', () => {
  it('should give an answer early, and go on to a better one', () => {
    const evidence = { snapshots: [cut] };
    const work = planning(cabinet, evidence, diagnose(cabinet, evidence), { exactSituations: 0 });
    const costs: number[] = [];
    let last = 0;
    for (;;) {
      const { done, value } = work.next();
      if (done === true) {
        costs.push(value.expectedCost);
        break;
      }
      expect(value.share).toBeGreaterThanOrEqual(last);
      last = value.share;
      if (value.plan !== null) costs.push(value.plan.expectedCost);
    }
    expect(costs.length).toBeGreaterThan(1);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
  });
});
