import { checkCabinet } from '../../../engine/cabinet/index.ts';
import type { Behaviour, CabinetContent, Fault } from '../../../engine/schema/index.ts';
import { simulate } from '../../../engine/simulation/index.ts';
import type { Cabinet } from '../../../engine/topology/index.ts';

/** A chain of n equal drives u1 … un on cables w1 … wn, each fed by a lead of its own p1 … pn, with this behaviour throughout. */
export function lineContent(n: number, behaviour: Partial<Behaviour> = {}): CabinetContent {
  const numbers = Array.from({ length: n }, (_, i) => i + 1);
  return {
    id: 'line',
    name: `Line of ${n}`,
    controller: { id: 'k', designation: 'k' },
    chains: [
      { id: 'c', number: 1, ...(behaviour.onReceiveLoss === undefined ? {} : { behaviour: { onReceiveLoss: behaviour.onReceiveLoss } }) },
    ],
    types: [{ id: 't', name: 't', behaviour }],
    units: [
      { id: 's', kind: 'supply', designation: 's' },
      ...numbers.map((i) => ({ id: `u${i}`, kind: 'servo-drive' as const, designation: `u${i}`, type: 't' })),
    ],
    links: numbers.map((i) => ({ id: `w${i}`, upper: i === 1 ? { chain: 'c' } : { unit: `u${i - 1}` }, lower: { unit: `u${i}` } })),
    leads: numbers.map((i) => ({ id: `p${i}`, from: { unit: 's' }, to: { unit: `u${i}` } })),
  };
}

/** The checked cabinet of `lineContent`. */
export function line(n: number, behaviour: Partial<Behaviour> = {}): Cabinet {
  const { cabinet, problems } = checkCabinet(lineContent(n, behaviour));
  if (cabinet === null) throw new Error(JSON.stringify(problems));
  return cabinet;
}

/** What a line shows while running: the displays of u1 … un in order, how many units the controller reaches, and the report. */
export function seenOn(cabinet: Cabinet, faults: readonly Fault[]) {
  const { displays, reports } = simulate({ cabinet, faults, onset: 'while-running' });
  const [chain] = cabinet.chains;
  if (chain === undefined) throw new Error('no chain');
  const gap = reports.get(chain.id)?.gap;
  return {
    displays: chain.units.map((unit) => displays.get(unit)?.meaning),
    reached: gap === 'none' || gap === undefined ? chain.units.length : gap - 1,
    gap,
  };
}
