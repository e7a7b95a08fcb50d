import type { Page } from 'playwright-core';
import type { ReadyGame } from '../exercise/readyGames.ts';

/*
 * What somebody finds who looks into a page that is played: everything that the page's own scripts could reach.
 */

/** Words by which the answer would be known: what is told at the end, and fields that only an answer has. */
export function hiddenWords({ answer, exercise }: ReadyGame): readonly string[] {
  const openly = JSON.stringify({ ...exercise, sealed: '' });
  const faults = answer.faults.map((fault) => JSON.stringify(fault));
  return [
    answer.story ?? 'no story',
    answer.lesson ?? 'no lesson',
    answer.check,
    'trueAnswer',
    '"bestPath"',
    // The faults as a set stand among what may be wrong, openly; the answer as such nowhere.
    `"faults":[${faults.join(',')}],"seed"`,
    `"check":"${answer.check}"`,
  ].filter((word) => !openly.includes(word));
}

/**
 * Markup with every attribute, names, values of fields, all storages, the state of the history, and every value that can be reached
 * from the window, functions left out; the picture's own library included.
 */
export function lookInto(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const found: string[] = [document.documentElement.outerHTML, document.title, location.href];
    for (const field of document.querySelectorAll('input, textarea, select')) if ('value' in field) found.push(String(field.value));
    found.push(JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage }), JSON.stringify(history.state), document.cookie);
    for (const { name } of await indexedDB.databases()) {
      if (name === undefined) continue;
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name);
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
      for (const table of database.objectStoreNames) {
        const values = await new Promise<unknown[]>((resolve, reject) => {
          const request = database.transaction(table).objectStore(table).getAll();
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
        // Texts as they are: a text inside a text has its quotes escaped.
        for (const value of values)
          found.push(
            typeof value === 'object'
              ? Object.values(value ?? {})
                  .map(String)
                  .join('\n')
              : String(value),
          );
      }
      database.close();
    }
    // What hangs on the window, and on the elements: the library of the page keeps its state there.
    const seen = new WeakSet<object>();
    const queue: unknown[] = [...Object.entries(Object.getOwnPropertyDescriptors(window)).map(([, { value }]) => value as unknown)];
    for (const element of document.querySelectorAll('*')) for (const key of Object.keys(element)) queue.push((element as never)[key]);
    let left = 400_000;
    for (let at = 0; at < queue.length && left > 0; at += 1) {
      const value = queue[at];
      if (typeof value === 'string') found.push(value);
      if (typeof value !== 'object' || value === null || seen.has(value) || value instanceof Node) continue;
      seen.add(value);
      left -= 1;
      const entries = value instanceof Map ? [...value.entries()].flat() : value instanceof Set ? [...value] : [];
      for (const key of Object.keys(value)) found.push(key);
      try {
        queue.push(...entries, ...Object.values(value));
      } catch {
        // A getter of the browser's own that does not want to be read.
      }
    }
    return found.join('\n');
  });
}
