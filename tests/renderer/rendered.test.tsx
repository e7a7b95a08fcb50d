import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { makeProblem, type Severity } from '../../engine/base/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { endTexts, makeNames, severityWords, stepTexts, wordStep, wordTimeSpan } from '../../engine/messages/index.ts';
import { planSteps } from '../../engine/plan/index.ts';
import type { Evidence, Intervention } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { ProblemLine } from '../../renderer/edit/ProblemLine.tsx';
import { StepCard } from '../../renderer/find/StepCard.tsx';
import { Suspects } from '../../renderer/find/Suspects.tsx';
import { selectBestStep, selectPartingStep, selectPlan } from '../../renderer/find/stepModel.ts';
import { WhyPane } from '../../renderer/find/WhyPane.tsx';
import { Sign } from '../../renderer/marks/Sign.tsx';
import type { AppState } from '../../renderer/state/appState.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { stepKey } from '../../renderer/state/stepCommands.ts';
import { type Window, WindowContext } from '../../renderer/state/useWorkbench.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';

/*
 * What parts of the window say, as markup: whatever needs neither a layout nor a key is seen here sooner than in a browser.
 */

// What the page would ask of its browser when it is drawn.
beforeAll(() => vi.stubGlobal('matchMedia', () => ({ matches: false })));
afterAll(() => vi.unstubAllGlobals());

/** No effect is run here. */
const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;

/** The state of a window in which a case was diagnosed and planned. */
function stateOf(cabinet: Cabinet, evidence: Evidence): AppState {
  const document = { cabinet: cabinet.content, caseRecord: { id: 'case', name: 'case', evidence } };
  const { store } = makeWorkbench({ document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences }, noEffects);
  const state = store.getState();
  const { revision } = state;
  const diagnosis = diagnose(cabinet, evidence);
  return {
    ...state,
    diagnosis: { state: 'answered', revision, answer: { ...document, diagnosis }, milliseconds: 1 },
    planned: { revision, plan: planSteps(cabinet, evidence, diagnosis), share: 1, state: 'settled' },
  };
}

/** Draws a part of the window once, in this state. */
function markup(state: AppState, part: ReactNode): string {
  const store = { getState: () => state, getInitialState: () => state, setState: () => undefined, subscribe: () => () => undefined };
  // Nothing that is drawn once asks the window for more.
  const window = { store, dispatch: () => undefined } as unknown as Window;
  return renderToStaticMarkup(<WindowContext value={window}>{part}</WindowContext>);
}
/** What is read of a markup, spaces made one. */
const textOf = (html: string) =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');

const cabinet = soundCabinet(drivesContent(3));
const cut = seenSnapshot(cabinet, [{ item: 'cable', link: 'w2', mode: 'cut' }]);

describe('a problem', () => {
  const line = (severity: Severity, short: boolean) =>
    markup(stateOf(cabinet, { snapshots: [] }), <ProblemLine problem={makeProblem('cabinet-empty', severity)} short={short} />);
  const markOf = (html: string) => /<svg.*?<\/svg>/.exec(html)?.[0];

  it.each(['error', 'incomplete', 'warning'] as const)('should bear the mark and the word of what it is: %s', (severity) => {
    for (const short of [false, true]) {
      expect(textOf(line(severity, short))).toContain(severityWords[severity].label);
      expect(markOf(line(severity, short))).toMatch(/^<svg/);
    }
  });

  it('should be told from one of another severity by its mark alone', () => {
    const marks = (['error', 'incomplete', 'warning'] as const).map((severity) => markOf(line(severity, false)));
    expect(new Set(marks).size).toBe(3);
    expect(marks[0]).toBe(markup(stateOf(cabinet, { snapshots: [] }), <Sign name="error" size={16} />));
  });
});

describe('suspects', () => {
  /** The rows of the list: how each is called, and what may be wrong with it. */
  const rowsOf = (html: string) =>
    [...html.matchAll(/<button[^>]*class="suspect-row".*?<\/button>/g)].map(([row]) => ({
      name: textOf(/class="name">(.*?)<span class="bar"/.exec(row)?.[1] ?? '').trim(),
      parts: textOf(/class="parts">(.*?)<\/span>/.exec(row)?.[1] ?? '').trim(),
    }));

  it('should say of several that bear one name what may be wrong with each', () => {
    // Ports that go on sending though they hear nothing: port, transmitter and receiver of one board part, and all are "board, down port".
    const plain = drivesContent(3);
    const units = (plain.units ?? []).map((unit) => (unit.kind === 'supply' ? unit : { ...unit, type: 't' }));
    const keeping = soundCabinet({ ...plain, units, types: [{ id: 't', name: 't', behaviour: { onReceiveLoss: 'keep' } }] });
    const seen: Evidence['snapshots'][number] = {
      onset: 'while-running',
      halted: true,
      displays: [
        { unit: 'u1', meanings: ['quiet'] },
        { unit: 'u2', meanings: ['upstream-loss'] },
      ],
      reports: [{ chain: 'c1', gaps: [2] }],
    };
    const rows = rowsOf(markup({ ...stateOf(keeping, { snapshots: [seen] }), allCandidates: true }, <Suspects />));
    expect(rows.filter(({ name }) => name === '-TB1 board, down port').map(({ parts }) => parts)).toEqual([
      'down port, transmitter dead',
      'down port dead',
      'down port, receiver dead',
    ]);
  });
});

describe('what tells the first suspects apart', () => {
  const state = stateOf(cabinet, { snapshots: [cut] });
  const parting = selectPartingStep(state);
  const names = makeNames(cabinet);

  it('should be named, and where it is not the next step, why that comes first', () => {
    if (parting === null) throw new Error('a group with nothing to tell it apart');
    const text = textOf(markup(state, <WhyPane />));
    expect(text).toContain(`${stepTexts.partsGroup} ${wordStep(names, parting.step)}`);
    const [best, planned] = [selectBestStep(state), selectPlan(state)?.steps.find(({ step }) => stepKey(step) === stepKey(parting.step))];
    expect(planned?.expectedCost).toBeGreaterThan(best?.expectedCost ?? Number.NaN);
    expect(text).toContain(stepTexts.partsLater(wordTimeSpan(best?.expectedCost ?? 0), wordTimeSpan(planned?.expectedCost ?? 0)));
  });

  it('should be said to be the next step where it is', () => {
    const plan = selectPlan(state);
    const first = plan?.steps.find(({ step }) => parting !== null && stepKey(step) === stepKey(parting.step));
    if (!plan || !first || !state.planned) throw new Error('no plan');
    const steps = [first, ...plan.steps.filter((one) => one !== first)];
    const text = textOf(markup({ ...state, planned: { ...state.planned, plan: { ...plan, steps } } }, <WhyPane />));
    expect(text).toContain(stepTexts.partsNow);
    expect(text).not.toContain(stepTexts.partsGroup);
  });
});

describe('the card after the end', () => {
  const tried = (act: Intervention): Evidence => ({ snapshots: [cut, { interventions: [act], restarted: true, halted: false }] });
  const proved = tried({ do: 'replace-cable', link: 'w2' });

  it.each([
    ['proved', proved, endTexts.nothingLeft],
    ['running-provisionally', tried({ do: 'bridge-unit', unit: 'u2', cable: 'w2' }), endTexts.putRight],
  ] as const)('should lead to handing back, in words of its own: %s', (end, evidence, words) => {
    const state = stateOf(cabinet, evidence);
    expect(selectPlan(state)?.end.end).toBe(end);
    const text = textOf(markup(state, <StepCard />));
    expect(text).toContain(endTexts.last);
    expect(text).toContain(words);
    expect(text).toContain(endTexts.open);
    // Not the card of a step: nothing is asked that could be found.
    expect(text).not.toContain(stepTexts.found);
  });

  it('should not stand there while the machine is halted, or while a step was asked for', () => {
    expect(textOf(markup(stateOf(cabinet, { snapshots: [cut] }), <StepCard />))).not.toContain(endTexts.last);
    const state = stateOf(cabinet, proved);
    const chosenStep = { key: 'any', number: 1 } as unknown as AppState['chosenStep'];
    expect(textOf(markup({ ...state, chosenStep }, <StepCard />))).not.toContain(endTexts.last);
  });
});
