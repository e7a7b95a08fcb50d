import type { ChainId, UnitId } from '../../engine/base/index.ts';
import { injectWords, type Names, wordFaultClause, wordReport } from '../../engine/messages/index.ts';
import type { DisplayMeaning, Fault, Onset } from '../../engine/schema/index.ts';
import { type MomentName, modeKey } from '../../engine/simulation/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { namesOf } from '../state/names.ts';
import { addFault, chainOf, isOnlySteady } from './faultChoices.ts';
import { countHops, selectInjectModel } from './injectModel.ts';
import type { InjectState, InjectTarget } from './injectState.ts';
import { nextStop } from './lightWay.ts';
import { listChanges, sayHop } from './sayings.ts';

/*
 * The commands of the simulation. What is injected belongs to the sitting: none of them makes an undo step but the last one, which
 * takes a pattern into the case.
 */

/** How steadily an injected fault is there. */
export type Steadiness = 'steady' | 'intermittent' | 'gone';

export interface PatternArgs {
  readonly displays: readonly { readonly unit: string; readonly meaning: DisplayMeaning }[];
  readonly reports: readonly { readonly chain: string; readonly gap: number | 'none' }[];
  readonly onset: Onset;
  readonly halted: boolean;
  /** Said of each observation, and of the whole. */
  readonly note: string;
  readonly wholeNote: string;
  readonly at: string;
}

const isOn = ({ inject }: AppState) => inject.on;
const change = (state: AppState, changed: Partial<InjectState>) => ({ inject: { ...state.inject, ...changed } });
const say = (state: AppState, text: string) => ({ announcement: { text, number: state.announcement.number + 1 } });

/** The state with other faults, and what is said of it: what was done, and what every display then shows. */
function withFaults(state: AppState, changed: Partial<InjectState>, told: (names: Names, change: string) => string) {
  const next = change(state, changed);
  const model = selectInjectModel({ ...state, ...next });
  const names = namesOf(state.checked.topology);
  return { ...next, ...say(state, told(names, model ? wordChanges(names, model) : '')) };
}

function wordChanges(names: Names, model: NonNullable<ReturnType<typeof selectInjectModel>>): string {
  const { displays, reports } = listChanges(model);
  if (displays.length + reports.length === 0) return injectWords.noChange;
  return injectWords.changes(
    names,
    displays,
    reports.map((report) => wordReport(names, report)),
  );
}

/** Goes to a hop and says it; null is everything at once. */
function toHop(state: AppState, hop: number | null) {
  const next = change(state, { hop });
  const model = selectInjectModel({ ...state, ...next });
  return {
    ...next,
    ...(model && hop !== null ? say(state, sayHop(namesOf(state.checked.topology), model, hop, state.inject.moment)) : {}),
  };
}

const find = (state: AppState, key: string) => state.inject.faults.find((fault) => modeKey(fault) === key);

/** One fault of the list as another one. */
function replace(state: AppState, key: string, make: (fault: Fault) => Fault) {
  return change(state, { faults: state.inject.faults.map((fault) => (modeKey(fault) === key ? make(fault) : fault)) });
}

export const injectCommands = {
  'toggle-inject': viewCommand({
    label: 'toggleInject',
    shortcuts: ['I'],
    keysIn: 'find',
    isEnabled: (state) => state.inject.on || state.checked.cabinet !== null,
    run: (state) => ({
      ...change(state, { on: !state.inject.on, target: null, taking: false }),
      entry: null,
      ...say(state, state.inject.on ? injectWords.left : injectWords.entered),
    }),
  }),

  'end-inject': viewCommand({
    label: 'endInject',
    shortcuts: ['Escape'],
    keysIn: 'find',
    isEnabled: isOn,
    run: (state) => ({ ...change(state, { on: false, target: null, taking: false }), ...say(state, injectWords.left) }),
  }),

  'open-injection': viewCommand<{ readonly target: InjectTarget }>({
    label: 'openInjection',
    isEnabled: isOn,
    run: (state, { target }) => change(state, { target }),
  }),

  'close-injection': viewCommand({
    label: 'closeInjection',
    isEnabled: ({ inject }) => inject.target !== null,
    run: (state) => change(state, { target: null }),
  }),

  'inject-fault': viewCommand<{ readonly fault: Fault }>({
    label: 'injectFault',
    isEnabled: isOn,
    run: (state, { fault }) =>
      withFaults(
        state,
        // The way of the light begins anew where the new fault lies.
        {
          faults: addFault(state.inject.faults, fault),
          chain: chainOf(state.checked.topology, fault) ?? state.inject.chain,
          hop: null,
          target: null,
        },
        (names, changed) => injectWords.said(wordFaultClause(names, fault), changed),
      ),
  }),

  'remove-fault': viewCommand<{ readonly key: string }>({
    label: 'removeFault',
    isEnabled: isOn,
    run: (state, { key }) => {
      const gone = find(state, key);
      if (!gone) return {};
      const faults = state.inject.faults.filter((fault) => fault !== gone);
      return withFaults(state, { faults, hop: null, target: null }, (names, changed) =>
        injectWords.saidOut(wordFaultClause(names, gone), changed),
      );
    },
  }),

  'clear-faults': viewCommand({
    label: 'clearFaults',
    shortcuts: ['Mod+Backspace'],
    keysIn: 'find',
    isEnabled: ({ inject }) => inject.on && inject.faults.length > 0,
    run: (state) => ({ ...change(state, { faults: [], hop: null, target: null }), ...say(state, injectWords.none) }),
  }),

  'set-presence': viewCommand<{ readonly key: string; readonly steadiness: Steadiness }>({
    label: 'setPresence',
    isEnabled: isOn,
    run: (state, { key, steadiness }) =>
      replace(state, key, (fault) => {
        const { presence: _presence, absentNow: _absentNow, ...bare } = fault;
        if (steadiness === 'steady' || isOnlySteady(fault)) return bare;
        return { ...bare, presence: 'intermittent', ...(steadiness === 'gone' ? { absentNow: true } : {}) };
      }),
  }),

  'set-loss': viewCommand<{ readonly key: string; readonly lossDb: number | null }>({
    label: 'setLoss',
    isEnabled: isOn,
    run: (state, { key, lossDb }) =>
      replace(state, key, (fault) => {
        if (fault.item !== 'cable' || (fault.mode !== 'outbound-dim' && fault.mode !== 'return-dim')) return fault;
        const { lossDb: _lossDb, ...bare } = fault;
        return lossDb === null ? bare : { ...bare, lossDb };
      }),
  }),

  'set-inject-onset': viewCommand<{ readonly onset: Onset }>({
    label: 'setInjectOnset',
    isEnabled: isOn,
    run: (state, { onset }) => change(state, { onset }),
  }),

  'show-moment': viewCommand<{ readonly moment: MomentName }>({
    label: 'showMoment',
    isEnabled: isOn,
    run: (state, { moment }) => change(state, { moment }),
  }),

  'follow-chain': viewCommand<{ readonly chain: string }>({
    label: 'followChain',
    isEnabled: isOn,
    run: (state, { chain }) => change(state, { chain, hop: null }),
  }),

  'go-to-hop': viewCommand<{ readonly hop: number | null }>({
    label: 'goToHop',
    isEnabled: isOn,
    run: (state, { hop }) => toHop(state, hop),
  }),

  'next-hop': viewCommand({
    label: 'nextHop',
    shortcuts: ['F'],
    keysIn: 'find',
    isEnabled: (state) => state.inject.on && (state.inject.hop ?? -1) < countHops(state) - 1,
    run: (state) => toHop(state, (state.inject.hop ?? -1) + 1),
  }),

  'previous-hop': viewCommand({
    label: 'previousHop',
    shortcuts: ['B'],
    keysIn: 'find',
    isEnabled: ({ inject }) => inject.on && inject.hop !== null,
    run: (state) => toHop(state, state.inject.hop === null || state.inject.hop === 0 ? null : state.inject.hop - 1),
  }),

  'next-stop': viewCommand({
    label: 'nextStop',
    shortcuts: ['S'],
    keysIn: 'find',
    isEnabled: (state) => nextStop(selectInjectModel(state)?.hops ?? [], state.inject.hop) !== null,
    run: (state) => toHop(state, nextStop(selectInjectModel(state)?.hops ?? [], state.inject.hop)),
  }),

  'ask-take-pattern': viewCommand({
    label: 'askTakePattern',
    shortcuts: ['P'],
    keysIn: 'find',
    isEnabled: (state) => selectInjectModel(state) !== null,
    run: (state) => change(state, { taking: true, target: null }),
  }),

  'close-take-pattern': viewCommand({
    label: 'closeTakePattern',
    isEnabled: ({ inject }) => inject.taking,
    run: (state) => change(state, { taking: false }),
  }),

  'take-pattern': documentCommand<PatternArgs>({
    label: 'takePattern',
    isEnabled: isOn,
    undo: 'step',
    name: () => injectWords.take.step,
    run: (draft, { displays, reports, onset, halted, note, wholeNote, at }) => {
      draft.caseRecord.evidence.snapshots = [
        {
          onset,
          halted,
          displays: displays.map(({ unit, meaning }) => ({ unit, meanings: [meaning], note, at })),
          reports: reports.map(({ chain, gap }) => ({ chain, gaps: [gap], note, at })),
          note: wholeNote,
          simulated: true,
        },
      ];
    },
  }),
} as const;

/** Everything of a simulation that could be taken into the case: displays in reading order, reports that say something. */
export function listPattern(state: AppState, order: readonly UnitId[], chains: readonly ChainId[]) {
  const pattern = selectInjectModel(state)?.pattern;
  return {
    displays: order.flatMap((unit) => {
      const display = pattern?.displays.get(unit);
      return display ? [{ unit, meaning: display.meaning }] : [];
    }),
    reports: chains.flatMap((chain) => {
      const report = pattern?.reports.get(chain);
      return report?.speaks && report.length > 0 ? [{ chain, gap: report.gap }] : [];
    }),
  };
}
