import { type CabinetContent, cabinetContent, type LegendRecord, type TypeRecord } from '../../engine/schema/index.ts';

/** Types and legends that are the user's own; copied into a cabinet when they are used. */
export interface Library {
  readonly types: readonly TypeRecord[];
  readonly legends: readonly LegendRecord[];
}

export const emptyLibrary: Library = { types: [], legends: [] };

const storageKey = 'linkwright.library';
const version = 1;

/** Reads the library; one that cannot be used counts as empty, and is only written over when something is kept. */
export function readLibrary(storage: Pick<Storage, 'getItem'> | null): Library {
  try {
    const stored: unknown = JSON.parse(storage?.getItem(storageKey) ?? 'null');
    if (typeof stored !== 'object' || stored === null || !('version' in stored) || stored.version !== version) return emptyLibrary;
    // A library has the shape of a cabinet that holds nothing else, so the cabinet's own bounds guard it.
    const { version: _version, ...rest } = stored;
    const parsed = cabinetContent.safeParse({ id: 'library', name: 'library', ...rest });
    return parsed.success ? { types: parsed.data.types ?? [], legends: parsed.data.legends ?? [] } : emptyLibrary;
  } catch {
    return emptyLibrary;
  }
}

/** Keeps it for the next sitting; answers whether it could be kept. */
export function writeLibrary(storage: Pick<Storage, 'setItem'> | null, { types, legends }: Library): boolean {
  try {
    storage?.setItem(storageKey, JSON.stringify({ version, types, legends }));
    return storage !== null;
  } catch {
    return false;
  }
}

/** The library with a type (and the legend it names) or a legend of a cabinet; one of the same name is replaced. */
export function keepInLibrary(library: Library, cabinet: CabinetContent, kind: 'type' | 'legend', id: string): Library {
  if (kind === 'legend') {
    const legend = cabinet.legends?.find((one) => one.id === id);
    return legend ? { ...library, legends: withLegend(library.legends, legend) } : library;
  }
  const type = cabinet.types?.find((one) => one.id === id);
  if (!type) return library;
  const { legend: legendId, ...rest } = type;
  const legend = cabinet.legends?.find((one) => one.id === legendId);
  const legends = legend ? withLegend(library.legends, legend) : library.legends;
  const keptLegend = legend && legends.find(({ name }) => name === legend.name);
  const others = library.types.filter(({ name }) => name !== type.name);
  const kept: TypeRecord = { ...rest, id: freeId(type.id, others), ...(keptLegend ? { legend: keptLegend.id } : {}) };
  return { types: [...others, kept], legends };
}

function withLegend(legends: readonly LegendRecord[], legend: LegendRecord): readonly LegendRecord[] {
  const before = legends.find(({ name }) => name === legend.name);
  const others = legends.filter((one) => one !== before);
  return [...others, { ...legend, id: before?.id ?? freeId(legend.id, others) }];
}

/** Takes something out of the library; a legend that goes is no longer named by its types. */
export function dropFromLibrary(library: Library, kind: 'type' | 'legend', id: string): Library {
  if (kind === 'type') return { ...library, types: library.types.filter((one) => one.id !== id) };
  const types = library.types.map(({ legend, ...type }) => (legend === undefined || legend === id ? type : { ...type, legend }));
  return { types, legends: library.legends.filter((one) => one.id !== id) };
}

/** An id that none of `taken` has, as near as can be to the wanted one. */
export function freeId(wanted: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map(({ id }) => id));
  if (!ids.has(wanted)) return wanted;
  for (let number = 2; ; number += 1) {
    const id = `${wanted.slice(0, 50)}-${number}`;
    if (!ids.has(id)) return id;
  }
}
