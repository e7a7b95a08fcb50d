import { type HelpTopic, helpTopics } from '../../engine/messages/index.ts';
import { findDesktop } from '../files/desktopBridge.ts';
import { effectCommand, viewCommand } from '../state/command.ts';

/*
 * Commands about the window itself. What the desktop program alone can do is not offered in a browser.
 */

const onDesktop = () => findDesktop() !== null;
const always = () => true;

export const shellCommands = {
  // The runtime's own menu hears these keys. Unsaved work is asked about by whoever closes the window.
  'close-window': {
    ...effectCommand({ label: 'closeWindow', shortcuts: ['Mod+W'], isEnabled: onDesktop, run: () => window.close() }),
    byEvent: true,
  },
  quit: { ...effectCommand({ label: 'quit', shortcuts: ['Mod+Q'], isEnabled: onDesktop, run: () => window.close() }), byEvent: true },

  'text-larger': effectCommand({ label: 'textLarger', isEnabled: onDesktop, run: () => changeTextSize('larger') }),
  'text-smaller': effectCommand({ label: 'textSmaller', isEnabled: onDesktop, run: () => changeTextSize('smaller') }),
  'text-normal': effectCommand({ label: 'textNormal', isEnabled: onDesktop, run: () => changeTextSize('normal') }),

  'full-screen': effectCommand({
    label: 'fullScreen',
    shortcuts: ['F11'],
    isEnabled: always,
    // A browser that refuses it stays as it is.
    run: () =>
      (document.fullscreenElement ? document.exitFullscreen() : document.documentElement.requestFullscreen()).catch(() => undefined),
  }),

  help: viewCommand<{ readonly topic: HelpTopic | null } | undefined>({
    label: 'help',
    shortcuts: ['F1'],
    isEnabled: always,
    run: (_state, args) => ({ help: args === undefined ? helpTopics[0] : args.topic }),
  }),

  'show-shortcuts': viewCommand({ label: 'showShortcuts', isEnabled: always, run: () => ({ help: 'keys' }) }),

  about: viewCommand<{ readonly shown: boolean } | undefined>({
    label: 'about',
    isEnabled: always,
    run: (_state, args) => ({ aboutShown: args?.shown ?? true }),
  }),
} as const;

async function changeTextSize(change: 'larger' | 'smaller' | 'normal'): Promise<void> {
  await findDesktop()?.changeTextSize(change);
}
