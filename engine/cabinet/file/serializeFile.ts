import { appVersion, compareNatural } from '../../base/index.ts';
import type { CabinetContent, CaseContent } from '../../schema/index.ts';
import { newestVersion } from '../migrations/index.ts';
import type { FileKind } from './fileKinds.ts';
import { orderKeys } from './orderKeys.ts';

/**
 * Writes a file of the newest version: JSON, two spaces, line feed at the end. Equal content gives equal bytes: members stand in the
 * order of the schema, and the lists of a cabinet whose order carries no meaning in the order of their ids.
 */
export function serializeFile<T>(kind: FileKind<T>, content: T): string {
  const file = { format: kind.format, formatVersion: newestVersion(kind.migrations), appVersion, content: orderKeys(kind.schema, content) };
  // Half a sign, as a text cut in the middle ends with, is nothing that a file could hold: it would be refused when it is opened.
  return `${JSON.stringify(file, null, 2).replace(halfSign, '\ufffd')}\n`;
}

/** A surrogate without its other half, as JSON is written: escaped, after an even number of backslashes. */
const halfSign = /(?<=(?:^|[^\\])(?:\\\\)*)\\ud[89a-f][0-9a-f]{2}/g;

/**
 * Lists of things with ids, whose order carries no meaning, in natural order of the ids (`u2` before `u10`). All other lists keep
 * their order: axes, outputs, codes of a legend, pictures of a unit, bends, rates, limits and rows are in the order that the user
 * gave them, and what was seen and done in a case is in the order of time.
 */
export function orderCabinet(content: CabinetContent): CabinetContent {
  const ordered = { ...content };
  for (const list of ['chains', 'units', 'links', 'leads', 'feedbacks', 'types', 'legends', 'fibres', 'spares', 'photos'] as const) {
    order(ordered, list);
  }
  return ordered;
}

export function orderCase(content: CaseContent): CaseContent {
  return { ...content, cabinet: orderCabinet(content.cabinet) };
}

type IdLists = {
  [K in keyof CabinetContent]-?: NonNullable<CabinetContent[K]> extends readonly { id: string }[] ? K : never;
}[keyof CabinetContent];

function order<K extends IdLists>(content: CabinetContent, key: K) {
  const list: readonly { readonly id: string }[] | undefined = content[key];
  // Sorting changes neither the members nor their type.
  if (list !== undefined) content[key] = [...list].sort((a, b) => compareNatural(a.id, b.id)) as unknown as CabinetContent[K];
}
