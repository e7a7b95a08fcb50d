import type { AppState } from '../state/appState.ts';
import { effectCommand, viewCommand } from '../state/command.ts';
import type { ComparedWith } from './comparedWith.ts';

/*
 * Commands of comparing cabinets, and of making a new machine from a design.
 */

const unlessAsked = (state: AppState) => state.question === null && !state.inject.on;
const shown = (comparison: ComparedWith) => ({ comparison, workspace: 'draw' as const });

export const compareCommands = {
  'compare-saved': viewCommand({
    label: 'compareSaved',
    isEnabled: (state) => unlessAsked(state) && savedOf(state) !== null,
    run: (state) => {
      const content = savedOf(state);
      return content === null ? {} : shown({ kind: 'saved', name: (state.files.cabinet ?? state.files.case)?.name ?? '', content });
    },
  }),

  'compare-file': effectCommand({
    label: 'compareFile',
    isEnabled: unlessAsked,
    run: ({ files }) => files.compareWith(),
  }),

  'show-comparison': viewCommand<{ readonly comparison: ComparedWith }>({
    label: 'compareFile',
    isEnabled: unlessAsked,
    run: (_state, { comparison }) => shown(comparison),
  }),

  'close-comparison': viewCommand({
    label: 'closeComparison',
    isEnabled: (state) => state.comparison !== null,
    run: () => ({ comparison: null }),
  }),

  'ask-new-machine': viewCommand<{ readonly asked: boolean } | undefined>({
    label: 'newMachine',
    isEnabled: unlessAsked,
    run: (_state, args) => ({ machineAsked: args?.asked ?? true }),
  }),

  'make-machine': effectCommand<{ readonly name: string; readonly machineNumber: string }>({
    label: 'makeMachine',
    isEnabled: (state) => state.question === null,
    run: ({ files }, named) => files.newMachine(named),
  }),
} as const;

/** The cabinet as it lies on the disk, or as it was begun. */
function savedOf({ saved }: AppState) {
  return saved.cabinet ?? saved.caseCabinet;
}
