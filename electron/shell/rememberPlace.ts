import { type BrowserWindow, screen } from 'electron';
import { placeWindow, type Rectangle, type WindowPlace } from '../settings/windowPlace.ts';

/** A drag of the window is over when nothing came for so long. */
const settledAfterMilliseconds = 400;

/** Where to open the window on today's screens. */
export function findPlace(saved: WindowPlace | undefined): WindowPlace {
  const first = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== first.id);
  const areas: [Rectangle, ...Rectangle[]] = [first.workArea, ...others.map((display) => display.workArea)];
  return placeWindow(saved, areas);
}

/** Saves the window's place soon after each change, because the end of a program is not always announced. */
export function rememberPlace(window: BrowserWindow, save: (place: WindowPlace) => void): void {
  let timer: NodeJS.Timeout | undefined;
  const saveNow = () => {
    clearTimeout(timer);
    timer = undefined;
    // Without its full-screen and maximized states, so that leaving them finds the old place.
    if (!window.isDestroyed() && !window.isMinimized()) save({ bounds: window.getNormalBounds(), maximized: window.isMaximized() });
  };
  const saveSoon = () => {
    clearTimeout(timer);
    timer = setTimeout(saveNow, settledAfterMilliseconds);
  };
  window.on('resize', saveSoon).on('move', saveSoon).on('maximize', saveSoon).on('unmaximize', saveSoon);
  window.on('close', () => {
    if (timer) saveNow();
  });
  window.on('closed', () => clearTimeout(timer));
}
