import type { FileMenuCommand } from '../files/FileMenu.tsx';
import type { CommandId } from '../state/commands.ts';

/*
 * The commands that need no arguments, as menus, context menus and the list of all commands have them.
 */

const fileItems = [
  'new-cabinet',
  'new-case',
  'open-file',
  'open-kept-copy',
  'save',
  'save-case-as',
  'save-cabinet-as',
  'show-documents',
  'import-list',
  'revert',
] as const satisfies readonly FileMenuCommand[];

export const editItems = ['cut', 'copy', 'paste', 'duplicate', 'remove-chosen'] as const satisfies readonly CommandId[];
export const chooseItems = [
  'choose-all',
  'choose-none',
  'choose-chain',
  'choose-upstream',
  'choose-downstream',
] as const satisfies readonly CommandId[];
export const buildItems = [
  'insert-servo',
  'insert-spindle',
  'insert-encoder',
  'insert-supply',
  'new-chain',
] as const satisfies readonly CommandId[];
export const moveItems = [
  'move-back',
  'move-on',
  'take-off-chain',
  'move-up',
  'move-down',
  'connect-to',
  'edit-chosen',
] as const satisfies readonly CommandId[];
export const lookItems = ['toggle-draw-view', 'toggle-arrangement', 'toggle-feedback'] as const satisfies readonly CommandId[];

export const practiceItems = [
  'practice-exercises',
  'practice-next',
  'practice-projector',
  'practice-make',
  'practice-generate',
  'practice-class',
] as const satisfies readonly CommandId[];

/** All of them, in the order of the menus. */
export const plainCommands = [
  ...fileItems,
  'undo',
  'redo',
  ...editItems,
  'paste-rows',
  ...chooseItems,
  'find-thing',
  'palette',
  'walk-displays',
  'enter-next-report',
  'toggle-walk-order',
  'enter-restart',
  'toggle-inject',
  'ask-take-pattern',
  ...buildItems,
  ...moveItems,
  'equipment-types',
  'toggle-sums',
  'hand-back',
  'repair-table',
  'compare-saved',
  'compare-file',
  'ask-new-machine',
  'go-draw',
  'go-find',
  'go-practice',
  ...practiceItems,
  ...lookItems,
  'zoom-in',
  'zoom-out',
  'zoom-to-fit',
  'toggle-fold-chains',
  'toggle-reduce-motion',
] as const satisfies readonly CommandId[];
export type PlainCommand = (typeof plainCommands)[number];
