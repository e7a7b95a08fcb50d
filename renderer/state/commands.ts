import { windowTexts } from '../../engine/messages/index.ts';
import type { DisplayMeaning, Onset } from '../../engine/schema/index.ts';
import { compareCommands } from '../compare/compareCommands.ts';
import { confirmedCommands } from '../confirmed/confirmedCommands.ts';
import { drawCommands } from '../draw/drawCommands.ts';
import { editCommands } from '../edit/editCommands.ts';
import { handBackCommands } from '../handback/handBackCommands.ts';
import { injectCommands } from '../inject/injectCommands.ts';
import { legendCommands } from '../legend/legendCommands.ts';
import { listCommands } from '../lists/listCommands.ts';
import { papersCommands } from '../papers/papersCommands.ts';
import { instructorCommands } from '../practice/instructorCommands.ts';
import { entryCommands } from '../quick/entryCommands.ts';
import { ratesCommands } from '../rates/ratesCommands.ts';
import { repairCommands } from '../repair/repairCommands.ts';
import { shellCommands } from '../shell/shellCommands.ts';
import { sumsCommands } from '../sums/sumsCommands.ts';
import type { AppState, ChosenCandidate, OpenEntry, ThemeChoice } from './appState.ts';
import { type Command, documentCommand, effectCommand, viewCommand } from './command.ts';
import { currentSnapshot, draftSnapshot, dropPhoto, findDisplay, findReport } from './evidence.ts';
import { fileCommands } from './fileCommands.ts';
import { namesOf } from './names.ts';
import { stepCommands } from './stepCommands.ts';

/*
 * Every command of the window. Menus, keys, clicks and tests all run these, through the one dispatcher.
 */

const always = () => true;
/** While a fault is simulated nothing is entered or undone: what it would change cannot be seen then. */
const unlessSimulating = (state: AppState) => !state.inject.on;
/** In Practice the document is out of sight: what nobody sees is not taken back. */
const showsDocument = (state: AppState) => unlessSimulating(state) && state.workspace !== 'practice';
const spotlightOn = (state: AppState, subject: string) => ({ spotlight: { subject, number: (state.spotlight?.number ?? 0) + 1 } });

export interface DisplayEntry {
  readonly unit: string;
  readonly meanings: readonly DisplayMeaning[];
  /** The code that the display shows, where it was read through a legend. */
  readonly code?: string;
  /** When it was seen, ISO 8601. */
  readonly at: string;
}

export interface ReportEntry {
  readonly chain: string;
  readonly gaps: readonly (number | 'none')[];
  readonly at: string;
}

export const commands = {
  'enter-display': documentCommand<DisplayEntry>({
    label: 'enterDisplay',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (state, { unit, meanings }) => windowTexts.steps.display(namesOf(state.checked.topology).unit(unit), meanings),
    subject: ({ unit }) => unit,
    run: (draft, { unit, meanings, code, at }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      const { note, photo } = findDisplay(snapshot, unit) ?? {};
      const kept = (snapshot.displays ?? []).filter((display) => display.unit !== unit);
      const noted = { ...(note === undefined ? {} : { note }), ...(photo === undefined ? {} : { photo }) };
      snapshot.displays = [...kept, { unit, meanings: [...meanings], ...(code === undefined ? {} : { code }), ...noted, at }];
    },
  }),

  'withdraw-display': documentCommand<{ readonly unit: string }>({
    label: 'withdrawDisplay',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (state, { unit }) => windowTexts.steps.withdrawDisplay(namesOf(state.checked.topology).unit(unit)),
    subject: ({ unit }) => unit,
    run: (draft, { unit }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      const found = findDisplay(snapshot, unit);
      if (!found) return;
      const { photo } = found;
      snapshot.displays = (snapshot.displays ?? []).filter((display) => display.unit !== unit);
      if (photo !== undefined) dropPhoto(draft, photo);
    },
  }),

  'enter-report': documentCommand<ReportEntry>({
    label: 'enterReport',
    isEnabled: unlessSimulating,
    undo: { mergeBy: ({ chain }) => `report/${chain}` },
    name: (state, { chain }) => windowTexts.steps.report(namesOf(state.checked.topology).chain(chain)),
    run: (draft, { chain, gaps, at }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      const { note, photo } = findReport(snapshot, chain) ?? {};
      const kept = (snapshot.reports ?? []).filter((report) => report.chain !== chain);
      const noted = { ...(note === undefined ? {} : { note }), ...(photo === undefined ? {} : { photo }) };
      snapshot.reports = [...kept, { chain, gaps: [...gaps], ...noted, at }];
    },
  }),

  'withdraw-report': documentCommand<{ readonly chain: string }>({
    label: 'withdrawReport',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (state, { chain }) => windowTexts.steps.withdrawReport(namesOf(state.checked.topology).chain(chain)),
    run: (draft, { chain }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      const found = findReport(snapshot, chain);
      if (!found) return;
      const { photo } = found;
      snapshot.reports = (snapshot.reports ?? []).filter((report) => report.chain !== chain);
      if (photo !== undefined) dropPhoto(draft, photo);
    },
  }),

  'set-onset': documentCommand<{ readonly onset: Onset | 'unknown' }>({
    label: 'setOnset',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (_state, { onset }) => windowTexts.steps.onset(onset),
    run: (draft, { onset }) => {
      if (currentSnapshot(draft.caseRecord).onset !== onset) draftSnapshot(draft.caseRecord).onset = onset;
    },
  }),

  'set-halted': documentCommand<{ readonly halted: boolean | null }>({
    label: 'setHalted',
    isEnabled: unlessSimulating,
    undo: 'step',
    name: (_state, { halted }) => windowTexts.steps.halted(halted),
    run: (draft, { halted }) => {
      const snapshot = draftSnapshot(draft.caseRecord);
      if (halted === null) delete snapshot.halted;
      else snapshot.halted = halted;
    },
  }),

  'choose-candidate': viewCommand<{ readonly chosen: ChosenCandidate; readonly subject: string | null }>({
    label: 'chooseCandidate',
    isEnabled: always,
    run: (state, { chosen, subject }) => ({
      chosen,
      chosenStep: null,
      ...(subject === null ? {} : spotlightOn(state, subject)),
    }),
  }),

  'show-on-cabinet': viewCommand<{ readonly subject: string }>({
    label: 'showOnCabinet',
    isEnabled: always,
    run: (state, { subject }) => spotlightOn(state, subject),
  }),

  'open-entry': viewCommand<{ readonly entry: OpenEntry }>({
    label: 'openEntry',
    isEnabled: unlessSimulating,
    // On a walk a click on another display goes on from there.
    run: (state, { entry }) => ({
      entry: entry.kind === 'display' ? { ...entry, walking: entry.walking || state.entry?.walking === true } : entry,
    }),
  }),

  'close-entry': viewCommand({
    label: 'closeEntry',
    isEnabled: (state) => state.entry !== null,
    run: () => ({ entry: null }),
  }),

  'toggle-all-candidates': viewCommand({
    label: 'toggleAllCandidates',
    isEnabled: always,
    run: (state) => ({ allCandidates: !state.allCandidates }),
  }),

  'set-theme': viewCommand<{ readonly theme: ThemeChoice }>({
    label: 'setTheme',
    isEnabled: always,
    run: (_state, { theme }) => ({ theme }),
  }),

  'toggle-fold-chains': viewCommand({
    label: 'toggleFoldChains',
    isEnabled: always,
    run: (state) => ({ foldChains: !state.foldChains }),
  }),

  'toggle-reduce-motion': viewCommand({
    label: 'toggleReduceMotion',
    isEnabled: always,
    run: (state) => ({ reduceMotion: !state.reduceMotion }),
  }),

  'close-refused': viewCommand({
    label: 'closeRefused',
    isEnabled: (state) => state.refused !== null,
    run: () => ({ refused: null }),
  }),

  'close-refusal': viewCommand({
    label: 'closeRefusal',
    isEnabled: (state) => state.refusal !== null,
    run: () => ({ refusal: null }),
  }),

  undo: effectCommand({
    label: 'undo',
    shortcuts: ['Mod+Z'],
    isEnabled: (state) => state.history.past.length > 0 && showsDocument(state),
    run: (context) => context.undo(),
  }),

  redo: effectCommand({
    label: 'redo',
    shortcuts: ['Mod+Shift+Z', 'Mod+Y'],
    isEnabled: (state) => state.history.future.length > 0 && showsDocument(state),
    run: (context) => context.redo(),
  }),

  'zoom-in': effectCommand({ label: 'zoomIn', shortcuts: ['Mod+='], isEnabled: always, run: (context) => context.canvas?.zoomBy(1.25) }),
  'zoom-out': effectCommand({ label: 'zoomOut', shortcuts: ['Mod+-'], isEnabled: always, run: (context) => context.canvas?.zoomBy(0.8) }),
  'zoom-to-fit': effectCommand({
    label: 'zoomToFit',
    shortcuts: ['Mod+0', 'Shift+1'],
    isEnabled: always,
    run: (context) => context.canvas?.fit(),
  }),

  'walk-displays': effectCommand({
    label: 'walkDisplays',
    shortcuts: ['E'],
    keysIn: 'find',
    isEnabled: (state) => state.checked.topology.units.size > 0 && unlessSimulating(state),
    run: (context) => context.canvas?.walkDisplays?.(),
  }),

  ...fileCommands,
  ...legendCommands,
  ...stepCommands,
  ...injectCommands,
  ...sumsCommands,
  ...handBackCommands,
  ...repairCommands,
  ...ratesCommands,
  ...confirmedCommands,
  ...papersCommands,
  ...entryCommands,
  ...drawCommands,
  ...editCommands,
  ...compareCommands,
  ...instructorCommands,
  ...shellCommands,
  ...listCommands,

  announce: viewCommand<{ readonly text: string }>({
    label: 'announce',
    isEnabled: always,
    run: (state, { text }) => ({ announcement: { text, number: state.announcement.number + 1 } }),
  }),
} as const;

export type CommandId = keyof typeof commands;
/** What a command is run with; `undefined` where it needs nothing. */
export type CommandArgs<K extends CommandId> = (typeof commands)[K] extends Command<infer A> ? A : never;
