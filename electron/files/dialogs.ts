import { type BrowserWindow, dialog } from 'electron';
import { shellWords } from '../../engine/messages/index.ts';
import { exportKindOf } from './exports.ts';

const filters = [
  { name: shellWords.ourFiles, extensions: ['json'] },
  { name: shellWords.allFiles, extensions: ['*'] },
];

/** Asks which file to open; undefined when the user chose none. */
export async function askWhatToOpen(window: BrowserWindow): Promise<string | undefined> {
  const { filePaths, canceled } = await dialog.showOpenDialog(window, { filters, properties: ['openFile'] });
  return canceled ? undefined : filePaths[0];
}

/** Asks where to put something that was made of a document; undefined when the user chose no place. */
export async function askWhereToExport(window: BrowserWindow, proposedName: string): Promise<string | undefined> {
  const kind = exportKindOf(proposedName);
  const { filePath, canceled } = await dialog.showSaveDialog(window, {
    filters: kind === null ? [] : [{ name: shellWords.exports[kind], extensions: [kind] }],
    defaultPath: proposedName,
    properties: ['showOverwriteConfirmation'],
  });
  return canceled ? undefined : filePath;
}

/** Asks where to save; undefined when the user chose no place. The system itself asks before an existing file is replaced. */
export async function askWhereToSave(window: BrowserWindow, proposedName: string): Promise<string | undefined> {
  const { filePath, canceled } = await dialog.showSaveDialog(window, {
    filters,
    defaultPath: proposedName,
    properties: ['showOverwriteConfirmation'],
  });
  return canceled ? undefined : filePath;
}

/** Asks which list to import. */
export async function askWhichList(window: BrowserWindow): Promise<string | undefined> {
  const lists = [{ name: shellWords.lists, extensions: ['csv', 'txt', 'tsv', 'graphml', 'xml'] }, ...filters.slice(1)];
  const { filePaths, canceled } = await dialog.showOpenDialog(window, { filters: lists, properties: ['openFile'] });
  return canceled ? undefined : filePaths[0];
}

/** Asks which results of exercises to look at, or which folder holds them. */
export async function askWhichResults(window: BrowserWindow, from: 'files' | 'folder'): Promise<readonly string[] | undefined> {
  const { filePaths, canceled } = await dialog.showOpenDialog(
    window,
    from === 'folder' ? { properties: ['openDirectory'] } : { filters, properties: ['openFile', 'multiSelections'] },
  );
  return canceled ? undefined : filePaths;
}
