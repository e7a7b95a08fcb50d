import type { Workspace } from '../draw/drawState.ts';
import { type CommandId, commands } from '../state/commands.ts';
import type { Workbench } from '../state/dispatcher.ts';
import { isOffered } from './plainCommands.ts';

/** Whether the command key takes the place of Ctrl. */
function isMac(): boolean {
  return typeof navigator !== 'undefined' && /mac/i.test(navigator.platform);
}

interface Shortcut {
  readonly keys: string;
  readonly id: CommandId;
  /** Where alone it is heard. */
  readonly workspace: Workspace | null;
  /** The browser's own event runs it. */
  readonly byEvent: boolean;
}

/** Every key with the command it runs. Two commands on one key of one workspace are a mistake that a test finds. */
export function listShortcuts(): readonly Shortcut[] {
  // Object.keys is typed as string[]; these are the command ids.
  return (Object.keys(commands) as CommandId[])
    .filter((id) => isOffered(id))
    .flatMap((id) => {
      const command: { readonly keysIn?: Workspace; readonly byEvent?: true } = commands[id];
      return shortcutsOf(id).map((keys) => ({ keys, id, workspace: command.keysIn ?? null, byEvent: command.byEvent ?? false }));
    });
}

export function shortcutsOf(id: CommandId): readonly string[] {
  const command: { readonly shortcuts?: readonly string[] } = commands[id];
  return command.shortcuts ?? [];
}

/** The keys as they stand on this keyboard: "Ctrl+Z", on a Mac "⌘Z". */
export function wordKeys(keys: string): string {
  const short = keys.replace('ArrowLeft', '←').replace('ArrowRight', '→').replace('ArrowUp', '↑').replace('ArrowDown', '↓');
  if (!isMac()) return short.replace('Mod', 'Ctrl');
  return short.replace('Mod+', '⌘').replace('Shift+', '⇧').replace('Alt+', '⌥');
}

function matches(event: KeyboardEvent, keys: string): boolean {
  const parts = keys.split('+');
  const key = keys.endsWith('+') ? '+' : (parts[parts.length - 1] ?? '');
  const mod = isMac() ? event.metaKey : event.ctrlKey;
  if (parts.includes('Mod') !== mod || parts.includes('Shift') !== event.shiftKey || parts.includes('Alt') !== event.altKey) return false;
  // Digits by their place on the keyboard: with Shift they would be read as another sign.
  return event.key.toLowerCase() === key.toLowerCase() || event.code === `Digit${key}`;
}

/** Whether a letter goes into what has the focus; a choice that is ticked takes none. */
function isTyping(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement && ['radio', 'checkbox'].includes(target.type)) return false;
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}

/** A key that is pressed alone, or with Shift. */
function isBareKey(keys: string): boolean {
  return !keys.startsWith('Mod') && !keys.startsWith('Alt');
}

/** Whether the focus is on the drawing, its lists or the shelf, or on nothing: there alone letters build, and Delete takes out. */
function isOnDrawing(target: EventTarget | null): boolean {
  return target === document.body || (target instanceof Element && target.closest('#cabinet, #shelf') !== null);
}

/** Listens for the keys of commands that need nothing else. Returns how to stop. */
export function listenForShortcuts({ store, dispatch }: Pick<Workbench, 'store' | 'dispatch'>): () => void {
  const listen = (event: KeyboardEvent) => {
    // A question is answered first.
    if (event.defaultPrevented || store.getState().question) return;
    // In a list that is narrowed by typing letters are letters, and the keys of the cabinet are not meant.
    if (store.getState().draw.dialog !== null) return;
    const { workspace: shown } = store.getState();
    const found = listShortcuts().find(
      ({ keys, workspace, byEvent }) => !byEvent && (workspace ?? shown) === shown && matches(event, keys),
    );
    if (found?.workspace === 'draw' && isBareKey(found.keys) && !isOnDrawing(event.target)) return;
    if (!found || (isTyping(event.target) && !found.keys.startsWith('Mod'))) return;
    // Undo in a text field is the field's own.
    if (isTyping(event.target) && (found.id === 'undo' || found.id === 'redo')) return;
    if (store.getState().entry && !found.keys.startsWith('Mod')) return;
    event.preventDefault();
    // Only commands without arguments have keys.
    dispatch(found.id as 'undo');
  };
  window.addEventListener('keydown', listen);
  return () => window.removeEventListener('keydown', listen);
}
