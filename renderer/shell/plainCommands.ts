import { type Workspace, workspaces } from '../draw/drawState.ts';
import { findDesktop } from '../files/desktopBridge.ts';
import { fileSections } from '../files/fileSections.ts';
import type { CommandArgs, CommandId } from '../state/commands.ts';

/*
 * The menus as data: every command that needs no arguments, as menus, context menus and the list of all commands have them. A test
 * holds this table against all commands of the window.
 */

/** A command that can be run without arguments. */
export type PlainCommand = { [K in CommandId]: undefined extends CommandArgs<K> ? K : never }[CommandId];

type Sections = readonly (readonly PlainCommand[])[];

export const editItems = ['cut', 'copy', 'paste', 'duplicate', 'remove-chosen'] as const satisfies readonly PlainCommand[];
export const chooseItems = [
  'choose-all',
  'choose-none',
  'choose-chain',
  'choose-upstream',
  'choose-downstream',
] as const satisfies readonly PlainCommand[];
export const buildItems = [
  'insert-servo',
  'insert-spindle',
  'insert-encoder',
  'insert-supply',
  'insert-cable',
  'new-chain',
] as const satisfies readonly PlainCommand[];
export const moveItems = [
  'move-back',
  'move-on',
  'take-off-chain',
  'move-up',
  'move-down',
  'connect-to',
  'edit-chosen',
] as const satisfies readonly PlainCommand[];
export const lookItems = [
  'toggle-draw-view',
  'toggle-arrangement',
  'toggle-feedback',
  'choose-columns',
] as const satisfies readonly PlainCommand[];

/** What a page in a browser cannot do, or what the browser itself does with its own keys. */
const desktopOnly = ['close-window', 'quit', 'text-larger', 'text-smaller', 'text-normal'] as const satisfies readonly PlainCommand[];
/** Whether a command can be had where the program runs. */
export const isOffered = (id: CommandId, onDesktop = findDesktop() !== null) =>
  onDesktop || !(desktopOnly as readonly CommandId[]).includes(id);

const inAll = {
  file: fileSections,
  cabinet: [
    ['equipment-types', 'toggle-sums', 'repair-table', 'fault-rates', 'confirmed-cases'],
    ['compare-saved', 'compare-file', 'ask-new-machine'],
  ],
  workspaces: [['go-draw', 'go-find', 'go-practice']],
  view: [
    ['zoom-in', 'zoom-out', 'zoom-to-fit'],
    ['text-larger', 'text-smaller', 'text-normal', 'full-screen'],
    ['toggle-fold-chains', 'toggle-reduce-motion'],
  ],
  practice: [
    ['practice-exercises', 'practice-next', 'practice-projector'],
    ['practice-make', 'practice-generate', 'practice-class'],
  ],
  help: [['help', 'show-shortcuts', 'palette'], ['about']],
} as const satisfies Record<string, Sections>;

const inDraw = {
  edit: [['undo', 'redo'], [...editItems, 'paste-rows'], chooseItems, ['find-thing']],
  cabinet: [buildItems, moveItems],
  view: [lookItems],
} as const satisfies Record<string, Sections>;

const inFind = {
  edit: [
    ['undo', 'redo'],
    ['walk-displays', 'enter-next-report', 'open-check', 'toggle-walk-order', 'enter-restart', 'enter-stop'],
    ['next-step', 'toggle-all-candidates', 'hand-back'],
    ['toggle-inject', 'next-hop', 'previous-hop', 'next-stop', 'clear-faults', 'ask-take-pattern'],
  ],
} as const satisfies Record<string, Sections>;

type InMenus<M extends Record<string, Sections>> = M[keyof M][number][number];
/** A command that stands in a menu. */
export type MenuCommand = InMenus<typeof inAll> | InMenus<typeof inDraw> | InMenus<typeof inFind>;

export const menuNames = ['file', 'edit', 'cabinet', 'view', 'practice', 'help'] as const;
export type MenuName = (typeof menuNames)[number];

/** What a menu holds in a workspace, line by line; nothing that cannot be had where the program runs. */
export function menuSections(
  menu: MenuName,
  workspace: Workspace,
  onDesktop = findDesktop() !== null,
): readonly (readonly MenuCommand[])[] {
  const drawing = workspace === 'draw';
  const all: Record<MenuName, readonly (readonly MenuCommand[])[]> = {
    file: inAll.file,
    edit: drawing ? inDraw.edit : inFind.edit,
    cabinet: [...(drawing ? inDraw.cabinet : []), ...inAll.cabinet],
    view: [...inAll.workspaces, ...(drawing ? inDraw.view : []), ...inAll.view],
    practice: inAll.practice,
    help: inAll.help,
  };
  return all[menu].map((section) => section.filter((id) => isOffered(id, onDesktop))).filter((section) => section.length > 0);
}

/** All of them, in the order of the menus. */
export function listMenuCommands(onDesktop = findDesktop() !== null): readonly MenuCommand[] {
  return [...new Set(menuNames.flatMap((menu) => workspaces.flatMap((workspace) => menuSections(menu, workspace, onDesktop).flat())))];
}
