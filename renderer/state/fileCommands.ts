import { fileWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { isUnsaved } from '../files/unsaved.ts';
import type { AppState } from './appState.ts';
import { documentCommand, effectCommand, viewCommand } from './command.ts';
import type { AlertKind, Answer, FilePart } from './sitting.ts';

/*
 * The commands about files. While a question is open none of them runs: the answer comes first.
 */

const unlessAsked = (state: AppState) => state.question === null;
const hasFile = ({ files }: AppState) => files.case !== null || files.cabinet !== null;

export const fileCommands = {
  // A browser keeps Ctrl+N for itself, so there is a plain key too.
  'new-cabinet': effectCommand({
    label: 'newCabinet',
    shortcuts: ['Mod+N', 'N'],
    isEnabled: unlessAsked,
    run: ({ files }) => files.newCabinet(),
  }),
  'new-case': effectCommand({ label: 'newCase', isEnabled: unlessAsked, run: ({ files }) => files.newCase() }),

  'open-sample': effectCommand<{ readonly name: string }>({
    label: 'openSample',
    isEnabled: unlessAsked,
    run: ({ files }, { name }) => files.openSample(name),
  }),

  'open-file': effectCommand({ label: 'openFile', shortcuts: ['Mod+O'], isEnabled: unlessAsked, run: ({ files }) => files.open() }),

  'open-recent': effectCommand<{ readonly key: string }>({
    label: 'openRecent',
    isEnabled: unlessAsked,
    run: ({ files }, { key }) => files.openRecent(key),
  }),

  'list-recent': effectCommand({ label: 'listRecent', isEnabled: () => true, run: ({ files }) => files.listRecent() }),

  'open-kept-copy': effectCommand({
    label: 'openKeptCopy',
    isEnabled: (state) => unlessAsked(state) && hasFile(state),
    run: ({ files }) => files.openKeptCopy(),
  }),

  'open-refused-kept': effectCommand({
    label: 'openKeptCopy',
    isEnabled: (state) => state.refused?.kept !== undefined,
    run: ({ files }) => files.openRefusedKept(),
  }),

  save: effectCommand({ label: 'save', shortcuts: ['Mod+S'], isEnabled: unlessAsked, run: ({ files }) => files.save() }),

  'save-case-as': effectCommand({
    label: 'saveCaseAs',
    shortcuts: ['Mod+Shift+S'],
    isEnabled: unlessAsked,
    run: ({ files }) => files.saveAs('case'),
  }),

  'save-cabinet-as': effectCommand({ label: 'saveCabinetAs', isEnabled: unlessAsked, run: ({ files }) => files.saveAs('cabinet') }),

  revert: effectCommand({
    label: 'revert',
    isEnabled: (state) => unlessAsked(state) && hasFile(state) && isUnsaved(state),
    run: ({ files }) => files.revert(),
  }),

  'load-outside': effectCommand({ label: 'loadOutside', isEnabled: unlessAsked, run: ({ files }) => files.loadOutside() }),

  'compare-outside': effectCommand<{ readonly part: FilePart }>({
    label: 'compareSaved',
    isEnabled: unlessAsked,
    run: ({ files }, { part }) => files.compareOutside(part),
  }),

  'keep-mine': effectCommand<{ readonly part: FilePart }>({
    label: 'keepMine',
    isEnabled: unlessAsked,
    run: ({ files }, { part }) => files.keepMine(part),
  }),

  'take-cabinet': documentCommand<{ readonly cabinet: CabinetContent; readonly name: string }>({
    label: 'takeCabinet',
    isEnabled: unlessAsked,
    undo: 'step',
    name: (_state, { name }) => fileWords.usedToday(name),
    run: (draft, { cabinet }) => {
      // Contents are only ever replaced, never changed in place, so the draft may hold it.
      draft.cabinet = cabinet as typeof draft.cabinet;
    },
  }),

  'answer-question': effectCommand<{ readonly answer: Answer }>({
    label: 'answerQuestion',
    isEnabled: (state) => state.question !== null,
    run: ({ files }, { answer }) => files.answer(answer),
  }),

  'put-alert-away': viewCommand<{ readonly kind: AlertKind }>({
    label: 'putAlertAway',
    isEnabled: () => true,
    run: (state, { kind }) => ({ alerts: state.alerts.filter((alert) => alert.kind !== kind) }),
  }),
} as const;
