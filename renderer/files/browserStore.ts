/*
 * The browser's own storage (IndexedDB), as small tables. A private window may have none: then every call fails, and says so.
 */

const tableNames = ['recovery', 'copies', 'recent', 'cases'] as const;
export type TableName = (typeof tableNames)[number];

const databaseName = 'linkwright';
/** Grows with each new table. */
const databaseVersion = 2;

let opened: Promise<IDBDatabase> | null = null;

function openDatabase(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(databaseName, databaseVersion);
    request.onupgradeneeded = () => {
      for (const table of tableNames) {
        if (!request.result.objectStoreNames.contains(table)) request.result.createObjectStore(table);
      }
    };
    request.onsuccess = () => {
      // A newer version of the program in another tab must not wait for this one.
      request.result.onversionchange = () => {
        request.result.close();
        opened = null;
      };
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('blocked'));
  });
  // A storage that could not be opened is tried again next time.
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

/** Runs one request on a table; comes back when it lies in the storage. Fails with the browser's error. */
async function run<T>(table: TableName, mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const database = await openDatabase();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(table, mode, { durability: 'strict' });
    const request = work(transaction.objectStore(table));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error ?? request.error);
    transaction.onerror = () => reject(transaction.error ?? request.error);
  });
}

export const browserStore = {
  put: (table: TableName, key: string, value: unknown) => run(table, 'readwrite', (store) => store.put(value, key)),
  remove: (table: TableName, key: string) => run(table, 'readwrite', (store) => store.delete(key)),
  /** Values are this program's own, of one version; whoever reads them checks what he needs. */
  get: (table: TableName, key: string) => run<unknown>(table, 'readonly', (store) => store.get(key)),
  all: (table: TableName) => run<unknown[]>(table, 'readonly', (store) => store.getAll()),
};
