import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent, Evidence, Fault } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

/** A cabinet of equal drives: `chains` chains of `perChain` units, each unit fed by a lead of its own from one supply. */
export function plainContent(chains: number, perChain: number): CabinetContent {
  const places = Array.from({ length: chains * perChain }, (_, index) => ({
    chain: Math.floor(index / perChain) + 1,
    position: (index % perChain) + 1,
  }));
  return {
    id: 'bench',
    name: 'Bench cabinet',
    controller: { id: 'nc', designation: '-KE1' },
    chains: Array.from({ length: chains }, (_, index) => ({ id: `c${index + 1}`, number: index + 1 })),
    units: [
      { id: 's1', kind: 'supply', designation: '-TB0' },
      ...places.map(({ chain, position }) => ({
        id: unitId(chain, position),
        kind: 'servo-drive' as const,
        designation: `-TB${chain}.${position}`,
      })),
    ],
    links: places.map(({ chain, position }) => ({
      id: `w${chain}.${position}`,
      upper: position === 1 ? { chain: `c${chain}` } : { unit: unitId(chain, position - 1) },
      lower: { unit: unitId(chain, position) },
    })),
    leads: places.map(({ chain, position }) => ({
      id: `p${chain}.${position}`,
      from: { unit: 's1' },
      to: { unit: unitId(chain, position) },
    })),
  };
}

/** The same with what makes a search long: exchange partners everywhere, feedback cables, and, if asked for, a type of unknown behaviour. */
export function fullContent(
  chains: number,
  perChain: number,
  behaviour?: NonNullable<CabinetContent['types']>[number]['behaviour'],
): CabinetContent {
  const { units = [], links = [], ...plain } = plainContent(chains, perChain);
  const isDrive = ({ kind }: { readonly kind: string }) => kind === 'servo-drive';
  return {
    ...plain,
    units: units.map((unit) => (isDrive(unit) ? { ...unit, board: { partNumber: 'AX-100' }, ...(behaviour ? { type: 't1' } : {}) } : unit)),
    links: links.map((link) => ({ ...link, partNumber: 'POF-1' })),
    feedbacks: units.filter(isDrive).map(({ id }) => ({ id: `g${id}`, unit: id, positionKept: 'battery-in-unit' as const })),
    ...(behaviour ? { types: [{ id: 't1', name: 'Type 1', behaviour }] } : {}),
  };
}

function unitId(chain: number, position: number): string {
  return `u${chain}.${position}`;
}

export function plainCabinet(chains: number, perChain: number): Cabinet {
  return soundCabinet(plainContent(chains, perChain));
}

export function soundCabinet(content: CabinetContent): Cabinet {
  const { cabinet } = checkCabinet(content);
  if (cabinet === null) {
    throw new Error('a bench cabinet must be sound');
  }
  return cabinet;
}

/** A cut in the middle of the first chain. */
export function middleCut(perChain: number): Fault {
  return { item: 'cable', link: `w1.${Math.ceil((perChain + 1) / 2)}`, mode: 'cut' };
}

/** Every display and every report as a cut in the middle of the first chain makes them. */
export function fullEvidence(cabinet: Cabinet, fault: Fault): Evidence {
  const { displays, reports } = simulate({ cabinet, faults: [fault], onset: 'while-running' });
  return {
    snapshots: [
      {
        onset: 'while-running',
        halted: true,
        displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [meaning] })),
        reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
      },
    ],
  };
}
