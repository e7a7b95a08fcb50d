import type { DisplayMeaning, LegendRecord } from '../schema/index.ts';
import type { Topology } from '../topology/index.ts';

/** The legend by which a unit's codes are read: its type's, else the cabinet's; undefined where there is none. */
export function legendOf({ content }: Topology, unit: string): LegendRecord | undefined {
  const record = content.units?.find(({ id }) => id === unit);
  const type = content.types?.find(({ id }) => id === record?.type);
  const wanted = type?.legend ?? content.defaultLegend;
  return content.legends?.find(({ id }) => id === wanted);
}

/** The codes of a legend that mean this: those that mean nothing else first. */
export function codesFor(legend: LegendRecord | undefined, meaning: DisplayMeaning): readonly string[] {
  const fitting = (legend?.codes ?? []).filter(({ meanings }) => meanings.includes(meaning));
  return [...fitting].sort((a, b) => a.meanings.length - b.meanings.length).map(({ code }) => code);
}

/** The only code that means this and nothing else: what the display surely shows. */
export function onlyCode(legend: LegendRecord | undefined, meaning: DisplayMeaning): string | null {
  const exact = (legend?.codes ?? []).filter(({ meanings }) => meanings.length === 1 && meanings[0] === meaning);
  return exact.length === 1 ? (exact[0]?.code ?? null) : null;
}
