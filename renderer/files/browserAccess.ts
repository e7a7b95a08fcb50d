import { fail, makeProblem, ok, type Problem, type Result } from '../../engine/base/index.ts';
import { isOwnFile } from '../../engine/cabinet/index.ts';
import type { FileRef } from '../state/sitting.ts';
import type { FileAccess, TakenFile } from './access.ts';
import { dropBrowserCase, keepBrowserCase, listBrowserCases } from './browserCases.ts';
import { type BrowserFile, handleOf, hasPickers, pickToOpen, pickToSave } from './browserHandles.ts';
import { keepBrowserRecovery, listBrowserRecoveries } from './browserRecovery.ts';
import { browserStore } from './browserStore.ts';
import { readDropped } from './desktopAccess.ts';
import { chooseByInput, chooseSeveral, download } from './downloads.ts';

const mostFileBytes = 21 * 1024 * 1024;
const mostRecent = 10;
const mostFiles = 2_000;
const mostBytes = 10 * mostFileBytes;
const exportMediaTypes = {
  pdf: 'application/pdf',
  zip: 'application/zip',
  html: 'text/html',
  csv: 'text/csv',
  graphml: 'application/xml',
} as const;

interface KnownFile {
  readonly file: BrowserFile;
  /** How it was when it was last read or written here. */
  stamp: { readonly modified: number; readonly size: number };
}

interface Remembered {
  readonly key: string;
  readonly name: string;
  readonly openedAt: string;
  readonly file: BrowserFile;
}

/** Files through the browser: in place where it lets us, else as downloads. */
export function makeBrowserAccess(): FileAccess {
  const inPlace = hasPickers();
  const known = new Map<string, KnownFile>();

  const take = async (file: BrowserFile): Promise<Result<TakenFile>> =>
    attempt('file-unreadable', file.name, async () => {
      const content = await file.getFile();
      if (content.size > mostFileBytes) return tooLarge(content.size);
      const handle = crypto.randomUUID();
      known.set(handle, { file, stamp: stampOf(content) });
      const key = await keyOf(known, handle, file);
      await rememberRecent(key, file);
      return ok({ ...describe(handle, key, content), content: await bytesOf(content) });
    });

  const write = (handle: string, key: string, target: KnownFile, content: Uint8Array): Promise<Result<FileRef>> =>
    attempt('file-not-saved', target.file.name, async () => {
      // The same proof as in the desktop program: what would not open again replaces nothing.
      if (!isOwnFile(content)) return fail(makeProblem('file-would-not-open', 'refused', { facts: { file: target.file.name } }));
      const before = await target.file.getFile();
      const good = await bytesOf(before);
      if (isOwnFile(good)) {
        const copy = { name: before.name, content: good, keptAt: new Date(before.lastModified).toISOString() };
        await browserStore.put('copies', key, copy).catch(() => undefined);
      }
      // The browser writes aside and puts the whole in place when it is closed.
      const writable = await target.file.createWritable();
      try {
        await writable.write(content);
        await writable.close();
      } catch (error) {
        await writable.abort().catch(() => undefined);
        throw error;
      }
      const after = await target.file.getFile();
      target.stamp = stampOf(after);
      return ok(describe(handle, key, after));
    });

  return {
    means: inPlace ? 'browser' : 'download',
    async chooseFile() {
      if (inPlace) {
        const picked = await pickToOpen();
        return picked ? take(picked) : ok(null);
      }
      const file = await chooseByInput();
      if (!file) return ok(null);
      if (file.size > mostFileBytes) return tooLarge(file.size);
      return ok({ ...describe(crypto.randomUUID(), '', file), content: await bytesOf(file) });
    },
    async takeDropped(item) {
      const copy = readDropped(item);
      const handle = inPlace ? await handleOf(item) : null;
      if (handle?.kind === 'file') return take(handle);
      return ok({ handle: null, ...(await copy) });
    },
    async save(file, content) {
      const target = known.get(file.handle);
      if (!target) return downloaded(file.name, content);
      return attempt('file-not-saved', file.name, async () => {
        const now = await target.file.getFile().catch(() => null);
        if (now && !isSame(stampOf(now), target.stamp)) {
          return fail(makeProblem('file-changed-outside', 'refused', { facts: { file: file.name } }));
        }
        return write(file.handle, file.key, target, content);
      });
    },
    async saveAs(proposedName, content) {
      if (!inPlace) return downloaded(proposedName, content);
      return attempt('file-not-saved', proposedName, async () => {
        const picked = await pickToSave(proposedName);
        if (!picked) return ok(null);
        const handle = crypto.randomUUID();
        const target: KnownFile = { file: picked, stamp: { modified: 0, size: 0 } };
        known.set(handle, target);
        const key = await keyOf(known, handle, picked);
        const saved = await write(handle, key, target, content);
        if (saved.ok) await rememberRecent(key, picked);
        return saved;
      });
    },
    async exportFile(proposedName, content, kind) {
      if (!inPlace) {
        download(proposedName, content, exportMediaTypes[kind]);
        return ok(proposedName);
      }
      return attempt('file-not-saved', proposedName, async () => {
        const picked = await pickToSave(proposedName, { [exportMediaTypes[kind]]: [`.${kind}`] });
        if (!picked) return ok(null);
        const writable = await picked.createWritable();
        try {
          await writable.write(content);
          await writable.close();
        } catch (error) {
          await writable.abort().catch(() => undefined);
          throw error;
        }
        return ok(picked.name);
      });
    },
    async chooseList() {
      const file = await chooseByInput('.csv,.txt,.tsv,.graphml,.xml');
      if (!file) return ok(null);
      if (file.size > mostFileBytes) return tooLarge(file.size);
      return ok({ name: file.name, content: await bytesOf(file) });
    },
    async chooseJsonFiles(from) {
      const chosen = (await chooseSeveral(from)).filter(({ name }) => name.toLowerCase().endsWith('.json'));
      if (chosen.length === 0) return ok(null);
      const files: TakenFile[] = [];
      const problems: Problem[] = [];
      let looked = 0;
      let bytes = 0;
      for (const file of chosen.slice(0, mostFiles)) {
        if (bytes >= mostBytes) break;
        looked += 1;
        const read = await attempt('file-unreadable', file.name, async () =>
          file.size > mostFileBytes
            ? tooLarge(file.size)
            : ok({ ...describe(crypto.randomUUID(), '', file), content: await bytesOf(file) }),
        );
        bytes += read.ok ? file.size : 0;
        if (read.ok) files.push(read.value);
        else problems.push(...read.problems);
      }
      return ok({ files, problems, leftOut: chosen.length - looked });
    },
    async readAgain(file) {
      const target = known.get(file.handle);
      return target ? take(target.file) : unreadable(file.name, 'forgotten');
    },
    async peek(file) {
      const target = known.get(file.handle);
      // It gets a handle of its own; the one that is open keeps its stamp.
      return target ? take(target.file) : unreadable(file.name, 'forgotten');
    },
    async look(file) {
      const target = known.get(file.handle);
      if (!target) return ok({ state: 'same' });
      try {
        const now = await target.file.getFile();
        const same = isSame(stampOf(now), target.stamp);
        return ok(same ? { state: 'same' } : { state: 'changed', modifiedAt: new Date(now.lastModified).toISOString() });
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
    // A page sees no folder.
    findCabinetBeside: async () => ok(null),
    listRecent: async () => {
      const all = inPlace ? await listRemembered() : [];
      return ok(all.map(({ key, name, openedAt }) => ({ key, name, openedAt, missing: false })));
    },
    openRecent: async (key) => {
      const entry = (await listRemembered()).find((one) => one.key === key);
      if (!entry) return unreadable('', 'forgotten');
      const allowed = (await entry.file.requestPermission?.({ mode: 'read' })) ?? 'granted';
      return allowed === 'granted' ? take(entry.file) : unreadable(entry.name, 'EACCES');
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
    takeHandedOver: async () => [],
    takeNotices: async () => [],
    tellUnsaved: () => undefined,
    onHandedOver: () => undefined,
    onCloseAsked: () => undefined,
    answerClose: () => undefined,
  };
}

function downloaded(name: string, content: Uint8Array): Result<FileRef> {
  download(name, content);
  return ok({ handle: crypto.randomUUID(), key: '', name, modifiedAt: new Date().toISOString() });
}

async function rememberRecent(key: string, file: BrowserFile): Promise<void> {
  const entry: Remembered = { key, name: file.name, openedAt: new Date().toISOString(), file };
  try {
    for (const other of await listRemembered()) {
      if (await other.file.isSameEntry(file)) await browserStore.remove('recent', other.key);
    }
    await browserStore.put('recent', key, entry);
    for (const old of (await listRemembered()).slice(mostRecent)) await browserStore.remove('recent', old.key);
  } catch {
    // A list of recent files is a comfort; a private window may keep none.
  }
}

async function listRemembered(): Promise<readonly Remembered[]> {
  // Written by the function above, and by nobody else.
  const all = (await browserStore.all('recent').catch(() => [])) as Remembered[];
  return all.sort((a, b) => (a.openedAt < b.openedAt ? 1 : -1));
}

/** One key for one file, in this sitting. */
async function keyOf(known: ReadonlyMap<string, KnownFile>, handle: string, file: BrowserFile): Promise<string> {
  for (const [other, { file: before }] of known) if (other !== handle && (await before.isSameEntry(file))) return other;
  return handle;
}

function describe(handle: string, key: string, file: File): FileRef {
  return { handle, key, name: file.name, modifiedAt: new Date(file.lastModified).toISOString() };
}

const stampOf = (file: File) => ({ modified: file.lastModified, size: file.size });
const isSame = (a: KnownFile['stamp'], b: KnownFile['stamp']) => a.modified === b.modified && a.size === b.size;
const bytesOf = async (file: File) => new Uint8Array(await file.arrayBuffer());
const errorName = (error: unknown) => (error instanceof Error ? error.name : 'unknown');

function isKeptCopy(value: unknown): value is { readonly name: string; readonly content: Uint8Array; readonly keptAt: string } {
  return typeof value === 'object' && value !== null && 'content' in value && value.content instanceof Uint8Array;
}

function tooLarge(size: number): Result<never> {
  const facts = { megabytes: Math.ceil(size / 1024 / 1024), limitMegabytes: mostFileBytes / 1024 / 1024 };
  return fail(makeProblem('file-too-large', 'refused', { facts }));
}

function unreadable(file: string, reason: string): Result<never> {
  return fail(makeProblem('file-unreadable', 'refused', { facts: { file, reason } }));
}

async function attempt<T>(
  code: 'file-unreadable' | 'file-not-saved' | 'recovery-not-kept',
  file: string,
  work: () => Promise<Result<T>>,
): Promise<Result<T>> {
  try {
    return await work();
  } catch (error) {
    const reason = errorName(error);
    const problem: Problem =
      code === 'recovery-not-kept'
        ? makeProblem(code, 'warning', { facts: { reason } })
        : makeProblem(code, 'refused', { facts: { file, reason } });
    return fail(problem);
  }
}
