import { existsSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { ipcMain } from 'electron';
import Store from 'electron-store';
import { z } from 'zod';
import { makeProblem, type Problem } from '../../engine/base/index.ts';
import { findErrorCode } from '../files/errorCode.ts';
import type { RememberedFile } from '../files/recentFiles.ts';
import type { WindowPlace } from './windowPlace.ts';

const coordinate = z.number().min(-1_000_000).max(1_000_000);
const size = z.number().min(1).max(1_000_000);

/** The settings file, version 1. A later version gets a number of its own; what is older or newer than this is set aside. */
const settingsShape = z.strictObject({
  version: z.literal(1),
  window: z
    .strictObject({ bounds: z.strictObject({ x: coordinate, y: coordinate, width: size, height: size }), maximized: z.boolean() })
    .optional(),
  recent: z
    .array(z.strictObject({ path: z.string().min(1).max(40_000), openedAt: z.string().max(40) }))
    .max(50)
    .optional(),
});
type SettingsContent = z.infer<typeof settingsShape>;

const fileName = 'settings';

/** What the desktop program remembers between two runs, besides the user's files. */
export class Settings {
  readonly #store: Store<SettingsContent> | undefined;

  private constructor(store: Store<SettingsContent> | undefined) {
    this.#store = store;
  }

  /**
   * Opens the settings in `folder`. A file that cannot be understood is set aside under another name, never lost, and the defaults are
   * used; where the folder cannot be written, nothing is kept. Either is told by `problem`. Never fails: settings are no reason not to
   * start.
   */
  static open(folder: string): { readonly settings: Settings; readonly problem?: Problem } {
    try {
      const aside = setAsideDamaged(folder);
      const settings = new Settings(openStore(folder));
      if (aside === undefined) return { settings };
      return { settings, problem: makeProblem('settings-set-aside', 'warning', { facts: { file: aside } }) };
    } catch (error) {
      console.error('the settings cannot be kept', error);
      const problem = makeProblem('settings-not-kept', 'warning', { facts: { reason: findErrorCode(error) } });
      return { settings: new Settings(undefined), problem };
    }
  }

  get window(): WindowPlace | undefined {
    return this.#store?.get('window');
  }

  set window(place: WindowPlace) {
    try {
      this.#store?.set('window', { bounds: { ...place.bounds }, maximized: place.maximized });
    } catch (error) {
      // A place that is forgotten is no reason to disturb anybody.
      console.error('the place of the window was not kept', error);
    }
  }

  /** The files opened and saved last, the newest first. */
  get recent(): readonly RememberedFile[] {
    return this.#store?.get('recent') ?? [];
  }

  set recent(files: readonly RememberedFile[]) {
    try {
      this.#store?.set('recent', [...files]);
    } catch (error) {
      console.error('the recent files were not kept', error);
    }
  }
}

function openStore(folder: string): Store<SettingsContent> {
  const store = new Store<SettingsContent>({ name: fileName, cwd: folder, defaults: { version: 1 } });
  // The package answers any page that asks for the settings folder; none of ours has a reason to.
  ipcMain.removeAllListeners('electron-store-get-data');
  return store;
}

/** Renames a file that cannot be understood, and answers its new name. Done before the package sees it, which would write into it. */
function setAsideDamaged(folder: string): string | undefined {
  const file = join(folder, `${fileName}.json`);
  if (!existsSync(file) || isSound(readFileSync(file, 'utf8'))) return undefined;
  const aside = findFreeName(folder);
  renameSync(file, join(folder, aside));
  return aside;
}

function isSound(text: string): boolean {
  try {
    return settingsShape.safeParse(JSON.parse(text)).success;
  } catch {
    return false;
  }
}

function findFreeName(folder: string): string {
  for (let number = 1; ; number += 1) {
    const name = `${fileName}.damaged-${number}.json`;
    if (!existsSync(join(folder, name))) return name;
  }
}
