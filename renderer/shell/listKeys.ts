import { drawWords, entryWords, windowTexts } from '../../engine/messages/index.ts';
import type { Workspace } from '../draw/drawState.ts';
import { commands } from '../state/commands.ts';
import { listShortcuts, shortcutsOf, wordKeys } from './shortcuts.ts';

type Keys = readonly (readonly [key: string, what: string])[];

/** All keys by where they are heard, from the same table that listens for them. */
export function listKeys(): readonly { readonly head: string; readonly keys: Keys }[] {
  const words = windowTexts.shortcuts;
  const { keys } = entryWords;
  const keysOf = (where: Workspace | null): Keys =>
    [...new Set(listShortcuts().flatMap(({ id, workspace }) => (workspace === where ? [id] : [])))].map((id) => [
      shortcutsOf(id).map(wordKeys).join(', '),
      windowTexts.commands[commands[id].label],
    ]);
  return [
    {
      head: words.inCabinet,
      keys: [
        ['1 – 6', words.digits],
        ['0', words.zero],
        ['7', words.seven],
        ['8', words.eight],
        ['← → ↑ ↓', words.arrows],
        ['Enter', words.enter],
        ['R', words.report],
        ['Esc', words.escape],
      ],
    },
    {
      head: keys.head,
      keys: [
        [keys.letters.digits, keys.digits],
        ['0', keys.skip],
        [keys.letters.back, keys.back],
        [keys.letters.takeBack, keys.takeBack],
        ['/', keys.order],
        ['+', keys.report],
        [keys.letters.code, keys.code],
        [keys.letters.group, keys.group],
        ['–', keys.next],
        [keys.letters.none, keys.none],
        ['↑ ↓', keys.chains],
      ],
    },
    { head: words.everywhere, keys: [...keysOf(null), ['F6', words.regions]] },
    { head: words.inFind, keys: keysOf('find') },
    { head: words.inPractice, keys: keysOf('practice') },
    { head: words.inDraw, keys: [...keysOf('draw'), ...drawWords.keys] },
  ];
}
