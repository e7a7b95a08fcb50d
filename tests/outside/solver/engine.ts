import { checkCabinet } from '../../../engine/cabinet/index.ts';
import { type CabinetContent, directions, type Fault, type Intervention, linkEnds, type Onset } from '../../../engine/schema/index.ts';
import { type Look, predictLook, simulate } from '../../../engine/simulation/index.ts';

/** The checked cabinet, which must be sound. */
export function checked(content: CabinetContent) {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) throw new Error(JSON.stringify(problems));
  return cabinet;
}

/** Displays and reports of a halted cabinet by our own simulation, in the form of the solver's answer. `acts` were done before the start. */
export function predictByEngine(content: CabinetContent, faults: readonly Fault[], onset: Onset, acts: readonly Intervention[] = []) {
  const simulation = simulate({ cabinet: checked(content), faults, onset, beforeTrip: acts });
  return {
    displays: Object.fromEntries([...simulation.displays].map(([unit, display]) => [unit, display.meaning])),
    reports: Object.fromEntries([...simulation.reports].map(([chain, report]) => [chain, report.gap])),
  };
}

/** What every look of every kind shows now by our own simulation, in the form of the solver's answer. */
export function looksByEngine(content: CabinetContent, faults: readonly Fault[]): Readonly<Record<string, string>> {
  const cabinet = checked(content);
  const units = (content.units ?? []).filter((unit) => unit.kind !== 'supply');
  const looks: readonly (readonly [string, Look])[] = [
    ...(content.links ?? []).flatMap(({ id: link }) => [
      ...linkEnds.map((end) => [`light-at-plug/${link}/${end}`, { look: 'light-at-plug', link, end }] as const),
      ...linkEnds.map((end) => [`light-at-port/${link}/${end}`, { look: 'light-at-port', link, end }] as const),
      ...directions.map((fibre) => [`lamp/${link}/${fibre}`, { look: 'lamp', link, fibre }] as const),
      [`compare-fibres/${link}/`, { look: 'compare-fibres', link }] as const,
    ]),
    ...units.map(({ id: unit }) => [`voltage/${unit}/`, { look: 'voltage', unit }] as const),
    ...units
      .filter(({ onChain }) => onChain !== false)
      .map(({ id: unit }) => [`compare-plugs/${unit}/`, { look: 'compare-plugs', unit }] as const),
  ];
  return Object.fromEntries(
    looks.map(([key, look]) => [key, predictLook(look, { cabinet, faults, onset: 'while-running' }) ?? 'cannot be looked at']),
  );
}
