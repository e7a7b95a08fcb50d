import { describe, expect, it } from 'vitest';
import { windowTexts } from '../../engine/messages/index.ts';
import { workspaces } from '../../renderer/draw/drawState.ts';
import { listMenuCommands, type MenuCommand, menuNames, menuSections, type PlainCommand } from '../../renderer/shell/plainCommands.ts';
import { shortcutsOf } from '../../renderer/shell/shortcuts.ts';
import { type CommandId, commands } from '../../renderer/state/commands.ts';

/** Commands without arguments that stand in no menu, each with what offers it. A new one does not compile until it is in either. */
const outside = {
  'add-chain': 'done by "new chain"',
  'lay-cable': 'done by "a loose cable"',
  'cancel-report': 'a button beside the progress',
  'close-comparison': 'closes what is open',
  'close-confirmed': 'closes what is open',
  'close-draw-dialog': 'closes what is open',
  'close-entry': 'closes what is open',
  'close-equipment': 'closes what is open',
  'close-hand-back': 'closes what is open',
  'close-injection': 'closes what is open',
  'close-papers': 'closes what is open',
  'close-refusal': 'closes what is open',
  'close-refused': 'closes what is open',
  'close-repair-table': 'closes what is open',
  'close-fault-rates': 'closes what is open',
  'close-take-pattern': 'closes what is open',
  'drop-machines': 'a button of the documents',
  'end-inject': 'closes what is open; the menu has "simulate a fault"',
  'list-recent': 'done by the menu when it opens',
  'load-outside': 'a button of the alert',
  'keep-case': 'a button of the hand-back',
  'open-refused-kept': 'a button of the message',
  'put-back-kept': 'a button of the confirmed cases',
  'toggle-take-confirmed': 'a box of the confirmed cases',
} as const satisfies Record<Exclude<PlainCommand, MenuCommand>, string>;

const ids = Object.keys(commands) as CommandId[]; // exactly the command ids

describe('the menus', () => {
  it('should hold every command that has keys, with the keys that run it', () => {
    const inMenus: readonly CommandId[] = listMenuCommands(true);
    const without = ids.filter((id) => shortcutsOf(id).length > 0 && !inMenus.includes(id) && !Object.hasOwn(outside, id));
    expect(without).toEqual([]);
  });

  it('should hold no line twice, and each with its own words', () => {
    for (const workspace of workspaces) {
      for (const menu of menuNames) {
        const lines = menuSections(menu, workspace, true).flat();
        expect(new Set(lines).size).toBe(lines.length);
        const words = lines.map((id) => windowTexts.commands[commands[id].label]);
        expect(new Set(words).size).toBe(words.length);
      }
    }
  });

  it('should keep what a browser does itself for the desktop program', () => {
    const onlyThere = listMenuCommands(true).filter((id) => !listMenuCommands(false).includes(id));
    expect(onlyThere).toEqual(['close-window', 'quit', 'text-larger', 'text-smaller', 'text-normal']);
    expect(listMenuCommands(false)).toEqual(expect.arrayContaining(['full-screen', 'palette', 'show-shortcuts', 'about']));
  });

  it('should tell keys of a workspace in that workspace', () => {
    for (const workspace of workspaces) {
      const shown: readonly CommandId[] = menuNames.flatMap((menu) => menuSections(menu, workspace, true).flat());
      const missing = ids.filter((id) => {
        const { keysIn }: { readonly keysIn?: string } = commands[id];
        return keysIn === workspace && shortcutsOf(id).length > 0 && !shown.includes(id) && !Object.hasOwn(outside, id);
      });
      expect({ workspace, missing }).toEqual({ workspace, missing: [] });
    }
  });
});
