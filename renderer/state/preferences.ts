import { leastStrength, mostStrength, usualStrength } from '../../engine/experience/index.ts';
import { emptyLibrary, readLibrary, writeLibrary } from '../legend/library.ts';
import { type ChosenColumns, listTables } from '../lists/listColumns.ts';
import { type PreferenceState, themeChoices } from './appState.ts';

const storageKey = 'linkwright.preferences';
const version = 1;

export const defaultPreferences: PreferenceState = {
  theme: 'system',
  foldChains: false,
  reduceMotion: false,
  walkOrder: 'chain',
  takeConfirmed: true,
  confirmedStrength: usualStrength,
  library: emptyLibrary,
  listColumns: {},
};

/** Reads the stored preferences; whatever cannot be used has its default. */
export function readPreferences(storage: Pick<Storage, 'getItem'> | null): PreferenceState {
  const library = readLibrary(storage);
  try {
    const stored: unknown = JSON.parse(storage?.getItem(storageKey) ?? 'null');
    if (!isRecord(stored) || stored['version'] !== version) return { ...defaultPreferences, library };
    const theme = themeChoices.find((choice) => choice === stored['theme']) ?? defaultPreferences.theme;
    const flag = (key: 'foldChains' | 'reduceMotion' | 'takeConfirmed') => {
      const value = stored[key];
      return typeof value === 'boolean' ? value : defaultPreferences[key];
    };
    const walkOrder = stored['walkOrder'] === 'mounting' ? 'mounting' : 'chain';
    return {
      theme,
      foldChains: flag('foldChains'),
      reduceMotion: flag('reduceMotion'),
      walkOrder,
      takeConfirmed: flag('takeConfirmed'),
      confirmedStrength: readStrength(stored['confirmedStrength']),
      library,
      listColumns: readColumns(stored['listColumns']),
    };
  } catch {
    return { ...defaultPreferences, library };
  }
}

/** Keeps them for the next sitting. Where the browser keeps nothing, they last until the window is closed. */
export function writePreferences(storage: Pick<Storage, 'setItem'> | null, preferences: PreferenceState): void {
  const { theme, foldChains, reduceMotion, walkOrder, takeConfirmed, confirmedStrength, library, listColumns } = preferences;
  writeLibrary(storage, library);
  try {
    const stored = { version, theme, foldChains, reduceMotion, walkOrder, takeConfirmed, confirmedStrength, listColumns };
    storage?.setItem(storageKey, JSON.stringify(stored));
  } catch {
    // Storage is full or forbidden: preferences are a comfort, never worth an error.
  }
}

/** The page's storage; null where the browser forbids it. */
export function findStorage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

function readStrength(stored: unknown): number {
  return typeof stored === 'number' && stored >= leastStrength && stored <= mostStrength ? stored : usualStrength;
}

/** Columns that somebody chose; those that no table has are not shown anyway. */
function readColumns(stored: unknown): ChosenColumns {
  if (!isRecord(stored)) return {};
  const sound = listTables.flatMap((table) => {
    const keys = stored[table];
    return Array.isArray(keys) ? [[table, keys.filter((key): key is string => typeof key === 'string').slice(0, mostColumns)]] : [];
  });
  return Object.fromEntries(sound) as ChosenColumns; // the keys are tables
}

const mostColumns = 100;

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
