import type { Draft } from 'immer';
import { windowTexts, wordFound, wordPutBack, wordStepDone, wordStepTried } from '../../engine/messages/index.ts';
import { type Displaced, putBack } from '../../engine/plan/index.ts';
import type { DisplayMeaning, LookObservation, Provocation, Snapshot } from '../../engine/schema/index.ts';
import type { Look } from '../../engine/simulation/index.ts';
import { type Step, stateNeeded } from '../../engine/steps/index.ts';
import type { AppState, SessionState } from './appState.ts';
import { documentCommand, viewCommand } from './command.ts';
import { currentSnapshot, draftSnapshot, isSameLook } from './evidence.ts';
import { namesOf } from './names.ts';
import type { CaseRecord } from './sitting.ts';

/*
 * The commands about steps: what was found is entered as evidence. And about single entries of the log, of any snapshot.
 */

const always = () => true;

export interface OutcomeEntry {
  readonly step: Step;
  /** One of the step's outcomes. */
  readonly outcome: string;
  /** When it was found, ISO 8601. */
  readonly at: string;
}

/** What a look showed, whoever planned it. */
export interface CheckEntry {
  readonly look: Look;
  /** The outcomes that fit what was seen; empty: it was not looked at. */
  readonly outcomes: readonly string[];
  /** At which look at the machine: index of its snapshot. */
  readonly snapshot: number;
  /** ISO 8601. */
  readonly at: string;
}

/** One entry of the case, by the snapshot in which it stands. */
export type EntryRef =
  | { readonly kind: 'display'; readonly snapshot: number; readonly unit: string }
  | { readonly kind: 'report'; readonly snapshot: number; readonly chain: string }
  | { readonly kind: 'look'; readonly snapshot: number; readonly index: number }
  /** What was done before this snapshot, be it a restart alone, and whether the machine ran afterwards. */
  | { readonly kind: 'acts'; readonly snapshot: number };

/** A step after which the machine is started again. */
type RestartStep = Extract<Step, { do: 'act' | 'provoke' }>;

/** Names the same step as long as it is listed. */
export const stepKey = (step: Step): string => JSON.stringify(step);

/** The look at the machine after a step that starts it again; `halted` is null where nobody has said yet whether it runs. */
function afterRestart(step: RestartStep, halted: boolean | null): Snapshot {
  return {
    ...(step.do === 'act'
      ? { interventions: [...step.acts] }
      : { provoked: { how: step.how, ...(step.subjects.length > 0 ? { subjects: [...step.subjects] } : {}) } }),
    restarted: true,
    // What is provoked came up first, and halted while it ran.
    onset: step.do === 'provoke' && halted !== false ? 'while-running' : 'at-power-up',
    ...(halted === null ? {} : { halted }),
  };
}

/** Whether anything is known of the present look: another restart on top of an empty one would say nothing. */
function isBegun(record: CaseRecord): boolean {
  const { displays, reports, looks, halted } = currentSnapshot(record);
  return halted !== undefined || (displays?.length ?? 0) + (reports?.length ?? 0) + (looks?.length ?? 0) > 0;
}

function enterOutcome(record: Draft<CaseRecord>, { step, outcome, at }: OutcomeEntry): void {
  if (step.do === 'act' || step.do === 'provoke') {
    record.evidence.snapshots.push(afterRestart(step, outcome === 'halts'));
    return;
  }
  const snapshot = draftSnapshot(record);
  snapshot.state = stateNeeded(step);
  switch (step.do) {
    case 'read-display': {
      const others = (snapshot.displays ?? []).filter(({ unit }) => unit !== step.unit);
      snapshot.displays = [...others, { unit: step.unit, meanings: [outcome as DisplayMeaning], at }]; // the outcome of reading a display is a meaning
      return;
    }
    case 'read-report': {
      const others = (snapshot.reports ?? []).filter(({ chain }) => chain !== step.chain);
      snapshot.reports = [...others, { chain: step.chain, gaps: [outcome === 'none' ? 'none' : Number(outcome)], at }];
      return;
    }
    case 'look':
      // The step's look and one of its own outcomes make an observation of that kind.
      snapshot.looks = [...(snapshot.looks ?? []), { ...step.look, outcomes: [outcome], at } as LookObservation];
  }
}

/** One state of the machine shows one thing at one place: what is entered last holds, as it does for a display. */
function enterCheck(record: Draft<CaseRecord>, { look, outcomes, snapshot: index, at }: CheckEntry): void {
  const last = draftSnapshot(record);
  const snapshot = record.evidence.snapshots[index] ?? last;
  const others = (snapshot.looks ?? []).filter((one) => !isSameLook(one, look));
  // Offered are the outcomes of this kind of look only.
  snapshot.looks = outcomes.length === 0 ? others : [...others, { ...look, outcomes: [...outcomes], at } as LookObservation];
  if (snapshot === last && outcomes.length > 0) snapshot.state = stateNeeded({ do: 'look', look });
}

function withdrawEntry(record: Draft<CaseRecord>, ref: EntryRef): void {
  const { snapshots } = record.evidence;
  const snapshot = snapshots[ref.snapshot];
  if (!snapshot) return;
  if (ref.kind === 'display') snapshot.displays = (snapshot.displays ?? []).filter(({ unit }) => unit !== ref.unit);
  if (ref.kind === 'report') snapshot.reports = (snapshot.reports ?? []).filter(({ chain }) => chain !== ref.chain);
  if (ref.kind === 'look') snapshot.looks = (snapshot.looks ?? []).filter((_look, index) => index !== ref.index);
  if (ref.kind !== 'acts') return;
  const seen = (snapshot.displays?.length ?? 0) + (snapshot.reports?.length ?? 0) + (snapshot.looks?.length ?? 0);
  // What was not done made no new state of the machine; what was seen since stays.
  if (seen === 0 && ref.snapshot > 0) snapshots.splice(ref.snapshot, 1);
  else {
    const wasOnlyRestarted = !snapshot.provoked && (snapshot.interventions?.length ?? 0) === 0;
    if (snapshot.restarted !== true && (snapshot.interventions?.length ?? 0) === 0) delete snapshot.halted;
    delete snapshot.interventions;
    delete snapshot.provoked;
    if (wasOnlyRestarted) {
      delete snapshot.restarted;
      delete snapshot.onset;
    }
  }
}

function correctEntry(record: Draft<CaseRecord>, ref: EntryRef, outcome: string): void {
  const snapshot = record.evidence.snapshots[ref.snapshot];
  if (!snapshot) return;
  if (ref.kind === 'acts') snapshot.halted = outcome === 'halts';
  if (ref.kind === 'look') {
    const look = snapshot.looks?.[ref.index];
    if (look) (look.outcomes as string[]) = [outcome]; // offered are the outcomes of this kind of look only
  }
  if (ref.kind === 'display') {
    const display = snapshot.displays?.find(({ unit }) => unit === ref.unit);
    if (!display) return;
    display.meanings = [outcome as DisplayMeaning]; // offered are meanings only
    delete display.code;
  }
}

export const stepCommands = {
  'enter-outcome': documentCommand<OutcomeEntry>({
    label: 'enterOutcome',
    isEnabled: always,
    undo: 'step',
    name: (state, { step, outcome }) => wordStepDone(namesOf(state.checked.topology), step, outcome),
    subject: ({ step }) => subjectOf(step),
    run: (draft, entry) => enterOutcome(draft.caseRecord, entry),
  }),

  'enter-unforeseen': documentCommand<{ readonly step: RestartStep }>({
    label: 'enterUnforeseen',
    isEnabled: always,
    undo: 'step',
    name: (state, { step }) => wordStepTried(namesOf(state.checked.topology), step),
    subject: ({ step }) => subjectOf(step),
    run: (draft, { step }) => {
      draft.caseRecord.evidence.snapshots.push(afterRestart(step, null));
    },
  }),

  'enter-check': documentCommand<CheckEntry>({
    label: 'enterCheck',
    isEnabled: (state) => !state.inject.on,
    undo: 'step',
    name: ({ checked }, { look, outcomes }) => wordFound(namesOf(checked.topology), look, outcomes),
    subject: ({ look }) => subjectOf({ do: 'look', look }),
    run: (draft, entry) => enterCheck(draft.caseRecord, entry),
  }),

  'open-check': viewCommand({
    label: 'openCheck',
    shortcuts: ['C'],
    keysIn: 'find',
    isEnabled: (state) => !state.inject.on && firstLook(state) !== null,
    run: (state) => {
      const look = firstLook(state);
      return look ? { entry: { kind: 'check', look, walking: false } } : {};
    },
  }),

  'enter-restart': documentCommand({
    label: 'enterRestart',
    isEnabled: (state) => !state.inject.on && state.checked.cabinet !== null && isBegun(state.caseRecord),
    undo: 'step',
    name: () => windowTexts.steps.restarted,
    run: (draft) => {
      draft.caseRecord.evidence.snapshots.push({ restarted: true, onset: 'at-power-up' });
    },
  }),

  'enter-stop': documentCommand({
    label: 'enterStop',
    isEnabled: (state) => !state.inject.on && currentSnapshot(state.caseRecord).halted === false,
    undo: 'step',
    name: () => windowTexts.steps.stopped,
    run: (draft) => {
      // No restart lies between: the machine ran until now, so this is a new trip.
      draft.caseRecord.evidence.snapshots.push({ onset: 'while-running', halted: true });
    },
  }),

  'set-provoked': documentCommand<{ readonly how: Provocation | null; readonly subjects: readonly string[] }>({
    label: 'setProvoked',
    isEnabled: (state) => !state.inject.on && currentSnapshot(state.caseRecord).restarted === true,
    undo: 'step',
    name: () => windowTexts.seenPane.provokedStep,
    run: (draft, { how, subjects }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      const before = snapshot.provoked;
      if (how === null) delete snapshot.provoked;
      else snapshot.provoked = { how, ...(subjects.length > 0 ? { subjects: [...subjects] } : {}) };
      // What is waited for comes while the machine runs; said otherwise, that holds.
      if ((before === undefined) !== (how === null)) snapshot.onset = how === null ? 'at-power-up' : 'while-running';
    },
  }),

  'put-back': documentCommand<{ readonly displaced: Displaced; readonly halted: boolean | null }>({
    label: 'putBack',
    isEnabled: always,
    undo: 'step',
    name: (state, { displaced }) => wordPutBack(namesOf(state.checked.topology), displaced),
    subject: ({ displaced }) => ('unit' in displaced ? displaced.unit : 'link' in displaced ? displaced.link : displaced.feedback),
    run: (draft, { displaced, halted }) => {
      const step = { do: 'act', acts: putBack(displaced) } as const;
      draft.caseRecord.evidence.snapshots.push(afterRestart(step, halted));
    },
  }),

  'withdraw-entry': documentCommand<{ readonly entry: EntryRef; readonly what: string }>({
    label: 'withdrawEntry',
    isEnabled: always,
    undo: 'step',
    name: (_state, { what }) => windowTexts.steps.withdrawEntry(what),
    run: (draft, { entry }) => withdrawEntry(draft.caseRecord, entry),
  }),

  'correct-entry': documentCommand<{ readonly entry: EntryRef; readonly outcome: string; readonly what: string }>({
    label: 'correctEntry',
    isEnabled: always,
    undo: 'step',
    name: (_state, { what }) => windowTexts.steps.correctEntry(what),
    run: (draft, { entry, outcome }) => correctEntry(draft.caseRecord, entry, outcome),
  }),

  'next-step': viewCommand({
    label: 'nextStep',
    shortcuts: ['D'],
    keysIn: 'find',
    isEnabled: (state) => !state.inject.on && (state.planned?.plan.steps.length ?? 0) > 0,
    run: (state) => showing(state, state.planned?.plan.steps[0]?.step ?? null),
  }),

  'show-step': viewCommand<{ readonly step: Step | null }>({
    label: 'showStep',
    isEnabled: always,
    run: (state, { step }) => showing(state, step),
  }),
} as const;

/** The card of a step takes the focus, and its place is brought into view. */
function showing(state: AppState, step: Step | null): Partial<SessionState> {
  const subject = step && subjectOf(step);
  return {
    chosenStep: step && { key: stepKey(step), number: (state.chosenStep?.number ?? 0) + 1 },
    ...(subject ? { spotlight: { subject, number: (state.spotlight?.number ?? 0) + 1 } } : {}),
  };
}

/** The look that is likeliest meant: that of the step that is shown, else the first that is planned, else at the first cable. */
function firstLook({ planned, chosenStep, checked }: AppState): Look | null {
  const steps = planned?.plan.steps.map(({ step }) => step) ?? [];
  const shown = steps.find((step) => chosenStep !== null && stepKey(step) === chosenStep.key) ?? steps[0];
  const look = [...(shown ? [shown] : []), ...steps].find((step) => step.do === 'look');
  if (look) return look.look;
  const link = checked.topology.chains.flatMap(({ links }) => links)[0];
  return link === undefined ? null : { look: 'light-at-plug', link, end: 'lower' };
}

/** Where a step is done, on the drawing. */
function subjectOf(step: Step): string | null {
  switch (step.do) {
    case 'read-display':
      return step.unit;
    case 'read-report':
      return step.chain;
    case 'look':
      return 'link' in step.look ? step.look.link : step.look.unit;
    case 'act': {
      const [act] = step.acts;
      if (!act) return null;
      if ('link' in act) return act.link;
      if ('unit' in act) return act.unit;
      if ('lead' in act) return act.lead;
      if ('feedback' in act) return act.feedback;
      return 'chain' in act ? act.chain : null;
    }
    case 'provoke':
      return step.subjects[0] ?? null;
  }
}
