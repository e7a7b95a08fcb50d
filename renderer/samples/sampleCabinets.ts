import type { Result } from '../../engine/base/index.ts';
import { parseCabinetFile, parseCaseFile } from '../../engine/cabinet/index.ts';
import type { DocumentState } from '../state/appState.ts';
import { makeEmptyCase } from '../state/dispatcher.ts';

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
  return readDocument(file, load ? await load() : '');
}

/** Reads a cabinet file or a case file, whichever it is: tried as what its name says, else as both. */
export function readDocument(name: string, source: string | Uint8Array): Result<DocumentState> {
  const asCase = (): Result<DocumentState> => {
    const parsed = parseCaseFile(source);
    if (!parsed.ok) return parsed;
    const { cabinet, ...caseRecord } = parsed.value;
    return { ok: true, value: { cabinet, caseRecord } };
  };
  const asCabinet = (): Result<DocumentState> => {
    const parsed = parseCabinetFile(source);
    return parsed.ok ? { ok: true, value: { cabinet: parsed.value, caseRecord: makeEmptyCase(parsed.value) } } : parsed;
  };
  const first = name.endsWith('.case.json') ? asCase : asCabinet;
  const second = first === asCase ? asCabinet : asCase;
  const answer = first();
  if (answer.ok || !answer.problems.some(({ code }) => code === wrongKind)) return answer;
  return second();
}

/** The file is one of ours, of another kind than was asked for. */
const wrongKind = 'format-other-kind';
