import { editRate, type RateEdit } from '../../engine/diagnosis/index.ts';
import { rateTableWords } from '../../engine/messages/index.ts';
import type { AppState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { writeCabinet } from '../state/writeCabinet.ts';

/*
 * Commands of the fault rates. Each changed figure is a step of the document.
 */

export const ratesCommands = {
  'fault-rates': viewCommand({
    label: 'faultRates',
    keywords: rateTableWords.keywords,
    isEnabled: (state: AppState) => state.question === null && !state.inject.on,
    run: () => ({ ratesShown: true, entry: null }),
  }),

  'close-fault-rates': viewCommand({
    label: 'closeFaultRates',
    isEnabled: (state) => state.ratesShown,
    run: () => ({ ratesShown: false }),
  }),

  'edit-rate': documentCommand<{ readonly edit: RateEdit; readonly what: string }>({
    label: 'editRate',
    isEnabled: (state) => !state.inject.on,
    undo: 'step',
    name: (_state, { what }) => rateTableWords.written(what),
    run: (draft, { edit }, before) => writeCabinet(draft.cabinet, before.cabinet, editRate(before.cabinet, edit)),
  }),
} as const;
