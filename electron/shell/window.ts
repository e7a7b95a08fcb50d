import { BrowserWindow, nativeTheme } from 'electron';
import { leastSize, type WindowPlace } from '../settings/windowPlace.ts';

/** The plate colour of the look, so that the window does not flash before the page paints. */
const plate = { light: '#D5DBD7', dark: '#0B1012' };

/** Makes the program's window, without loading anything. It shows itself once its first page has painted. */
export function openWindow(options: { readonly preload: string; readonly place: WindowPlace }): BrowserWindow {
  const window = new BrowserWindow({
    ...options.place.bounds,
    minWidth: leastSize.width,
    minHeight: leastSize.height,
    show: false,
    title: 'Linkwright',
    backgroundColor: nativeTheme.shouldUseDarkColors ? plate.dark : plate.light,
    webPreferences: {
      preload: options.preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
    },
  });
  // The page has a menu of its own; the runtime's stays for its keys (and at the top of the screen where that is the custom).
  window.setMenuBarVisibility(false);
  window.once('ready-to-show', () => {
    if (options.place.maximized) window.maximize();
    window.show();
  });
  return window;
}
