import { checkCabinet } from '../../../engine/cabinet/index.ts';
import type { CabinetContent, Fault, Onset } from '../../../engine/schema/index.ts';
import { simulate } from '../../../engine/simulation/index.ts';

/** The checked cabinet, which must be sound. */
export function checked(content: CabinetContent) {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) throw new Error(JSON.stringify(problems));
  return cabinet;
}

/** Displays and reports of a halted cabinet by our own simulation, in the form of the solver's answer. */
export function predictByEngine(content: CabinetContent, faults: readonly Fault[], onset: Onset) {
  const simulation = simulate({ cabinet: checked(content), faults, onset });
  return {
    displays: Object.fromEntries([...simulation.displays].map(([unit, display]) => [unit, display.meaning])),
    reports: Object.fromEntries([...simulation.reports].map(([chain, report]) => [chain, report.gap])),
  };
}
