import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent, Fault, Snapshot } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

/** A chain of drives on one supply, boards of equal part number, cables too, batteries in the units. */
export function drivesContent(count: number, more: Partial<CabinetContent> = {}): CabinetContent {
  const names = Array.from({ length: count }, (_, index) => `u${index + 1}`);
  return {
    id: 'drives',
    name: 'Drives',
    controller: { id: 'nc', designation: '-KE1' },
    chains: [{ id: 'c1', number: 1 }],
    units: [
      { id: 's1', kind: 'supply', designation: '-TB9' },
      ...names.map((id, index) => ({
        id,
        kind: 'servo-drive' as const,
        designation: `-TB${index + 1}`,
        board: { partNumber: 'AX-100' },
      })),
    ],
    links: names.map((id, index) => ({
      id: `w${index + 1}`,
      designation: `-WH${index + 1}`,
      partNumber: 'POF-1',
      upper: index === 0 ? { chain: 'c1' } : { unit: `u${index}` },
      lower: { unit: id },
    })),
    leads: names.map((id, index) => ({ id: `p${index + 1}`, from: { unit: 's1' }, to: { unit: id } })),
    feedbacks: names.map((id, index) => ({ id: `g${index + 1}`, unit: id, positionKept: 'battery-in-unit' as const })),
    ...more,
  };
}

export function soundCabinet(content: CabinetContent): Cabinet {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) throw new Error(`unsound: ${JSON.stringify(problems)}`);
  return cabinet;
}

/** All displays and reports of a machine that tripped while running, or failed to start after `before`. */
export function seenSnapshot(
  cabinet: Cabinet,
  faults: readonly Fault[],
  {
    onset = 'while-running',
    before = [],
  }: { onset?: 'while-running' | 'at-power-up'; before?: NonNullable<Snapshot['interventions']> } = {},
): Snapshot {
  const { displays, reports } = simulate({ cabinet, faults, onset, beforeTrip: before });
  return {
    onset,
    halted: true,
    displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [meaning] })),
    reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
  };
}
