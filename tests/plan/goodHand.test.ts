import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { bestStep, endOf, evidenceAfter, type Plan, planSteps } from '../../engine/plan/index.ts';
import type { Evidence, Fault } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { readCabinet } from '../support/sampleCabinets.ts';
import { seenSnapshot } from './smallCabinet.ts';

/*
 * What a good hand does and leaves: common practice, no published source.
 */

const cabinet = readCabinet('two-chains');
const steady = { presence: 'steady' } as const;
const shorted: Fault = { item: 'feedback', feedback: 'WG3', mode: 'short', ...steady };
const deadBoard: Fault = { item: 'board', unit: 'TB2', mode: 'dead-dark', ...steady };

const seen = (faults: readonly Fault[], of: Cabinet = cabinet): Evidence => ({ snapshots: [seenSnapshot(of, faults)] });
const planOf = (evidence: Evidence): Plan => planSteps(cabinet, evidence, diagnose(cabinet, evidence), { exactSituations: 0 });
const usefulOf = (evidence: Evidence) => planOf(evidence).steps.filter(({ useless }) => useless === null);
const actsOf = (evidence: Evidence) => usefulOf(evidence).flatMap(({ step }) => (step.do === 'act' ? [step.acts] : []));
const pulled = (outcome: 'runs' | 'halts', faults: readonly Fault[]): Evidence =>
  evidenceAfter(seen(faults), { do: 'act', acts: [{ do: 'pull-feedback', feedback: 'WG3' }] }, outcome);

describe('what is done between two restarts', () => {
  const twoFaults = seen([{ item: 'plug', link: 'WH3', end: 'lower', mode: 'loose', ...steady }, { ...deadBoard, unit: 'KE3' } as Fault]);

  it('should be two things at most, the plugs of one cable being one', () => {
    const things = actsOf(twoFaults).map(
      (acts) => new Set(acts.map((act) => ('end' in act ? `${act.do} ${act.link}` : JSON.stringify(act)))),
    );
    expect(things.some(({ size }) => size === 2)).toBe(true);
    expect(Math.max(...things.map(({ size }) => size))).toBe(2);
  });

  it('should be one thing alone where it moves a part or pulls a plug to see whether the fault goes along', () => {
    const lists = [...actsOf(twoFaults), ...actsOf(seen([deadBoard]))];
    const trials = lists.filter((acts) => acts.some(({ do: kind }) => /^(exchange-|turn-|pull-)/.test(kind)));
    expect(trials.length).toBeGreaterThan(3);
    for (const acts of trials) expect(acts).toHaveLength(1);
  });
});

describe('a feedback plug that was pulled', () => {
  const plug = { do: 'plug-feedback', feedback: 'WG3' } as const;

  it('should go in again with whatever is done next, and take its minutes', () => {
    const after = pulled('halts', [deadBoard]);
    const steps = usefulOf(after).filter(({ step }) => step.do === 'act');
    expect(steps.length).toBeGreaterThan(0);
    for (const { step } of steps) {
      const acts = step.do === 'act' ? step.acts : [];
      const isExchanged = acts.some((act) => act.do === 'replace-feedback' && act.feedback === 'WG3');
      expect(acts.some(({ do: kind }) => kind === plug.do)).toBe(!isExchanged);
    }
    const board = (evidence: Evidence) =>
      usefulOf(evidence).find(
        ({ step }) =>
          step.do === 'act' && step.acts[0]?.do === 'replace-board' && step.acts.every(({ do: kind }) => /board|plug-feedback/.test(kind)),
      );
    expect((board(after)?.own.minutes ?? 0) - (board(seen([deadBoard]))?.own.minutes ?? 0)).toBe(3);
  });

  it('should prove the board that was replaced while it went in again', () => {
    const after = pulled('halts', [deadBoard]);
    const mended = evidenceAfter(after, { do: 'act', acts: [{ do: 'replace-board', unit: 'TB2' }, plug] }, 'runs');
    expect(endOf(cabinet, mended, diagnose(cabinet, mended))).toMatchObject({ end: 'proved', displaced: [] });
  });

  it('should lead to its cable being exchanged where the chain comes up, and end nothing before', () => {
    const up = pulled('runs', [shorted]);
    const plan = planOf(up);
    expect(plan.end).toMatchObject({ end: 'open', because: ['feedback-pulled'] });
    expect(plan.exhausted).toBe(false);
    expect(plan.steps[0]?.step).toMatchObject({ do: 'act', acts: [{ do: 'replace-feedback', feedback: 'WG3' }] });
    const mended = evidenceAfter(up, { do: 'act', acts: [{ do: 'replace-feedback', feedback: 'WG3' }] }, 'runs');
    expect(endOf(cabinet, mended, diagnose(cabinet, mended))).toMatchObject({ end: expect.stringContaining('proved'), displaced: [] });
  });
});

describe('a restart for its own sake', () => {
  const restarts = (evidence: Evidence) => planOf(evidence).steps.filter(({ step }) => step.do === 'provoke');
  const quiet = (halted: boolean | undefined): Evidence => {
    const {
      onset: _onset,
      halted: _halted,
      ...shown
    } = seenSnapshot(cabinet, [{ item: 'wiring', unit: 'TB3', mode: 'crossed', ...steady }], {
      onset: 'at-power-up',
    });
    return { snapshots: [{ ...shown, ...(halted === undefined ? {} : { halted }) }] };
  };

  it('should wait until somebody said whether the control is halted', () => {
    expect(restarts(quiet(undefined)).map(({ useless }) => useless?.code)).toEqual(expect.arrayContaining(['note-first']));
    expect(restarts(quiet(undefined)).every(({ useless }) => useless !== null)).toBe(true);
    expect(planOf(quiet(undefined)).steps[0]?.step.do).toBe('look');
  });

  it('should wait for displays and reports that would tell something', () => {
    const [{ reports: _reports, ...unread }] = seen([deadBoard]).snapshots as [Evidence['snapshots'][number]];
    const few: Evidence = { snapshots: [{ ...unread, displays: (unread.displays ?? []).filter(({ unit }) => unit === 'TB1') }] };
    expect(usefulOf(few).some(({ step }) => step.do === 'read-display')).toBe(true);
    expect(restarts(few).length).toBeGreaterThan(0);
    expect(restarts(few).every(({ useless }) => useless?.code === 'note-first')).toBe(true);
    expect(restarts(seen([deadBoard])).some(({ useless }) => useless === null)).toBe(true);
  });
});

describe('getting help', () => {
  it('should come after a look at the light of each chain, where the controller is suspected', () => {
    let evidence = seen([{ item: 'controller', mode: 'all-ports-dead', ...steady }]);
    const looked: string[] = [];
    for (let plan = planOf(evidence); !plan.exhausted; plan = planOf(evidence)) {
      const [{ step } = { step: null }] = plan.steps;
      expect(step).toMatchObject({ do: 'look', look: { look: expect.stringMatching(/^light-/) } });
      expect(bestStep(cabinet, evidence, diagnose(cabinet, evidence))).toEqual(step);
      if (step?.do !== 'look' || looked.length > 4) break;
      looked.push('link' in step.look ? step.look.link : '');
      evidence = evidenceAfter(evidence, step, 'none');
    }
    expect(looked.sort()).toEqual(['WH1', 'WH6']);
    expect(planOf(evidence)).toMatchObject({ exhausted: true, stopping: 'get-help' });
  });
});
