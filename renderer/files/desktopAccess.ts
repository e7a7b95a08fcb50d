import { ok, type Result } from '../../engine/base/index.ts';
import type { FileAccess, TakenFile } from './access.ts';
import type { DesktopBridge } from './desktopBridge.ts';

/** Files through the desktop program. */
export function makeDesktopAccess(desktop: DesktopBridge): FileAccess {
  return {
    means: 'desktop',
    chooseFile: () => desktop.chooseFile(),
    async takeDropped(item) {
      // Its path stays unknown on purpose: no call from the page takes one. So it comes in as a copy.
      return ok({ handle: null, ...(await readDropped(item)) });
    },
    save: (file, content) => desktop.saveFile(file.handle, content),
    saveAs: (proposedName, content) => desktop.saveFileAs(proposedName, content),
    exportFile: (proposedName, content) => desktop.exportFile(proposedName, content),
    chooseList: () => desktop.chooseList(),
    chooseJsonFiles: (from) => desktop.chooseJsonFiles(from),
    deleteResult: (file) => desktop.deleteResult(file.handle),
    readAgain: (file) => desktop.readFileAgain(file.handle),
    peek: (file) => desktop.peekFile(file.handle),
    look: (file) => desktop.lookAtFile(file.handle),
    keepMine: (file) => desktop.keepMine(file.handle),
    readKeptCopy: (file) => desktop.readKeptCopy(file.handle),
    findCabinetBeside: (file, cabinetId) => desktop.findCabinetBeside(file.handle, cabinetId),
    listRecent: () => desktop.listRecentFiles(),
    openRecent: (key) => desktop.openRecentFile(key),
    keepRecovery: (id, files, document) =>
      desktop.keepRecovery(id, { case: files.case?.handle ?? null, cabinet: files.cabinet?.handle ?? null }, document),
    dropRecovery: (id) => desktop.dropRecovery(id),
    listRecoveries: () => desktop.listRecoveries(),
    keepCase: (id, content) => desktop.keepCase(id, content),
    listKeptCases: () => desktop.listKeptCases(),
    dropKeptCase: (key) => desktop.dropKeptCase(key),
    takeHandedOver: async () => valueOr(await desktop.takeHandedOverFiles(), []),
    takeNotices: async () => valueOr(await desktop.takeNotices(), []),
    tellUnsaved: (unsaved) => void desktop.tellUnsaved(unsaved),
    onHandedOver: (listener) => void desktop.onFilesHandedOver(listener),
    onCloseAsked: (listener) => void desktop.onCloseAsked(listener),
    answerClose: (word) => void desktop.answerClose(word),
  };
}

/** Name and content of a dropped file; a folder has neither, and reads as an empty file. */
export async function readDropped(item: DataTransferItem): Promise<Omit<TakenFile, 'handle'>> {
  const file = item.getAsFile();
  const bytes = file ? await file.arrayBuffer().catch(() => new ArrayBuffer(0)) : new ArrayBuffer(0);
  return {
    key: '',
    name: file?.name ?? '',
    modifiedAt: new Date(file?.lastModified ?? 0).toISOString(),
    content: new Uint8Array(bytes),
  };
}

function valueOr<T>(result: Result<T>, otherwise: T): T {
  return result.ok ? result.value : otherwise;
}
