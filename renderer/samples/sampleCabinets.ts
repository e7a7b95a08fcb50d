import type { Result } from '../../engine/base/index.ts';
import { readDocument } from '../files/readDocument.ts';
import type { DocumentState } from '../state/appState.ts';

/*
 * The samples that come with the program. They take the same way in as any file.
 */

// Vite needs the literal pattern; the texts are fetched when they are asked for.
const texts = import.meta.glob<string>(['../../sample-cabinets/*.cabinet.json', '../../sample-cabinets/*.case.json'], {
  query: '?raw',
  import: 'default',
});

/** The sample that the window opens with: a case half entered. */
export const firstSample = 'two-chains.1.case.json';

export interface SampleCabinet {
  /** Base name, e.g. `two-chains`. */
  readonly name: string;
  readonly cabinetFile: string;
  readonly caseFiles: readonly string[];
}

const fileNames = Object.keys(texts).map((path) => path.slice(path.lastIndexOf('/') + 1));

/** The samples: the one the window opens with first, then by name. */
export function listSamples(): readonly SampleCabinet[] {
  const cabinets = fileNames.filter((file) => file.endsWith('.cabinet.json')).sort();
  const samples = cabinets.map((cabinetFile) => {
    const name = cabinetFile.slice(0, -'.cabinet.json'.length);
    return { name, cabinetFile, caseFiles: fileNames.filter((file) => file.startsWith(`${name}.`) && file.endsWith('.case.json')).sort() };
  });
  return [...samples].sort((a, b) => Number(firstSample.startsWith(`${b.name}.`)) - Number(firstSample.startsWith(`${a.name}.`)));
}

/** The title of every sample case by its file name, as the case itself gives it; one that cannot be read has none. */
export async function loadCaseTitles(): Promise<ReadonlyMap<string, string>> {
  const cases = fileNames.filter((file) => file.endsWith('.case.json'));
  const titles = await Promise.all(
    cases.map(async (file) => {
      const read = await loadSample(file);
      return read.ok ? ([[file, read.value.caseRecord.name]] as const) : [];
    }),
  );
  return new Map(titles.flat());
}

/** Reads a sample file by its name. */
export async function loadSample(file: string): Promise<Result<DocumentState>> {
  const load = texts[Object.keys(texts).find((path) => path.endsWith(`/${file}`)) ?? ''];
  const read = readDocument(file, load ? await load() : '');
  return read.ok ? { ok: true, value: read.value.document } : read;
}
