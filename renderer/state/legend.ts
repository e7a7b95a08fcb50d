import type { CabinetContent, DisplayMeaning, LegendRecord } from '../../engine/schema/index.ts';

/** What a raw code means by a legend. */
export interface CodeReading {
  readonly code: string;
  readonly meanings: readonly DisplayMeaning[];
  /** The legend has the code; otherwise it is kept as "other". */
  readonly known: boolean;
}

/** The legend for a unit: that of its type, else the cabinet's usual one. */
export function findLegend(cabinet: CabinetContent, unit: string): LegendRecord | undefined {
  const type = cabinet.units?.find(({ id }) => id === unit)?.type;
  const wanted = cabinet.types?.find(({ id }) => id === type)?.legend ?? cabinet.defaultLegend;
  return cabinet.legends?.find(({ id }) => id === wanted);
}

/** Reads a code. Capital and small letters count only where the legend has both. Null for an empty code. */
export function readCode(legend: LegendRecord | undefined, typed: string): CodeReading | null {
  const code = typed.trim();
  if (code === '') return null;
  const codes = legend?.codes ?? [];
  const alike = codes.filter((entry) => entry.code.toLowerCase() === code.toLowerCase());
  const found = codes.find((entry) => entry.code === code) ?? (alike.length === 1 ? alike[0] : undefined);
  return found ? { code: found.code, meanings: found.meanings, known: true } : { code, meanings: ['other'], known: false };
}
