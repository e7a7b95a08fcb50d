import { makeFileName } from '../../engine/base/index.ts';
import { serializeExercise, serializeResult } from '../../engine/cabinet/index.ts';
import type { ExerciseContent, ResultContent } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { effectCommand, viewCommand } from '../state/command.ts';
import type { FileRef } from '../state/sitting.ts';
import { forgetDeleted, takeChosen } from './classStore.ts';
import type { PracticeScreen } from './practiceScreens.ts';
import { leaveDebrief, mayGoOn, nextExercise } from './practiceStore.ts';

/*
 * Commands of the instructor, and of going on after a debrief.
 */

const unlessAsked = (state: AppState) => state.question === null;
const show = (state: AppState, practice: PracticeScreen): Partial<AppState> => ({
  practice,
  workspace: 'practice',
  entry: null,
  sums: { ...state.sums, shown: false },
  inject: { ...state.inject, on: false, target: null, taking: false },
  draw: { ...state.draw, dialog: null, held: null },
});

export const instructorCommands = {
  // Asked for where an exercise is shown, it leads back to the list of them, unless it is only to be shown what goes on.
  'practice-exercises': viewCommand<{ readonly goesOn: true } | undefined>({
    label: 'practiceExercises',
    isEnabled: unlessAsked,
    run: (state, args) => ({
      ...show(state, 'exercises'),
      practiceListAsked:
        state.practiceListAsked + Number(args === undefined && state.workspace === 'practice' && state.practice === 'exercises'),
    }),
  }),
  'practice-make': viewCommand({ label: 'practiceMake', isEnabled: unlessAsked, run: (state) => show(state, 'make') }),
  'practice-generate': viewCommand({ label: 'practiceGenerate', isEnabled: unlessAsked, run: (state) => show(state, 'generate') }),
  'practice-class': viewCommand({ label: 'practiceClass', isEnabled: unlessAsked, run: (state) => show(state, 'class') }),

  'practice-next': effectCommand({
    label: 'practiceNext',
    shortcuts: ['G'],
    keysIn: 'practice',
    isEnabled: (state) => state.workspace === 'practice' && state.practice === 'exercises' && mayGoOn(),
    run: () => leaveDebrief(nextExercise),
  }),

  'practice-projector': viewCommand({
    label: 'practiceProjector',
    shortcuts: ['P'],
    keysIn: 'practice',
    isEnabled: (state) => state.workspace === 'practice' && unlessAsked(state),
    run: ({ practiceLarge }) => ({ practiceLarge: !practiceLarge }),
  }),

  'save-result': effectCommand<{ readonly result: ResultContent; readonly onSaved: () => void }>({
    label: 'saveResult',
    isEnabled: unlessAsked,
    run: async ({ files }, { result, onSaved }) => {
      const content = new TextEncoder().encode(serializeResult(result));
      const name = await files.saveApart(makeFileName(`${result.name} ${result.code}`, '.result.json', 'result'), content);
      if (name !== null) onSaved();
    },
  }),

  'save-paper': effectCommand<{ readonly name: string; readonly bytes: Uint8Array; readonly as: 'pdf' | 'html' }>({
    label: 'savePaper',
    isEnabled: unlessAsked,
    run: ({ files }, { name, bytes, as }) => files.exportFile(makeFileName(name, `.${as}`, 'exercise'), bytes, as),
  }),

  'save-exercise': effectCommand<{ readonly exercise: ExerciseContent; readonly onSaved: (name: string) => void }>({
    label: 'saveExercise',
    isEnabled: unlessAsked,
    run: async ({ files }, { exercise, onSaved }) => {
      const content = new TextEncoder().encode(serializeExercise(exercise));
      const name = await files.saveApart(makeFileName(exercise.name, '.exercise.json', 'exercise'), content);
      if (name !== null) onSaved(name);
    },
  }),

  'take-results': effectCommand<{ readonly from: 'files' | 'folder' }>({
    label: 'takeResults',
    isEnabled: unlessAsked,
    run: async ({ files }, { from }) => {
      const chosen = await files.chooseResults(from);
      if (chosen !== null) takeChosen(chosen, files.deleteResults !== null);
    },
  }),

  'delete-results': effectCommand<{ readonly files: readonly FileRef[] }>({
    label: 'deleteResults',
    isEnabled: unlessAsked,
    run: async ({ files }, { files: wanted }) => {
      if (files.deleteResults !== null) forgetDeleted(await files.deleteResults(wanted));
    },
  }),
} as const;
