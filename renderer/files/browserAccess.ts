import { ok, type Result } from '../../engine/base/index.ts';
import type { FileRef } from '../state/sitting.ts';
import type { FileAccess } from './access.ts';
import { dropBrowserCase, keepBrowserCase, listBrowserCases } from './browserCases.ts';
import { handleOf, hasPickers, pickToOpen, pickToSave } from './browserHandles.ts';
import { isChanged, KnownFiles, stampOf } from './browserKnown.ts';
import { chooseJsonFiles, chooseList, exportAsDownload, exportInPlace } from './browserLists.ts';
import { listRemembered } from './browserRecent.ts';
import { keepBrowserRecovery, listBrowserRecoveries } from './browserRecovery.ts';
import { attempt, bytesOf, describe, errorName, mostFileBytes, tooLarge, unreadable } from './browserResults.ts';
import { browserStore } from './browserStore.ts';
import { readDropped } from './desktopAccess.ts';
import { chooseByInput, download } from './downloads.ts';

type KeptInStore =
  | 'listRecent'
  | 'openRecent'
  | 'keepRecovery'
  | 'dropRecovery'
  | 'listRecoveries'
  | 'keepCase'
  | 'listKeptCases'
  | 'dropKeptCase';

/** Files through the browser: in place where it lets us, else as downloads. */
export function makeBrowserAccess(): FileAccess {
  const inPlace = hasPickers();
  const known = new KnownFiles();
  return {
    means: inPlace ? 'browser' : 'download',
    ...openingAndSaving(known, inPlace),
    ...watching(known),
    ...keeping(known, inPlace),
    exportFile: inPlace ? exportInPlace : exportAsDownload,
    chooseList,
    chooseJsonFiles,
    // A page sees no folder, and nothing is handed to it from outside.
    findCabinetBeside: async () => ok(null),
    takeHandedOver: async () => [],
    takeNotices: async () => [],
    tellUnsaved: () => undefined,
    onHandedOver: () => undefined,
    onCloseAsked: () => undefined,
    answerClose: () => undefined,
  };
}

function openingAndSaving(known: KnownFiles, inPlace: boolean): Pick<FileAccess, 'chooseFile' | 'takeDropped' | 'save' | 'saveAs'> {
  return {
    async chooseFile() {
      if (inPlace) {
        const picked = await pickToOpen();
        return picked ? known.take(picked) : ok(null);
      }
      const file = await chooseByInput();
      if (!file) return ok(null);
      if (file.size > mostFileBytes) return tooLarge(file.size);
      return ok({ ...describe(crypto.randomUUID(), '', file), content: await bytesOf(file) });
    },
    async takeDropped(item) {
      const copy = readDropped(item);
      const handle = inPlace ? await handleOf(item) : null;
      if (handle?.kind === 'file') return known.take(handle);
      return ok({ handle: null, ...(await copy) });
    },
    async save(file, content) {
      const target = known.get(file.handle);
      if (!target) return downloaded(file.name, content);
      return attempt('file-not-saved', file.name, () => known.writeAgain(file, target, content));
    },
    async saveAs(proposedName, content) {
      if (!inPlace) return downloaded(proposedName, content);
      return attempt('file-not-saved', proposedName, async () => {
        const picked = await pickToSave(proposedName);
        return picked ? known.writeNew(picked, content) : ok(null);
      });
    },
  };
}

/** What another program, or this one, did to a known file. */
function watching(known: KnownFiles): Pick<FileAccess, 'readAgain' | 'peek' | 'look' | 'keepMine' | 'readKeptCopy'> {
  return {
    async readAgain(file) {
      const target = known.get(file.handle);
      return target ? known.take(target.file) : unreadable(file.name, 'forgotten');
    },
    async peek(file) {
      const target = known.get(file.handle);
      // It gets a handle of its own; the one that is open keeps its stamp.
      return target ? known.take(target.file) : unreadable(file.name, 'forgotten');
    },
    async look(file) {
      const target = known.get(file.handle);
      if (!target) return ok({ state: 'same' });
      try {
        const now = await target.file.getFile();
        return ok(isChanged(target, now) ? { state: 'changed', modifiedAt: new Date(now.lastModified).toISOString() } : { state: 'same' });
      } catch (error) {
        return errorName(error) === 'NotFoundError' ? ok({ state: 'missing' }) : unreadable(file.name, errorName(error));
      }
    },
    async keepMine(file) {
      const target = known.get(file.handle);
      const now = await target?.file.getFile().catch(() => null);
      if (target && now) target.stamp = stampOf(now);
      return ok(null);
    },
    readKeptCopy: (file) =>
      attempt('file-unreadable', file.name, async () => {
        const copy = await browserStore.get('copies', file.key);
        return isKeptCopy(copy) ? ok(copy) : unreadable(file.name, 'ENOENT');
      }),
  };
}

/** What a page keeps in its own store: recent files, unsaved work, confirmed cases. */
function keeping(known: KnownFiles, inPlace: boolean): Pick<FileAccess, KeptInStore> {
  return {
    listRecent: async () => {
      const all = inPlace ? await listRemembered() : [];
      return ok(all.map(({ key, name, openedAt }) => ({ key, name, openedAt, missing: false })));
    },
    openRecent: async (key) => {
      const entry = (await listRemembered()).find((one) => one.key === key);
      if (!entry) return unreadable('', 'forgotten');
      const allowed = (await entry.file.requestPermission?.({ mode: 'read' })) ?? 'granted';
      return allowed === 'granted' ? known.take(entry.file) : unreadable(entry.name, 'EACCES');
    },
    keepRecovery: (id, files, document) =>
      attempt('recovery-not-kept', '', async () => {
        await keepBrowserRecovery(id, { case: files.case?.name ?? null, cabinet: files.cabinet?.name ?? null }, document);
        return ok(null);
      }),
    dropRecovery: async (id) => {
      await browserStore.remove('recovery', id).catch(() => undefined);
      return ok(null);
    },
    keepCase: (id, content) => keepBrowserCase(id, content),
    listKeptCases: async () => ok({ cases: await listBrowserCases(), problems: [] }),
    dropKeptCase: (key) => dropBrowserCase(key),
    listRecoveries: async () => ok(await listBrowserRecoveries()),
  };
}

function downloaded(name: string, content: Uint8Array): Result<FileRef> {
  download(name, content);
  return ok({ handle: crypto.randomUUID(), key: '', name, modifiedAt: new Date().toISOString() });
}

function isKeptCopy(value: unknown): value is { readonly name: string; readonly content: Uint8Array; readonly keptAt: string } {
  return typeof value === 'object' && value !== null && 'content' in value && value.content instanceof Uint8Array;
}
