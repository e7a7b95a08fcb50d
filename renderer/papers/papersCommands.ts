import { papersWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { ListFile } from '../files/access.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, effectCommand, viewCommand } from '../state/command.ts';
import type { ExportKind } from '../state/sitting.ts';
import { noPapers } from './papersState.ts';

/*
 * Commands of documents, exports and imports.
 */

const unlessAsked = (state: AppState) => state.question === null;

export const papersCommands = {
  'show-documents': viewCommand({
    label: 'showDocuments',
    shortcuts: ['Mod+P'],
    isEnabled: unlessAsked,
    run: () => ({ papers: { shown: 'documents' } }),
  }),

  'close-papers': viewCommand({
    label: 'closePapers',
    isEnabled: (state) => state.papers.shown !== 'nothing',
    run: () => ({ papers: noPapers }),
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
