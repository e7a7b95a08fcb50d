import type { ListTable } from '../edit/inspected.ts';
import type { AppState } from '../state/appState.ts';
import { effectCommand, viewCommand } from '../state/command.ts';
import { usualKeys } from './listColumns.ts';

/** The button that opens the columns of the list that is shown. */
export const columnsButtonId = 'list-columns';

const inLists = (state: AppState) =>
  state.workspace === 'draw' && state.draw.view === 'lists' && state.question === null && !state.sums.shown;

export const listCommands = {
  'choose-columns': effectCommand({
    label: 'chooseColumns',
    shortcuts: ['Mod+Shift+L'],
    keysIn: 'draw',
    isEnabled: inLists,
    run: () => document.getElementById(columnsButtonId)?.click(),
  }),

  'show-columns': viewCommand<{ readonly table: ListTable; readonly keys: readonly string[] }>({
    label: 'chooseColumns',
    isEnabled: inLists,
    run: ({ listColumns }, { table, keys }) => {
      const usual = usualKeys(table);
      const { [table]: _before, ...others } = listColumns;
      // What is usual is not kept, so that it may change with the program.
      const same = keys.length === usual.length && usual.every((key) => keys.includes(key));
      return { listColumns: same ? others : { ...others, [table]: keys } };
    },
  }),
} as const;
