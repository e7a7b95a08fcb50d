import { repairTableWords } from '../../engine/messages/index.ts';
import { editTable, type TableEdit } from '../../engine/repair/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { writeCabinet } from '../state/writeCabinet.ts';

/*
 * Commands of the repair table. Each changed figure is a step of the document.
 */

export const repairCommands = {
  'repair-table': viewCommand({
    label: 'repairTable',
    isEnabled: (state: AppState) => state.question === null && !state.inject.on,
    run: () => ({ repairTableShown: true, entry: null }),
  }),

  'close-repair-table': viewCommand({
    label: 'closeRepairTable',
    isEnabled: (state) => state.repairTableShown,
    run: () => ({ repairTableShown: false }),
  }),

  'edit-repair-table': documentCommand<{ readonly edit: TableEdit; readonly what: string }>({
    label: 'editRepairTable',
    isEnabled: (state) => !state.inject.on,
    undo: 'step',
    name: (_state, { what }) => repairTableWords.written(what),
    run: (draft, { edit }, before) => writeCabinet(draft.cabinet, before.cabinet, editTable(before.cabinet, edit)),
  }),
} as const;
