import { extname } from 'node:path';

/** Kinds of files that are made of a document, by their ending. */
const exportKinds = ['pdf', 'zip', 'html', 'csv', 'graphml'] as const;
export type ExportKind = (typeof exportKinds)[number];

/** The kind that a name says; null for one that is not made here. */
export function exportKindOf(name: string): ExportKind | null {
  const ending = extname(name).slice(1).toLowerCase();
  return exportKinds.find((kind) => kind === ending) ?? null;
}
