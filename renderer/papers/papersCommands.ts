import { papersWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { ListFile } from '../files/access.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, effectCommand, viewCommand } from '../state/command.ts';
import type { ExportKind } from '../state/sitting.ts';
import { type ChosenMachines, noMachines, noPapers } from './papersState.ts';

/*
 * Commands of documents, exports and imports.
 */

const unlessAsked = (state: AppState) => state.question === null;

export const papersCommands = {
  'show-documents': viewCommand({
    label: 'showDocuments',
    shortcuts: ['Mod+P'],
    isEnabled: unlessAsked,
    run: () => ({ papers: { shown: 'documents', ...noMachines } }),
  }),

  'close-papers': viewCommand({
    label: 'closePapers',
    isEnabled: (state) => state.papers.shown !== 'nothing',
    run: () => ({ papers: noPapers }),
  }),

  'choose-machines': effectCommand<{ readonly from: 'files' | 'folder' }>({
    label: 'chooseMachines',
    isEnabled: unlessAsked,
    run: ({ files }, { from }) => files.chooseMachines(from),
  }),

  'add-machines': viewCommand<ChosenMachines>({
    label: 'addMachines',
    isEnabled: (state) => state.papers.shown === 'documents',
    run: ({ papers }, { machines, leftOut }) => {
      const before = papers.shown === 'documents' ? papers.machines : [];
      const known = new Set(before.map(({ content }) => content.id));
      return {
        papers: { shown: 'documents', machines: [...before, ...machines.filter(({ content }) => !known.has(content.id))], leftOut },
      };
    },
  }),

  'drop-machines': viewCommand({
    label: 'dropMachines',
    isEnabled: (state) => state.papers.shown === 'documents',
    run: () => ({ papers: { shown: 'documents', ...noMachines } }),
  }),

  'import-list': effectCommand({
    label: 'importList',
    isEnabled: (state) => unlessAsked(state) && !state.inject.on,
    run: ({ files }) => files.importList(),
  }),

  'show-import': viewCommand<{ readonly list: ListFile }>({
    label: 'showImport',
    isEnabled: unlessAsked,
    run: (_state, { list }) => ({ papers: { shown: 'import', list } }),
  }),

  'take-import': documentCommand<{ readonly content: CabinetContent; readonly name: string }>({
    label: 'takeImport',
    isEnabled: unlessAsked,
    undo: 'step',
    name: (_state, { name }) => papersWords.undoName(name),
    run: (draft, { content }) => {
      // Contents are only ever replaced, never changed in place, so the draft may hold it.
      draft.cabinet = content as typeof draft.cabinet;
    },
  }),

  'export-file': effectCommand<{ readonly name: string; readonly content: Uint8Array; readonly kind: ExportKind }>({
    label: 'exportFile',
    isEnabled: unlessAsked,
    run: ({ files }, { name, content, kind }) => files.exportFile(name, content, kind),
  }),
} as const;
