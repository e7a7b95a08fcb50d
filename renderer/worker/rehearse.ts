import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { planning } from '../../engine/plan/index.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';

/** Enough for every way of the work to be gone, few enough for a diagnosis to be short. */
const units = 6;
/** Cables that are cut, one after another. */
const cut = [2, 3, 4];

/**
 * Works through diagnoses and plans of a small cabinet that is in no file, so that the machine code of the real ones is ready: the first
 * answer after a start otherwise takes several times as long. Gives way after each short piece of work.
 */
export function* rehearsing(): Generator<void, void, void> {
  const { cabinet } = checkCabinet(smallCabinet());
  if (cabinet === null) return;
  for (const position of cut) {
    const { displays, reports } = simulate({
      cabinet,
      faults: [{ item: 'cable', link: `w${position}`, mode: 'cut' }],
      onset: 'while-running',
    });
    const evidence: Evidence = {
      snapshots: [
        {
          onset: 'while-running',
          halted: true,
          displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [meaning] })),
          reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
        },
      ],
    };
    yield;
    const diagnosis = diagnose(cabinet, evidence);
    yield;
    for (const _ of planning(cabinet, evidence, diagnosis)) yield;
  }
}

/** Two chains, exchange partners everywhere, leads and feedback cables. */
function smallCabinet(): CabinetContent {
  const places = Array.from({ length: units }, (_, index) => ({ number: index + 1, above: index % (units / 2) === 0 ? null : index }));
  return {
    id: 'rehearsal',
    name: 'Rehearsal',
    controller: { id: 'nc', designation: '-KE1' },
    chains: [
      { id: 'c1', number: 1 },
      { id: 'c2', number: 2 },
    ],
    units: [
      { id: 's', kind: 'supply', designation: '-TB0' },
      ...places.map(({ number }) => ({
        id: `u${number}`,
        kind: 'servo-drive' as const,
        designation: `-TB${number}`,
        board: { partNumber: 'A' },
      })),
    ],
    links: places.map(({ number, above }) => ({
      id: `w${number}`,
      upper: above === null ? { chain: number === 1 ? 'c1' : 'c2' } : { unit: `u${above}` },
      lower: { unit: `u${number}` },
      partNumber: 'F',
    })),
    leads: places.map(({ number }) => ({ id: `p${number}`, from: { unit: 's' }, to: { unit: `u${number}` } })),
    feedbacks: places.map(({ number }) => ({ id: `g${number}`, unit: `u${number}` })),
  };
}
