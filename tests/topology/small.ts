import type { CabinetContent, UnitKind } from '../../engine/schema/index.ts';

/** A sound cabinet of one chain: supply `ps`, units `u1` to `un` with designations `-T1` …, links `w1` …, leads `l1` …. */
export function line(length: number, kinds: readonly UnitKind[] = []): CabinetContent {
  const numbers = Array.from({ length }, (_, index) => index + 1);
  return {
    id: 'line',
    name: 'line',
    controller: { id: 'nc', designation: '-KF1' },
    chains: [{ id: 'ch1', number: 1 }],
    units: [
      { id: 'ps', kind: 'supply', designation: '-T0' },
      ...numbers.map((n) => ({ id: `u${n}`, kind: kinds[n - 1] ?? ('servo-drive' as const), designation: `-T${n}` })),
    ],
    links: numbers.map((n) => ({
      id: `w${n}`,
      designation: `-WH${n}`,
      upper: n === 1 ? { chain: 'ch1' } : { unit: `u${n - 1}` },
      lower: { unit: `u${n}` },
    })),
    leads: numbers.map((n) => ({ id: `l${n}`, designation: `-WD${n}`, from: { unit: 'ps' }, to: { unit: `u${n}` } })),
  };
}
